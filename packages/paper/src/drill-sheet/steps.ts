/** The steps of an evolution by role, from how its pieces are joined. */
import {
  describeLine,
  formatHoseSize,
  type Line,
  nameOf,
  type Plan,
  pieceOf,
  portOf,
  type Rig,
  type RigOrder,
  splitPortRef,
} from '@plugside/fireground';
import type { Figures } from '../sheet/figures.ts';
import type { DrillRole, DrillStep } from './data.ts';

/** What the steps are told with. */
export interface Telling {
  plan: Plan;
  orders: readonly RigOrder[];
  figures: Figures;
}

/** Every role that the plan has work for, in the order in which water reaches them. */
export function rolesOf(telling: Telling): DrillRole[] {
  const { plan } = telling;
  const before = plan.rigs.filter(({ id }) => id !== plan.scene);
  const scene = plan.rigs.find(({ id }) => id === plan.scene)!;
  const nozzles =
    plan.nozzles.length + plan.appliances.filter(({ kind }) => kind === 'sprinkler').length;
  return [
    { role: 'Officer', who: 'water supply', steps: officer(telling) },
    ...before.map(
      (rig): DrillRole => ({
        role: rig.role === 'relay' ? 'Relay engine' : 'Hydrant engine',
        who: nameOf(rig),
        steps: supplyRig(telling, rig),
      }),
    ),
    { role: 'Attack engine', who: nameOf(scene), steps: attackRig(telling, scene) },
    ...(nozzles > 0
      ? [{ role: 'Nozzle crew' as const, who: crewNames(plan), steps: nozzleCrew(telling) }]
      : []),
  ];
}

function officer({ plan, figures }: Telling): DrillStep[] {
  const sources = [...plan.hydrants, ...plan.drafts].map(nameOf);
  return [
    { text: `Walk the ground; name the water: ${listed(sources)}.` },
    {
      text: 'Give each crew its part and a radio word for water, for more, and for stop.',
      hazard: 'Anyone may call stop. Everyone stops.',
    },
    {
      text: 'Keep traffic and people off the lay before it is charged.',
      hazard: 'Hose that fills moves; a coupling that parts can kill.',
    },
    {
      text: `Order water when both ends say ready. Wanted at the scene: ${figures.full(demandOf(plan), 'flow')}.`,
    },
    { text: 'Ask each operator for intake and discharge pressure; write them down.' },
    { text: 'End it in order: nozzles, then pumps down slowly, then hydrants, slowly.' },
  ];
}

const demandOf = (plan: Plan) => plan.demandGpm ?? 0;

function supplyRig(telling: Telling, rig: Rig): DrillStep[] {
  const { plan } = telling;
  const into = plan.lines.filter(({ to }) => owner(to) === rig.id);
  const out = plan.lines.filter(({ from }) => owner(from) === rig.id);
  const drafts = plan.drafts.filter(({ id }) => into.some(({ from }) => owner(from) === id));
  const steps: DrillStep[] = [];
  if (drafts.length > 0) steps.push(...draftSteps(drafts.map(nameOf)));
  steps.push(...waterBefore(telling, into));
  steps.push(...into.map((line) => connect(telling, line)));
  steps.push(...out.map((line) => connect(telling, line)), ...openSteps(telling, into));
  if (drafts.length === 0) {
    steps.push({
      text: 'Bleed the air, then open the intake slowly.',
      hazard: 'Air in the pump takes the hose with it.',
    });
  }
  steps.push(...handleSteps(telling, rig), setStep(telling, rig));
  return steps;
}

function draftSteps(names: readonly string[]): DrillStep[] {
  return [
    {
      text: `Set the strainer in ${listed(names)}: covered, off the bottom, every joint tight.`,
      hazard: 'Soft banks and deep water: stay off the edge, wear a float.',
    },
    { text: 'Prime within the time that the maker allows; then open the discharge slowly.' },
  ];
}

/** Hydrants and assist valves that stand before these lines. */
function before(plan: Plan, into: readonly Line[]) {
  const owners = new Set(into.map(({ from }) => owner(from)));
  const valves = plan.appliances.filter(
    (piece) => piece.kind === 'assist-valve' && owners.has(piece.id),
  );
  for (const valve of valves) if ('on' in valve) owners.add(owner(valve.on));
  return { valves, hydrants: plan.hydrants.filter(({ id }) => owners.has(id)) };
}

function openSteps({ plan }: Telling, into: readonly Line[]): DrillStep[] {
  const { hydrants } = before(plan, into);
  if (hydrants.length === 0) return [];
  return [
    {
      text: `On the word, open ${listed(hydrants.map(nameOf))} fully, slowly.`,
      hazard: 'Everyone off the hose and the couplings while it fills.',
    },
  ];
}

function waterBefore({ plan }: Telling, into: readonly Line[]): DrillStep[] {
  const { hydrants, valves } = before(plan, into);
  const steps: DrillStep[] = hydrants.map((hydrant) => ({
    text: `${nameOf(hydrant)}: caps off, flush until it runs clear, shut it again.`,
    hazard: 'Stand clear of the outlets; open and shut it slowly.',
  }));
  for (const valve of valves) {
    const on = 'on' in valve ? valve.on : '';
    steps.push({
      text: `${nameOf(valve)} on ${portWords(plan, on)}; handle so that the pump suction is shut.`,
    });
  }
  return steps;
}

function connect({ plan, figures }: Telling, line: Line): DrillStep {
  const { full, units } = figures;
  const count = line.count > 1 ? `${line.count} lines of ` : '';
  const gate = typeof line.valve === 'object' ? '; its valve is gated later' : '';
  const shut = line.valve === 'shut' ? '; its valve stays shut' : '';
  return {
    text: `Connect ${count}${full(line.lengthFt, 'length')} of ${formatHoseSize(line.hose, units)}: ${portWords(plan, line.from)} to ${portWords(plan, line.to)}${gate}${shut}.`,
  };
}

function handleSteps({ plan }: Telling, rig: Rig): DrillStep[] {
  const fed = plan.lines.filter(({ to }) => owner(to) === rig.id).map(({ from }) => owner(from));
  const valves = plan.appliances.filter(
    (piece) => piece.kind === 'assist-valve' && fed.includes(piece.id),
  );
  return valves.map((valve) => {
    const boosts = 'handle' in valve && valve.handle === 'boost';
    return boosts
      ? {
          text: `${nameOf(valve)}: turn the handle slowly so that the pump suction opens.`,
          hazard: 'The supply line stays charged all the while: no shut-down, no surge.',
        }
      : { text: `${nameOf(valve)}: leave the handle; hydrant water passes the clapper.` };
  });
}

function setStep({ orders, figures }: Telling, rig: Rig): DrillStep {
  const order = orders.find(({ id }) => id === rig.id);
  if (!order || order.setting.mode === 'idle' || order.pdpPsi <= 0) {
    return { text: 'Do not pump; let the water through. Stand by to boost.' };
  }
  return {
    text: `On the word, raise the discharge in steps to ${figures.full(order.pdpPsi, 'pressure')}. Say: “${order.radio}”`,
    hazard: 'Watch the intake: ease back before it runs out of water.',
  };
}

function attackRig(telling: Telling, rig: Rig): DrillStep[] {
  const { plan, orders, figures } = telling;
  const into = plan.lines.filter(({ to }) => owner(to) === rig.id);
  const out = plan.lines.filter(({ from }) => owner(from) === rig.id);
  // Hydrants that an engine stands at are that engine's.
  const own = into.filter(({ from }) => !isBoosted(plan, owner(from)));
  const order = orders.find(({ id }) => id === rig.id);
  const steps: DrillStep[] = [];
  if (rig.tankGal) {
    steps.push({
      text: `Tank to pump open: ${figures.full(rig.tankGal, 'volume')} until the supply comes.`,
    });
  }
  steps.push(...waterBefore(telling, own));
  steps.push(...into.map((line) => connect(telling, line)), ...openSteps(telling, own));
  steps.push({
    text: 'Bleed the air, open the intake slowly, then shut tank to pump.',
    hazard: 'Both open too fast loses the pump its prime.',
  });
  steps.push(...out.map((line) => connect(telling, line)));
  if (order && order.pdpPsi > 0) {
    steps.push({
      text: `Raise the discharge in steps to ${figures.full(order.pdpPsi, 'pressure')}. Say: “${order.radio}”`,
      hazard: 'Nozzle crews first: no pressure before they say ready.',
    });
    for (const { line, lossPsi } of order.gate) {
      const gated = plan.lines.find(({ id }) => id === line);
      if (!gated) continue;
      steps.push({
        text: `Gate down ${portWords(plan, gated.from)} (${describeLine(plan, gated)}): its gauge reads ${figures.full(order.pdpPsi - lossPsi, 'pressure')}.`,
      });
    }
  }
  return steps;
}

function isBoosted(plan: Plan, pieceId: string): boolean {
  return plan.lines.some(
    ({ from, to }) =>
      owner(from) === pieceId &&
      plan.rigs.some(({ id, role }) => id === owner(to) && role !== 'attack'),
  );
}

function crewNames(plan: Plan): string {
  const names = plan.nozzles.map(nameOf);
  return names.length > 0 ? listed(names) : 'connection crew';
}

function nozzleCrew({ plan, figures }: Telling): DrillStep[] {
  const steps: DrillStep[] = plan.nozzles.map((nozzle) => ({
    text: `${nameOf(nozzle)}: stretch it, take the kinks out, nozzle shut, two hands on it; say ready.`,
  }));
  const rated = figures.full(plan.nozzles[0]?.ratedPsi ?? 100, 'pressure');
  const master = plan.nozzles.some(({ use }) => use === 'master stream');
  if (plan.nozzles.length > 0) {
    steps.push(
      {
        text: 'Bleed the air, open slowly, brace for the reaction.',
        hazard: master
          ? 'A master stream knocks people down and moves: secure the device, keep everyone out of its way.'
          : 'Two on a hand line until it is steady.',
      },
      { text: `Check the nozzle’s pressure with a gauge where there is one: ${rated} wanted.` },
      { text: 'Shut slowly on the word; drain and roll up only when the pump is down.' },
    );
  }
  for (const appliance of plan.appliances) {
    if (appliance.kind !== 'sprinkler') continue;
    steps.push({
      text: `${nameOf(appliance)}: check the clappers, connect hand-tight, then say ready.`,
    });
  }
  return steps;
}

/** "H-114 steamer outlet" */
function portWords(plan: Plan, ref: string): string {
  const found = portOf(plan, ref);
  if (!found) {
    const piece = pieceOf(plan, owner(ref));
    return piece ? nameOf(piece) : owner(ref);
  }
  const { piece, port } = found;
  if ('open' in piece) return nameOf(piece);
  return `${nameOf(piece)}, ${port.label[0]!.toLowerCase()}${port.label.slice(1)}`;
}

const owner = (ref: string) => splitPortRef(ref).pieceId;

function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
