import { type Drawing, type DrawnPath, strokeAt } from './drawing.ts';

/** A rise shorter than this has no room for an arrowhead [px]. */
const ARROW_PX = 14;

/** The paths: hose solid, the second source's dashed; pumps thick; fittings dotted; hose past its limit thicker still. */
export function pathStrokes(drawing: Drawing): string[] {
  return drawing.paths.flatMap((drawn, order) => onePath(drawing, drawn, order === 0));
}

function onePath({ tone }: Drawing, { path, points, side }: DrawnPath, first: boolean): string[] {
  return path.spans.map((span, index) => {
    const [a, b] = [points[index]!, points[index + 1]!];
    const ends = { 'stroke-linecap': 'round' };
    if (span.kind === 'pump') {
      const raises = a.y - b.y >= ARROW_PX;
      const more = { ...ends, 'marker-end': raises ? 'url(#raise)' : undefined };
      return strokeAt([a, b], tone.pump, 4, more);
    }
    if (span.kind === 'piece') {
      return strokeAt([a, b], tone.water, 2, { ...ends, 'stroke-dasharray': '1.5 4' });
    }
    const passed = [path.stations[index]!, path.stations[index + 1]!].some(
      ({ psi }) => psi > span.limitPsi + 0.05,
    );
    if (passed) return strokeAt([a, b], tone.warning, 5, ends);
    const dashed = side === 'supply' && !first;
    const more = { ...ends, 'stroke-dasharray': dashed ? '10 4' : undefined };
    return strokeAt([a, b], tone.water, side === 'supply' ? 3 : 2, more);
  });
}
