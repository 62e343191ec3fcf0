import type { WrittenPlan } from './schema.ts';

const ownerOf = (port: string) => port.slice(0, port.lastIndexOf('.'));

/**
 * The height of every piece [ft], with those left out: an appliance or a nozzle stands as
 * high as what it sits on, else as what feeds it, so that a hand line added without a
 * height does not drop to the level of the hydrant; sources and rigs stand at 0.
 */
export function heightsLeftOut(written: WrittenPlan): (id: string) => number {
  const pieces = [
    ...written.hydrants,
    ...written.drafts,
    ...written.rigs,
    ...written.appliances,
    ...written.nozzles,
  ];
  const given = new Map(pieces.map((piece) => [piece.id, piece.elevation]));
  const below = new Map<string, string>();
  for (const line of written.lines) below.set(ownerOf(line.to), ownerOf(line.from));
  for (const part of [...written.appliances, ...written.nozzles]) {
    const under = 'sits-on' in part ? part['sits-on'] : undefined;
    if (under !== undefined) below.set(part.id, ownerOf(under));
  }
  const stands = new Set([...written.appliances, ...written.nozzles].map((part) => part.id));

  return (id) => {
    const seen = new Set<string>();
    let current: string | undefined = id;
    while (current !== undefined && !seen.has(current)) {
      const height = given.get(current);
      if (height !== undefined) return height;
      if (!stands.has(current)) return 0;
      seen.add(current);
      current = below.get(current);
    }
    return 0;
  };
}

/**
 * Sources and rigs without a height in a plan where other heights are given: each was
 * taken as 0, and the reader should know it.
 */
export function heightsTakenAsZero(written: WrittenPlan): { path: string; id: string }[] {
  const groups = { hydrants: written.hydrants, drafts: written.drafts, rigs: written.rigs };
  const some = [...Object.values(groups).flat(), ...written.appliances, ...written.nozzles].some(
    (piece) => piece.elevation !== undefined && piece.elevation !== 0,
  );
  if (!some) return [];
  return Object.entries(groups).flatMap(([group, pieces]) =>
    pieces.flatMap((piece, index) =>
      piece.elevation === undefined ? [{ path: `${group}[${index}]`, id: piece.id }] : [],
    ),
  );
}
