/** What the crew of an engine before the scene does: at a hydrant, at draft, in the line. */
import { type Line, limitsFor, nameOf, type Plan, type Rig } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import type { DrillRole, DrillStep } from './data.ts';
import {
  check,
  connect,
  connectedBelow,
  layStep,
  linesOf,
  listed,
  owner,
  portWords,
  type Telling,
} from './joints.ts';

/** What an engine before the scene is, by what feeds it. */
export function supplyRole(plan: Plan, rig: Rig): DrillRole['role'] {
  const { into } = linesOf(plan, rig);
  if (draftsOf(plan, into).length > 0) return 'Source engine';
  return before(plan, into).hydrants.length > 0 ? 'Hydrant engine' : 'Relay engine';
}

function draftsOf(plan: Plan, into: readonly Line[]) {
  return plan.drafts.filter(({ id }) => into.some(({ from }) => owner(from) === id));
}

export function supplySteps(telling: Telling, rig: Rig): DrillStep[] {
  const { plan } = telling;
  const { into } = linesOf(plan, rig);
  if (draftsOf(plan, into).length > 0) return draftSteps(telling, rig);
  const { hydrants } = before(plan, into);
  return hydrants.length > 0 ? hydrantSteps(telling, rig) : relaySteps(telling, rig);
}

/** Position, lay, suction, prime, discharge, set. */
function draftSteps(telling: Telling, rig: Rig): DrillStep[] {
  const { plan } = telling;
  const { into, out } = linesOf(plan, rig);
  const names = listed(draftsOf(plan, into).map(nameOf));
  return [
    {
      text: `Position at ${names}: firm ground, as near as the suction hose needs, brake set, wheels chocked.`,
      hazard: 'Soft banks and deep water: stay off the edge, wear a float.',
    },
    ...layStep(telling, rig),
    ...out.map((line) => connect(telling, line)),
    ...into.map((line) => ({
      ...connect(telling, line),
      hazard: 'Every gasket in, every joint tight: one leak of air and it takes no prime.',
    })),
    { text: `Set the strainer in ${names}: covered on every side, off the bottom, tied.` },
    { text: 'Shut every discharge, drain and bleeder.' },
    {
      text: 'Prime until the pump has pressure, within the time that its maker allows.',
      hazard: 'No prime in that time: stop, find the leak of air, begin again.',
    },
    {
      text: 'Raise the pressure a little, then open the discharge slowly and fill the hose.',
      hazard: 'Opened too fast the prime is lost: watch the vacuum and the pressure.',
    },
    setStep(telling, rig, 'Watch the vacuum: ease back where it climbs and the pressure does not.'),
  ];
}

function hydrantSteps(telling: Telling, rig: Rig): DrillStep[] {
  const { plan } = telling;
  const { into, out } = linesOf(plan, rig);
  const { hydrants, valves } = before(plan, into);
  // Past the valve, from the hydrant's other outlets: they go on while the lay is in use.
  const sides =
    valves.length > 0
      ? into.filter(({ from }) => hydrants.some(({ id }) => id === owner(from)))
      : [];
  const own = telling.duties.find(({ rigName }) => rigName === nameOf(rig));
  const by = own && !/\bconnects to\b/.test(own.duty) ? 'a crew left there' : 'this crew';
  return [
    {
      text: `Position at ${listed(hydrants.map(nameOf))}: the suction reaches without a kink, the road stays open; brake set, wheels chocked.`,
    },
    ...layStep(telling, rig),
    ...hydrantBefore(telling, into, by),
    ...(sides.length > 0
      ? [{ text: 'Gates on the side outlets that lines will be taken from; shut them.' }]
      : []),
    // Through a valve the lay is charged first: hooking up takes none of its water.
    ...(valves.length > 0 ? openSteps(telling, into) : []),
    ...into.filter((line) => !sides.includes(line)).map((line) => connect(telling, line)),
    ...out.map((line) => connect(telling, line)),
    ...(valves.length > 0 ? [] : openSteps(telling, into)),
    {
      text: 'Bleed the air, then open the intake slowly.',
      hazard: 'Air in the pump takes the hose with it.',
    },
    ...handleSteps(telling, rig),
    ...sides.map((line) => connect(telling, line)),
    ...(sides.length > 0
      ? [
          {
            text: 'Open the gates of those lines slowly, the air bled first.',
            hazard: 'Air in the pump takes the hose with it.',
          },
        ]
      : []),
    setStep(telling, rig),
  ];
}

function relaySteps(telling: Telling, rig: Rig): DrillStep[] {
  const { into, out } = linesOf(telling.plan, rig);
  return [
    { text: 'Position in the line, off the road; brake set, wheels chocked.' },
    ...layStep(telling, rig),
    ...into.map((line) =>
      connectedBelow(telling.plan, line) ? connect(telling, line) : check(telling, line),
    ),
    ...out.map((line) => connect(telling, line)),
    {
      text: 'Set the intake relief a little over the pressure that comes at rest; open a spare discharge to let the air out.',
    },
    {
      text: 'Say ready. When water comes open the intake slowly, shut the spare discharge, then open the line.',
      hazard: 'Pump in gear only with water in it.',
    },
    setStep(telling, rig),
  ];
}

/** Hydrants and assist valves that stand before these lines. */
export function before(plan: Plan, into: readonly Line[]) {
  const owners = new Set(into.map(({ from }) => owner(from)));
  const valves = plan.appliances.filter(
    (piece) => piece.kind === 'assist-valve' && owners.has(piece.id),
  );
  for (const valve of valves) if ('on' in valve) owners.add(owner(valve.on));
  return { valves, hydrants: plan.hydrants.filter(({ id }) => owners.has(id)) };
}

export function openSteps({ plan }: Telling, into: readonly Line[]): DrillStep[] {
  const { hydrants } = before(plan, into);
  if (hydrants.length === 0) return [];
  return [
    {
      text: `On the word, open ${listed(hydrants.map(nameOf))} fully, slowly.`,
      hazard: 'Everyone off the hose and the couplings while it fills.',
    },
  ];
}

/** Flushed, dressed, shut: before anything is joined to it. */
export function hydrantBefore(
  { plan }: Telling,
  into: readonly Line[],
  by: 'this crew' | 'a crew left there' = 'this crew',
): DrillStep[] {
  const { hydrants, valves } = before(plan, into);
  const crew = by === 'this crew' ? '' : 'Crew left at ';
  const steps: DrillStep[] = hydrants.map((hydrant) => ({
    text: `${crew}${nameOf(hydrant)}: caps off, flush until it runs clear, shut it again.`,
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

function handleSteps({ plan }: Telling, rig: Rig): DrillStep[] {
  const fed = linesOf(plan, rig).into.map(({ from }) => owner(from));
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

function setStep(
  { plan, orders, figures }: Telling,
  rig: Rig,
  hazard = 'Watch the intake: ease back before it runs out of water.',
): DrillStep {
  const order = orders.find(({ id }) => id === rig.id);
  if (!order || order.setting.mode === 'idle' || order.pdpPsi <= 0) {
    return { text: 'Do not pump; let the water through. Stand by to boost.' };
  }
  const least = limitsFor(plan).leastDischargePsi;
  const held =
    order.pdpPsi < least - 0.5
      ? ` Where the pump does not hold so little, ${figures.full(least, 'pressure')} does as well.`
      : '';
  return {
    text: `On the word, raise the discharge in steps to ${figures.full(order.pdpPsi, 'pressure')}.${held} Say: “${inTens(order.radio)}”`,
    hazard,
  };
}
