/** What is done at each nozzle, device and connection past the scene's pump. */
import { type Appliance, type Line, type Nozzle, nameOf, type Plan } from '@plugside/fireground';
import { capital, nozzleWords } from '../words.ts';
import type { DrillRole, DrillStep } from './data.ts';
import { connect, listed, owner, type Telling } from './joints.ts';

/** A device that stands nearer to its pump is part of the rig [ft]. Ours. */
const FIXED_FT = 25;

/** Crews past the scene's pump, by what they hold. */
export function deviceRoles(telling: Telling): DrillRole[] {
  const { plan } = telling;
  const hand = plan.nozzles.filter(({ use, on }) => use === 'hand line' && !on);
  const masters = plan.nozzles.filter((nozzle) => !hand.includes(nozzle));
  const shared = plan.appliances.filter(({ kind }) =>
    ['wye', 'manifold', 'siamese'].includes(kind),
  );
  const connections = plan.appliances.filter(
    ({ kind }) => kind === 'standpipe' || kind === 'sprinkler',
  );
  const roles: DrillRole[] = [];
  if (connections.length > 0) {
    roles.push({
      role: 'Connection crew',
      who: listed(connections.map(nameOf)),
      steps: connections.flatMap((one) => connectionSteps(telling, one)),
    });
  }
  if (hand.length + shared.length > 0) {
    roles.push({
      role: 'Nozzle crew',
      who: listed([...hand, ...(hand.length > 0 ? [] : shared)].map(nameOf)),
      steps: [
        ...shared.flatMap((one) => branchSteps(telling, one)),
        ...handLineSteps(telling, hand),
      ],
    });
  }
  if (masters.length > 0) {
    roles.push({
      role: 'Master stream crew',
      who: listed(masters.map((nozzle) => nameOf(holderOf(plan, nozzle) ?? nozzle))),
      steps: masters.flatMap((nozzle) => masterSteps(telling, nozzle)),
    });
  }
  return roles;
}

function handLineSteps({ plan, figures }: Telling, nozzles: readonly Nozzle[]): DrillStep[] {
  if (nozzles.length === 0) return [];
  const upstairs = plan.appliances.filter(({ kind }) => kind === 'standpipe');
  const from = (nozzle: Nozzle) =>
    plan.lines.find(
      ({ to }) => owner(to) === nozzle.id && upstairs.some(({ id }) => isFrom(id, to, plan)),
    );
  const steps = nozzles.map((nozzle): DrillStep => {
    if (from(nozzle)) {
      return {
        text: `${nameOf(nozzle)}: hose pack to the floor below, flush the outlet, connect, stretch up the stair, nozzle shut; say ready.`,
        hazard: 'Leave by the stair that you know; nobody waits on the landing of the fire floor.',
      };
    }
    return {
      text: `${nameOf(nozzle)}: stretch it, take the kinks out, nozzle shut, two hands on it; say ready.`,
    };
  });
  return [
    ...steps,
    {
      text: 'Bleed the air, open slowly, brace for the reaction.',
      hazard: 'Two on a hand line until it is steady.',
    },
    wanted(nozzles, figures),
    { text: 'Shut slowly on the word; drain and roll up only when the pump is down.' },
  ];
}

function isFrom(standpipeId: string, to: string, plan: Plan): boolean {
  return plan.lines.some((line) => line.to === to && owner(line.from) === standpipeId);
}

/** Each make at its own rated pressure. */
function wanted(nozzles: readonly Nozzle[], { full, units }: Telling['figures']): DrillStep {
  const by = new Map<string, string[]>();
  for (const nozzle of nozzles) {
    const make = nozzleWords(nozzle, units).replace(/, [^,]+$/, '');
    const key = `${full(nozzle.ratedPsi, 'pressure')} (${make[0]!.toLowerCase()}${make.slice(1)})`;
    by.set(key, [...(by.get(key) ?? []), nameOf(nozzle)]);
  }
  const told = [...by].map(([key, names]) => `${listed(names)} ${key}`);
  return {
    text: `Check the pressure at the nozzle with a gauge where there is one; wanted: ${told.join('; ')}.`,
  };
}

function holderOf(plan: Plan, { on }: Nozzle): Appliance | undefined {
  return on === undefined ? undefined : plan.appliances.find(({ id }) => id === owner(on));
}

/** A device is set and tied, or aimed from its rig: nobody holds it. */
function masterSteps(telling: Telling, nozzle: Nozzle): DrillStep[] {
  const { plan, figures } = telling;
  const device = holderOf(plan, nozzle);
  const name = nameOf(device ?? nozzle);
  const feeds = device ? plan.lines.filter(({ to }) => owner(to) === device.id) : [];
  const fixed = feeds.length > 0 && feeds.every((line) => isHookup(plan, line));
  const hazard =
    'A master stream knocks people down: nobody in its way, nobody over the device, the building watched for the weight of water.';
  return [
    fixed
      ? { text: `${name}: lock its mount, fit the tip, turn it on the target with the water off.` }
      : {
          text: `${name}: set it on firm ground, legs out, tied or spiked, the lines straight behind it; fit the tip, aim low.`,
          hazard:
            'A device that is not held slides back: safety stop in, nobody in front or behind.',
        },
    ...(fixed
      ? []
      : [
          {
            text: `Check that every line is on ${name} and locked; say ready and stand to its side.`,
          },
        ]),
    { text: `On the word its valve at the pump opens slowly; aim by its wheel or handle.`, hazard },
    wanted([nozzle], figures),
    { text: 'Shut it slowly at the pump; leave the device down until it is drained.' },
  ];
}

function isHookup(plan: Plan, { from, lengthFt }: Line): boolean {
  return lengthFt <= FIXED_FT && plan.rigs.some(({ id }) => id === owner(from));
}

function branchSteps(telling: Telling, device: Appliance): DrillStep[] {
  const out = telling.plan.lines.filter(({ from }) => owner(from) === device.id);
  const name = nameOf(device);
  const steps: DrillStep[] = [
    device.kind === 'siamese'
      ? { text: `${name}: check that its clappers swing; lines locked.` }
      : { text: `${name}: set it down short of the danger, every gate shut.` },
    ...out.map((line) => connect(telling, line)),
  ];
  if (device.kind !== 'siamese') {
    steps.push({ text: `${name}: open one gate at a time, slowly, as each crew says ready.` });
  }
  return steps;
}

function connectionSteps(telling: Telling, device: Appliance): DrillStep[] {
  const name = nameOf(device);
  const out = telling.plan.lines.filter(({ from }) => owner(from) === device.id);
  const steps: DrillStep[] = [
    {
      text: `${name}: read its sign for the pressure and what it feeds; caps off, nothing inside, clappers swing, gaskets in.`,
      hazard: 'A wrong connection feeds the wrong system: read before you connect.',
    },
    {
      text: `${name}: take the lines from the engine, hand-tight, no kink before it; then say ready.`,
    },
    ...out.map((line) => connect(telling, line)),
  ];
  if (device.kind === 'sprinkler') {
    steps.push({
      text: capital(
        'keep the supply on until the officer says shut; then send someone to the valve.',
      ),
    });
  }
  return steps;
}
