/** Where every piece of a drill stands in the drawing of the whole: columns from the water to the fire. */
import type { DrillScene } from '@plugside/drill';
import { nameOf, type Piece, piecesOf, splitPortRef } from '@plugside/fireground';

export interface WholeSpot {
  id: string;
  name: string;
  /** From the water, 0 first. */
  column: number;
  row: number;
}

export interface WholeLayout {
  spots: WholeSpot[];
  columns: number;
  /** In the column that has most. */
  rows: number;
  /** Pieces that sit on another without hose. */
  sits: { piece: string; on: string }[];
  /** Pieces that stand in the column of the one they hang on. */
  beside: string[];
}

/** Lays out a scene by where the plan has its hose, so that nothing moves while the drill runs. */
export function layoutWhole(scene: DrillScene): WholeLayout {
  const { plan, hoses } = scene;
  const pieces = piecesOf(plan);
  const sits = [...plan.appliances, ...plan.nozzles].flatMap((one) =>
    'on' in one && one.on !== undefined
      ? [{ piece: one.id, on: splitPortRef(one.on).pieceId }]
      : [],
  );
  const runs = hoses.map(({ from, to }) => ({
    from: splitPortRef(from.plannedPort).pieceId,
    to: splitPortRef(to.plannedPort).pieceId,
  }));
  const links = [...runs, ...sits.map(({ piece, on }) => ({ from: on, to: piece }))];
  const beside = besideOf(pieces, runs);
  const sources = [...plan.hydrants, ...plan.drafts].map(({ id }) => id);
  const columnOf = columnsFrom(sources, pieces, links);
  for (const [piece, neighbour] of beside) columnOf.set(piece, columnOf.get(neighbour)!);
  return { ...placed(pieces, columnOf, links), sits, beside: [...beside.keys()] };
}

/** Pieces whose hose goes to one other and comes back from it stand beside it: a booster at its valve. */
function besideOf(pieces: readonly Piece[], runs: readonly { from: string; to: string }[]) {
  const found = new Map<string, string>();
  for (const { id } of pieces) {
    const gives = runs.filter((run) => run.from === id).map((run) => run.to);
    const takes = runs.filter((run) => run.to === id).map((run) => run.from);
    const neighbours = new Set([...gives, ...takes]);
    const [only] = neighbours;
    if (only !== undefined && neighbours.size === 1 && gives.length > 0 && takes.length > 0) {
      // Of two that have only each other, one stands.
      if (!found.has(only)) found.set(id, only);
    }
  }
  return found;
}

/** Fewest links from a source; what no source reaches stands in the first column. */
function columnsFrom(
  sources: readonly string[],
  pieces: readonly Piece[],
  links: readonly { from: string; to: string }[],
): Map<string, number> {
  const columns = new Map(sources.map((id) => [id, 0]));
  const queue = [...sources];
  for (let id = queue.shift(); id !== undefined; id = queue.shift()) {
    const next = columns.get(id)! + 1;
    for (const { from, to } of links) {
      const other = from === id ? to : to === id ? from : undefined;
      if (other === undefined || columns.has(other)) continue;
      columns.set(other, next);
      queue.push(other);
    }
  }
  for (const { id } of pieces) if (!columns.has(id)) columns.set(id, 0);
  return columns;
}

function placed(
  pieces: readonly Piece[],
  columnOf: ReadonlyMap<string, number>,
  links: readonly { from: string; to: string }[],
): Pick<WholeLayout, 'spots' | 'columns' | 'rows'> {
  const used = [...new Set(pieces.map(({ id }) => columnOf.get(id)!))].sort((a, b) => a - b);
  const rowOf = new Map<string, number>();
  const spots: WholeSpot[] = [];
  let rows = 0;
  used.forEach((column, at) => {
    const here = pieces.filter(({ id }) => columnOf.get(id) === column);
    // Near what they hang on, so that hose crosses little; else as in the plan.
    const pull = (id: string) => {
      const before = links.flatMap(({ from, to }) => {
        const row = rowOf.get(from === id ? to : to === id ? from : '');
        return row === undefined ? [] : [row];
      });
      return before.length === 0 ? 99 : before.reduce((a, b) => a + b, 0) / before.length;
    };
    const pulled = here.map((piece, order) => ({ piece, order, pull: pull(piece.id) }));
    pulled.sort((a, b) => a.pull - b.pull || a.order - b.order);
    pulled.forEach(({ piece }, row) => {
      rowOf.set(piece.id, row);
      spots.push({ id: piece.id, name: nameOf(piece), column: at, row });
    });
    rows = Math.max(rows, here.length);
  });
  return { spots, columns: used.length, rows };
}
