import { requireFinite, requireWithin } from '@plugside/hydraulics';
import type { Origin } from '../plan/plan.ts';
import type { SupplyTask } from './schedule.ts';

/** What the attack lines take from a time on. */
export interface FlowStep {
  atMin: number;
  flowGpm: number;
  /** For people: "second line". */
  what?: string;
}

/** Water aboard the attack engine. */
export interface AttackTank {
  rigId: string;
  name?: string;
  /** That the pump can draw [gal]. */
  gallons: number;
}

/** Another rig's tank, given to the attack engine through a line. */
export interface NurseTank {
  rigId: string;
  name?: string;
  gallons: number;
  arrivesMin: number;
  /** From arrival to water through the line [min]. */
  connectMin: number;
  connectOrigin?: Origin;
  /** What it can give [gpm]. */
  flowGpm: number;
}

/** Water from a source: what must be done for it, and what it then gives. */
export interface TimelineSupply {
  tasks: readonly SupplyTask[];
  /** What it keeps up [gpm]. */
  flowGpm: number;
  /** When it gives that [min]; left out: when the last task ends. */
  atMin?: number;
  /** What each source gives, as it comes; left out: one source that gives all at once. */
  sources?: readonly TimelineSource[];
}

/** One source of a supply. */
export interface TimelineSource {
  /** "H-114". */
  name: string;
  /** What it gives from a time on, in order of time. */
  flow: readonly FlowStep[];
}

/** From the attack engine's tank to a supply. All times from one zero, in minutes. */
export interface TimelineInput {
  /** In order of time; nothing flows before the first. */
  attackFlow: readonly FlowStep[];
  attackTank: AttackTank;
  nurseTanks?: readonly NurseTank[];
  /** Left out: tanks alone. */
  supply?: TimelineSupply;
  /** Rigs to show with their arrival, besides those that give water. */
  arrivals?: readonly { rigId: string; name?: string; atMin: number }[];
  /** How long to look ahead [min], 1 to 240; 60 where left out. */
  untilMin?: number;
}

const ORDER = 'Put the steps in order of time.';

/** Throws a `QuantityError` for the first number out of its range. */
export function checkTimelineInput(input: TimelineInput): void {
  const { attackFlow, attackTank, nurseTanks = [], supply, arrivals = [], untilMin = 60 } = input;
  requireWithin('untilMin', untilMin, [1, 240], 'min');
  let before = 0;
  for (const [at, step] of attackFlow.entries()) {
    requireFinite(`attackFlow[${at}].atMin`, step.atMin, 'min');
    requireWithin(`attackFlow[${at}].atMin`, step.atMin, [before, 240], 'min', ORDER);
    requireWithin(`attackFlow[${at}].flowGpm`, step.flowGpm, [0, 10_000], 'gpm');
    before = step.atMin;
  }
  requireWithin('attackTank.gallons', attackTank.gallons, [0, 15_000], 'gal');
  for (const [at, nurse] of nurseTanks.entries()) {
    requireWithin(`nurseTanks[${at}].gallons`, nurse.gallons, [0, 15_000], 'gal');
    requireWithin(`nurseTanks[${at}].arrivesMin`, nurse.arrivesMin, [0, 240], 'min');
    requireWithin(`nurseTanks[${at}].connectMin`, nurse.connectMin, [0, 60], 'min');
    requireWithin(`nurseTanks[${at}].flowGpm`, nurse.flowGpm, [0, 5000], 'gpm');
  }
  for (const [at, rig] of arrivals.entries()) {
    requireWithin(`arrivals[${at}].atMin`, rig.atMin, [0, 240], 'min');
  }
  if (supply) requireWithin('supply.flowGpm', supply.flowGpm, [0, 20_000], 'gpm');
  for (const [at, { flow }] of (supply?.sources ?? []).entries()) {
    before = 0;
    for (const [index, step] of flow.entries()) {
      const place = `supply.sources[${at}].flow[${index}]`;
      requireFinite(`${place}.atMin`, step.atMin, 'min');
      requireWithin(`${place}.atMin`, step.atMin, [before, 240], 'min', ORDER);
      requireWithin(`${place}.flowGpm`, step.flowGpm, [0, 20_000], 'gpm');
      before = step.atMin;
    }
  }
  if (supply?.atMin !== undefined) requireWithin('supply.atMin', supply.atMin, [0, 240], 'min');
}
