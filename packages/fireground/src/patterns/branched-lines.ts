import type { Appliance, HoseSize, Line, Nozzle, Plan } from '../plan/plan.ts';
import { portsOf } from '../plan/ports.ts';
import {
  type AttackLineOptions,
  freeDischarge,
  nextId,
  rigOf,
  usualAttackLine,
} from './attack-lines.ts';
import { newLine, newManifold, newNozzle, newWye } from './pieces.ts';

/** One line out to a wye or manifold, and the hand lines from it. */
export interface BranchedLinesOptions {
  hose?: HoseSize;
  lengthFt?: number;
  /** Height of the wye or manifold above the rig [ft]. */
  riseFt?: number;
  lines: readonly AttackLineOptions[];
}

/**
 * Adds a leader line to a wye and up to two hand lines from it. Throws RangeError where the
 * rig is unknown or has no discharge left, or for more lines than outlets.
 */
export function addWyedLines(plan: Plan, rigId: string, options: BranchedLinesOptions): Plan {
  const elevationFt = rigOf(plan, rigId).elevationFt + (options.riseFt ?? 0);
  const wye = newWye(nextId(plan, 'W'), { elevationFt });
  return branch(plan, rigId, wye, `${wye.id}.inlet`, { hose: '2-1/2', lengthFt: 200, ...options });
}

/**
 * Adds a line to a manifold and hand lines from it, as many as its outlets. Throws as
 * `addWyedLines`.
 */
export function addManifoldLines(plan: Plan, rigId: string, options: BranchedLinesOptions): Plan {
  const elevationFt = rigOf(plan, rigId).elevationFt + (options.riseFt ?? 0);
  const outlets = Math.max(4, options.lines.length);
  const manifold = newManifold(nextId(plan, 'M'), { elevationFt, outlets });
  return branch(plan, rigId, manifold, `${manifold.id}.inlet1`, {
    hose: '5',
    lengthFt: 300,
    ...options,
  });
}

function branch(
  plan: Plan,
  rigId: string,
  appliance: Appliance,
  inlet: string,
  options: BranchedLinesOptions & { hose: HoseSize; lengthFt: number },
): Plan {
  const outlets = portsOf(appliance).filter((port) => port.direction === 'out');
  if (options.lines.length > outlets.length) {
    throw new RangeError(
      `${options.lines.length} lines asked for, but a ${appliance.kind} has ${outlets.length} outlets.`,
    );
  }
  const leader = newLine(
    nextId(plan, 'leader'),
    freeDischarge(plan, rigId),
    inlet,
    options.hose,
    options.lengthFt,
  );
  let grown: Plan = {
    ...plan,
    appliances: [...plan.appliances, appliance],
    lines: [...plan.lines, leader],
  };
  for (const [index, line] of options.lines.entries()) {
    const [nozzle, hose] = handLine(
      grown,
      appliance,
      `${appliance.id}.${outlets[index]?.name}`,
      line,
    );
    grown = { ...grown, nozzles: [...grown.nozzles, nozzle], lines: [...grown.lines, hose] };
  }
  return grown;
}

function handLine(
  plan: Plan,
  appliance: Appliance,
  from: string,
  options: AttackLineOptions,
): [Nozzle, Line] {
  const nozzle = newNozzle(nextId(plan, 'N'), options.nozzle ?? usualAttackLine.nozzle, {
    elevationFt: appliance.elevationFt + (options.riseFt ?? 0),
    use: options.use ?? 'hand line',
    open: options.open ?? true,
  });
  const line = newLine(
    nextId(plan, 'attack'),
    from,
    `${nozzle.id}.inlet`,
    options.hose ?? usualAttackLine.hose,
    options.lengthFt ?? usualAttackLine.lengthFt,
  );
  return [nozzle, line];
}
