/** The outlets of a flow test as columns of a table, so that a reading can be mended in a spreadsheet. */
import type { Fields } from '../model/index.ts';

type Outlet = Fields<'flow-tests'>['flowing'][number];

/** As many outlets as the import reads by column. */
const OUTLETS = 4;

/** By the heads that the import knows, each with its unit. */
const heads = (n: number): readonly (readonly [head: string, part: keyof Outlet])[] => [
  [`Pitot ${n} (psi)`, 'pitotPsi'],
  [`Outlet ${n} (in)`, 'outletIn'],
  [`Outlet coefficient ${n}`, 'coefficient'],
  [`Flow of outlet ${n} (gpm)`, 'flowGpm'],
  [`Flowed hydrant ${n}`, 'hydrant'],
];

/** The heads of the columns, outlet by outlet. */
export const outletColumns: readonly string[] = Array.from({ length: OUTLETS }, (_, at) =>
  heads(at + 1).map(([head]) => head),
).flat();

/**
 * Whether the columns hold all of a test's outlets: one without a reading, or a fifth, they would
 * lose, and such a test's outlets stand as JSON instead.
 */
export function fitsColumns(flowing: readonly Outlet[]): boolean {
  return (
    flowing.length > 0 &&
    flowing.length <= OUTLETS &&
    flowing.every(({ pitotPsi, flowGpm }) => pitotPsi !== undefined || flowGpm !== undefined)
  );
}

/** What stands in each of the columns. */
export function outletCells(flowing: readonly Outlet[]): Map<string, string | number | undefined> {
  return new Map(
    flowing.flatMap((outlet, at) =>
      heads(at + 1).map(([head, part]): [string, string | number | undefined] => [
        head,
        outlet[part],
      ]),
    ),
  );
}
