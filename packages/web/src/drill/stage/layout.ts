/** Lays out what a role sees of a scene, from its reach and the width there is. */
import type { DrillScene, DrillView, HoseEnd } from '@plugside/drill';
import { nameOf, pieceOf, piecesOf } from '@plugside/fireground';
import { hosePx } from '../../lay/scene/hose-width.ts';
import { bodyRow } from './layout-body.ts';
import type { Making } from './layout-making.ts';
import { nozzleRow, sourceRow } from './layout-rows.ts';
import type { EndSpot, HoseRun, StageLayout, Vector } from './layout-shape.ts';
import { shownPorts } from './shown-ports.ts';

/** Narrower than this a finger has no room: the drawing is scrolled instead [px]. */
export const leastWidthPx = 358;
/** From this width on hose has room to come in and to leave. */
const ROOMY_PX = 620;
const LOOSE_ROW_PX = 72;
/** Room that a letter takes, and the ring of a port beside the words [px]. */
const LETTER_PX = 6;
const RING_PX = 24;

/**
 * @param width of the drawing [px, `leastWidthPx` or more]
 * @param all draws every port, not only those worth it
 */
export function layoutStage(
  scene: DrillScene,
  view: DrillView,
  width: number,
  all: boolean,
): StageLayout {
  const layout: StageLayout = {
    width,
    height: 0,
    pieces: [],
    ports: [],
    valves: [],
    ends: [],
    hoses: [],
  };
  const shown = shownPorts(scene, view, all);
  const marginPx = width < ROOMY_PX ? 0 : Math.min(150, (width - 500) / 2);
  const making: Making = { scene, valves: view.valves, shown, width, marginPx, layout };
  const reach = new Set([
    ...view.ports.map(({ port }) => port.slice(0, port.lastIndexOf('.'))),
    ...view.valves.map(({ pieceId }) => pieceId),
  ]);
  const { plan } = scene;
  const sourceIds = [...plan.hydrants, ...plan.drafts].map(({ id }) => id);
  const onSource = plan.appliances.filter(({ kind }) => kind === 'assist-valve');
  let y = 6;
  if (sourceIds.some((id) => reach.has(id))) {
    y += sourceRow(making, y);
    const top = [...sourceIds, ...onSource.map(({ id }) => id)];
    y += looseRow(making, view, top, y, 'below');
  }
  for (const piece of piecesOf(plan)) {
    const isBody =
      reach.has(piece.id) &&
      !sourceIds.includes(piece.id) &&
      !onSource.some(({ id }) => id === piece.id) &&
      !('open' in piece);
    if (!isBody) continue;
    y += looseRow(making, view, [piece.id], y, 'above');
    y += bodyRow(making, piece, y) + 14;
  }
  for (const nozzle of plan.nozzles) {
    if (!reach.has(nozzle.id)) continue;
    y += looseRow(making, view, [nozzle.id], y, 'above');
    y += nozzleRow(making, nozzle.id, y);
  }
  const [lastLoose] = layout.ends.slice(-1);
  // A hose that lies at the foot needs room to bend.
  layout.height = lastLoose && y - lastLoose.y < LOOSE_ROW_PX ? y + 24 : y;
  for (const { hose, end, port } of view.hoseEnds) {
    const spot = layout.ports.find((one) => one.port === port);
    if (spot) layout.ends.push({ hose, end, x: spot.x, y: spot.y, out: spot.out, port });
  }
  layout.hoses = scene.hoses.flatMap(({ id }) => runOf(making, view, id));
  return layout;
}

/** A row for hose ends that lie loose by some pieces; kept free for those that began so. */
function looseRow(
  { scene, layout, width, marginPx }: Making,
  view: DrillView,
  pieceIds: readonly string[],
  y: number,
  side: 'above' | 'below',
): number {
  const ends = scene.hoses.flatMap((hose) =>
    (['from', 'to'] as const).flatMap((end) => {
      const began = hose[end];
      const now = view.hoseEnds.find((one) => one.hose === hose.id && one.end === end);
      const loose = now?.port === null && pieceIds.includes(now.at);
      const beganLoose = began.port === undefined && pieceIds.includes(began.at);
      return loose || beganLoose ? [{ hose: hose.id, end, loose }] : [];
    }),
  );
  if (ends.length === 0) return 0;
  const first = marginPx + 50;
  const stepPx = Math.min(160, (width - marginPx - 56) / ends.length);
  ends.forEach(({ hose, end, loose }, at) => {
    if (!loose) return;
    const out: Vector = side === 'below' ? [0.25, 1] : [0.25, -1];
    layout.ends.push({ hose, end, x: first + at * stepPx, y: y + 30, out, port: null });
  });
  return LOOSE_ROW_PX;
}

function runOf({ scene, layout, width }: Making, view: DrillView, id: string): HoseRun[] {
  const hose = scene.hoses.find((one) => one.id === id)!;
  const spot = (end: HoseEnd) => layout.ends.find((one) => one.hose === id && one.end === end);
  const seen = view.hoseEnds.find((one) => one.hose === id);
  const from = spot('from');
  const to = spot('to');
  if (!seen || (!from && !to)) return [];
  const widthPx = hosePx(hose.hose, false) * 1.5;
  if (from && to) {
    const run = runBetween(from, from.out, to, to.out, layout);
    return [{ hose: id, ...run, widthPx, looks: seen.looks }];
  }
  const here = (from ?? to)!;
  const goesRight = from !== undefined;
  const far = hose[from ? 'to' : 'from'];
  const piece = pieceOf(scene.plan, far.at);
  const farName = (piece ? nameOf(piece) : far.at).replace('Hydrant assist', 'Assist');
  const blocked = goesRight && isBlocked(layout, here);
  const edge = { x: goesRight ? width : 0, y: here.y + (blocked ? behindPx : 0) };
  const run = blocked
    ? runBehind(here, edge)
    : runBetween(here, here.out, edge, [goesRight ? -1 : 1, 0], layout);
  return [
    {
      hose: id,
      ...run,
      widthPx,
      looks: seen.looks,
      away: {
        x: edge.x,
        y: edge.y,
        anchor: goesRight ? 'end' : 'start',
        to: farName,
        hasRoom: Math.abs(edge.x - here.x) - RING_PX >= LETTER_PX * `from ${farName}`.length,
      },
    },
  ];
}

/** A hose that another piece stands in the way of leaves this much lower [px]. */
const behindPx = 150;

/** Whether another piece stands between a port and the right edge. */
function isBlocked({ pieces }: StageLayout, { x, y, port }: EndSpot): boolean {
  return (
    port !== null &&
    pieces.some((one) => one.kind === 'hydrant' && one.x > x && Math.abs(one.y + 50 - y) < 40)
  );
}

/** Down from its port and along the foot of what stands in the way. */
function runBehind({ x, y }: At, edge: At): { d: string; middle: Vector } {
  return {
    d: `M${x} ${y}C${x + 46} ${y} ${x + 4} ${edge.y} ${x + 62} ${edge.y}H${edge.x}`,
    middle: [(x + 62 + edge.x) / 2, edge.y],
  };
}

interface At {
  x: number;
  y: number;
}

/** A hose between two points, bent so that it stays within the drawing. */
function runBetween(
  from: At,
  fromOut: Vector,
  to: At | EndSpot,
  toOut: Vector,
  { width, height }: StageLayout,
): { d: string; middle: Vector } {
  const reach = Math.min(150, Math.max(16, Math.hypot(to.x - from.x, to.y - from.y) * 0.45));
  const held = (x: number) => Math.min(width - 6, Math.max(6, x));
  const within = (y: number) => Math.min(height + 4, Math.max(-4, y));
  const c1: Vector = [held(from.x + fromOut[0] * reach), within(from.y + fromOut[1] * reach)];
  const c2: Vector = [held(to.x + toOut[0] * reach), within(to.y + toOut[1] * reach)];
  const at = (axis: 0 | 1, a: number, b: number) => (a + 3 * c1[axis] + 3 * c2[axis] + b) / 8;
  const r = Math.round;
  return {
    d: `M${r(from.x)} ${r(from.y)}C${r(c1[0])} ${r(c1[1])} ${r(c2[0])} ${r(c2[1])} ${r(to.x)} ${r(to.y)}`,
    middle: [at(0, from.x, to.x), at(1, from.y, to.y)],
  };
}
