/** A line that lies ready in a drill from a plan, as one does in the evolutions that ship. */
import {
  type AttackLineOptions,
  addAttackLines,
  freePortsOf,
  type HoseAboard,
  type HoseSize,
  type Plan,
  splitPortRef,
} from '@plugside/fireground';

/** What a spare line is made of, in the order of choice; both are common practice, no source. */
const spareLines = [
  { hose: '1-3/4', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 150, ratedPsi: 100 } },
  { hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 250, ratedPsi: 100 } },
] as const satisfies readonly AttackLineOptions[];

/**
 * The plan with one attack line more off the engine at the scene, its nozzle shut, for an extra line to
 * be called: where the engine has a discharge free and the hose for it.
 *
 * @param aboard what the engine carries, the lines of the plan with it [ft]; with no hose of a spare line's
 *   sizes at all it is taken not to be known, and to be enough
 * @returns the plan as it is, and no nozzle, where it has no such engine, port or hose
 */
export function withSpareAttackLine(
  plan: Plan,
  aboard: readonly HoseAboard[] = [],
): { plan: Plan; spareNozzle?: string } {
  const rig = plan.rigs.find(({ id }) => id === plan.scene);
  // An engine that pumps into a system without a nozzle has no crew to call a line for.
  const hasCrew = plan.nozzles.length > 0;
  if (!rig || !hasCrew || freePortsOf(plan, rig, 'out').length === 0) return { plan };
  const isKnown = spareLines.some(({ hose }) => carriedFt(aboard, hose) > 0);
  const line = spareLines.find(
    ({ hose, lengthFt }) =>
      !isKnown || carriedFt(aboard, hose) - usedFt(plan, rig.id, hose) >= lengthFt,
  );
  if (!line) return { plan };
  const grown = addAttackLines(plan, rig.id, [{ ...line, open: false }]);
  return { plan: grown, spareNozzle: grown.nozzles.at(-1)!.id };
}

const carriedFt = (aboard: readonly HoseAboard[], size: HoseSize) =>
  aboard.reduce((sum, { hose, lengthFt }) => sum + (hose === size ? lengthFt : 0), 0);

/** Of a size, off the engine's discharges [ft]. */
function usedFt({ lines }: Plan, rigId: string, size: HoseSize): number {
  return lines
    .filter(({ from, hose }) => hose === size && splitPortRef(from).pieceId === rigId)
    .reduce((sum, { lengthFt, count }) => sum + lengthFt * count, 0);
}
