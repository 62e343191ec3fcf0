/** What the crew of the engine at the scene does: lines from its tank first, then the supply. */
import { describeLine, type Line, type Plan, type Rig } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import type { DrillStep } from './data.ts';
import {
  check,
  connect,
  connectedBelow,
  layStep,
  linesOf,
  owner,
  portWords,
  type Telling,
} from './joints.ts';
import { hydrantBefore, openSteps } from './supply-steps.ts';

export function attackSteps(telling: Telling, rig: Rig): DrillStep[] {
  const { plan } = telling;
  const { into: all, out } = linesOf(plan, rig);
  const into = all.filter(({ id }) => !telling.takers?.has(id));
  // Hydrants that an engine stands at are that engine's.
  const own = into.filter(({ from }) => !isBoosted(plan, owner(from)));
  const tank = rig.tankGal !== undefined && rig.tankGal > 0;
  const lines = out.map((line) => connect(telling, line));
  return [
    ...layStep(telling, rig),
    {
      text: 'Position at the fire: the lines reach, the aerial keeps its place; brake set, wheels chocked, pump engaged.',
    },
    ...(tank ? fromTank(telling, rig, lines) : lines),
    ...hydrantBefore(telling, own, 'a crew left there'),
    ...into.map((line) =>
      connectedBelow(plan, line) ? connect(telling, line) : check(telling, line),
    ),
    ...openSteps(telling, own),
    {
      text: tank
        ? 'Supply water: bleed the air, open the intake slowly, then shut tank to pump and fill the tank.'
        : 'Supply water: bleed the air, then open the intake slowly.',
      hazard: tank
        ? 'Opened too fast the pump loses its prime, and the lines their water.'
        : 'Air in the pump takes the lines with it.',
    },
    ...set(telling, rig, tank),
  ];
}

/** What the crew of another engine at the fire does: its own lines alone, which the plan draws to the scene's rig. */
export function besideSteps(telling: Telling, scene: Rig, name: string): DrillStep[] {
  const { plan } = telling;
  const into = linesOf(plan, scene).into.filter(({ id }) => telling.takers?.get(id) === name);
  const own = into.filter(({ from }) => !isBoosted(plan, owner(from)));
  const order = telling.orders.find(({ id }) => id === name);
  const said = order ? ` Say: “${inTens(order.radio)}”` : '';
  // A hydrant with a line to the scene's rig is flushed and opened by that one's crew.
  const others = linesOf(plan, scene).into.filter((line) => !into.includes(line));
  const alone = own.filter(({ from }) => others.every((line) => owner(line.from) !== owner(from)));
  return [
    {
      text: 'Position at the fire where your own lines and the supply reach; brake set, wheels chocked, pump engaged.',
    },
    ...hydrantBefore(telling, alone, 'a crew left there'),
    ...into.map((line) =>
      connectedBelow(plan, line) ? connect(telling, line) : check(telling, line),
    ),
    ...openSteps(telling, alone),
    {
      text: 'Supply water: bleed the air, then open the intake slowly.',
      hazard: 'Air in the pump takes the lines with it.',
    },
    {
      text: `Set what your own lines need: the plan ends at your intake.${said}`,
      hazard: 'Nozzle crews first: no pressure before they say ready.',
    },
  ];
}

/** First water does not wait for the supply. */
function fromTank(telling: Telling, rig: Rig, lines: DrillStep[]): DrillStep[] {
  const { figures } = telling;
  const order = telling.orders.find(({ id }) => id === rig.id);
  const has = figures.full(rig.tankGal!, 'volume');
  if (lines.length === 0) {
    return [
      {
        text: `Tank to pump open; first lines on the tank at what they need, ${has} until the supply comes.`,
        hazard: 'Crews inside must know that they are on the tank.',
      },
    ];
  }
  return [
    { text: `Tank to pump open: ${has} until the supply comes.` },
    ...lines,
    {
      text: `Charge the lines from the tank when their crews say ready${order && order.pdpPsi > 0 ? `, at ${figures.full(order.pdpPsi, 'pressure')}` : ''}.`,
      hazard: 'Crews inside must know that they are on the tank.',
    },
  ];
}

function set({ plan, orders, figures }: Telling, rig: Rig, onTank: boolean): DrillStep[] {
  const order = orders.find(({ id }) => id === rig.id);
  const { out } = linesOf(plan, rig);
  if (!order) return [];
  if (out.length === 0) {
    return [
      {
        text: `Set what your own lines need: the plan ends at your intake. Say: “${inTens(order.radio)}”`,
        hazard: 'Nozzle crews first: no pressure before they say ready.',
      },
    ];
  }
  if (order.pdpPsi <= 0) return [];
  const psi = figures.full(order.pdpPsi, 'pressure');
  const how = onTank
    ? `Hold ${psi} as the supply takes over`
    : `Raise the discharge in steps to ${psi}`;
  return [
    {
      text: `${how}. Say: “${inTens(order.radio)}”`,
      hazard: 'Nozzle crews first: no pressure before they say ready.',
    },
    ...order.gate.flatMap(({ line, lossPsi }): DrillStep[] => {
      const gated = plan.lines.find(({ id }) => id === line);
      if (!gated) return [];
      return [gateStep(plan, gated, figures.full(order.pdpPsi - lossPsi, 'pressure'))];
    }),
  ];
}

function gateStep(plan: Plan, gated: Line, reads: string): DrillStep {
  return {
    text: `Gate down ${portWords(plan, gated.from)} (${describeLine(plan, gated)}): its gauge reads ${reads}.`,
  };
}

function isBoosted(plan: Plan, pieceId: string): boolean {
  return plan.lines.some(
    ({ from, to }) =>
      owner(from) === pieceId &&
      plan.rigs.some(({ id, role }) => id === owner(to) && role !== 'attack'),
  );
}
