import type { NozzleMake } from '../catalogue/nozzles.ts';
import type { HoseSize, Nozzle, Plan, Rig } from '../plan/plan.ts';
import { freePortsOf } from '../plan/ports.ts';
import { newLine, newNozzle } from './pieces.ts';

/** One hand line off a rig. */
export interface AttackLineOptions {
  hose?: HoseSize;
  lengthFt?: number;
  /** Height of the nozzle above the rig [ft]. */
  riseFt?: number;
  nozzle?: NozzleMake;
  use?: Nozzle['use'];
  open?: boolean;
}

/** The usual hand line: 200 ft of 1¾ in with a 150 gpm fog nozzle. */
export const usualAttackLine = {
  hose: '1-3/4',
  lengthFt: 200,
  riseFt: 0,
  nozzle: { kind: 'fog', ratedGpm: 150, ratedPsi: 100 },
} as const satisfies AttackLineOptions;

/** The first free name of a series in a plan: `line2` after `line1`. */
export function nextId(plan: Plan, stem: string): string {
  const taken = new Set(
    [plan.hydrants, plan.drafts, plan.rigs, plan.appliances, plan.nozzles, plan.lines]
      .flat()
      .map((part) => part.id),
  );
  let number = 1;
  while (taken.has(`${stem}${number}`)) number += 1;
  return `${stem}${number}`;
}

/** The rig of that id. Throws where the plan has none. */
export function rigOf(plan: Plan, id: string): Rig {
  const rig = plan.rigs.find((candidate) => candidate.id === id);
  if (!rig) {
    const known = plan.rigs.map((candidate) => candidate.id).join(', ') || 'none';
    throw new RangeError(`The plan has no rig ${id}; its rigs are: ${known}.`);
  }
  return rig;
}

/** The first free discharge of a rig as a port. Throws where all are in use. */
export function freeDischarge(plan: Plan, rigId: string): string {
  const rig = rigOf(plan, rigId);
  const port = freePortsOf(plan, rig, 'out')[0];
  if (!port) {
    throw new RangeError(
      `All ${rig.discharges} discharges of ${rigId} are in use; give it more discharges.`,
    );
  }
  return `${rigId}.${port.name}`;
}

/**
 * Adds hand lines from a rig's free discharges, each to a nozzle of its own. Throws where
 * the rig is not in the plan or has no discharge left.
 */
export function addAttackLines(
  plan: Plan,
  rigId: string,
  lines: readonly AttackLineOptions[],
): Plan {
  let grown = plan;
  for (const options of lines) {
    const rig = rigOf(grown, rigId);
    const nozzleId = nextId(grown, 'N');
    const lineId = nextId(grown, 'attack');
    const nozzle = newNozzle(nozzleId, options.nozzle ?? usualAttackLine.nozzle, {
      elevationFt: rig.elevationFt + (options.riseFt ?? usualAttackLine.riseFt),
      use: options.use ?? 'hand line',
      open: options.open ?? true,
    });
    const line = newLine(
      lineId,
      freeDischarge(grown, rigId),
      `${nozzleId}.inlet`,
      options.hose ?? usualAttackLine.hose,
      options.lengthFt ?? usualAttackLine.lengthFt,
    );
    grown = { ...grown, nozzles: [...grown.nozzles, nozzle], lines: [...grown.lines, line] };
  }
  return grown;
}
