import { type Line, type Plan, type Rig, splitPortRef } from '@plugside/fireground';

/** The booster hosed to a source, straight or through the valve on it; undefined where there is none. */
export function boosterAt(plan: Plan, sourceId: string): Rig | undefined {
  const atSource = new Set([sourceId]);
  for (const one of plan.appliances) {
    if (one.kind === 'assist-valve' && splitPortRef(one.on).pieceId === sourceId)
      atSource.add(one.id);
  }
  return plan.rigs.find(
    (rig) =>
      rig.role === 'booster' &&
      plan.lines.some(
        (line) =>
          splitPortRef(line.to).pieceId === rig.id && atSource.has(splitPortRef(line.from).pieceId),
      ),
  );
}

/** The short hoses at a booster: what each is for, in the order that water takes. */
export function hookupLines(plan: Plan, boosterId: string): { line: Line; word: string }[] {
  const found = plan.lines.flatMap((line) => {
    const from = splitPortRef(line.from);
    const to = splitPortRef(line.to);
    if (to.pieceId === boosterId) {
      return [{ line, word: from.port.startsWith('side') ? 'side' : 'suction' }];
    }
    return from.pieceId === boosterId && to.port === 'pump-discharge'
      ? [{ line, word: 'discharge' }]
      : [];
  });
  const order = ['suction', 'discharge', 'side'];
  return found.sort((a, b) => order.indexOf(a.word) - order.indexOf(b.word));
}
