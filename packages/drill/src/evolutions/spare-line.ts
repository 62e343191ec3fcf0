import { addAttackLines, type Plan } from '@plugside/fireground';

/** A usual attack line, dry and shut, that lies ready until an extra line is called. */
export function withSpareLine(plan: Plan, rigId: string): { plan: Plan; spareNozzle: string } {
  const grown = addAttackLines(plan, rigId, [{ open: false }]);
  return { plan: grown, spareNozzle: grown.nozzles.at(-1)!.id };
}
