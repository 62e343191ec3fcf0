import type { ProfileStation } from '../profile.ts';
import type { DrawnBands } from './bands.ts';
import { type Drawing, FONT_PX, strokeAt, textAt } from './drawing.ts';
import { type LabelWish, type Point, placeLabels } from './place-labels.ts';
import { element } from './xml.ts';

/** Height of a line of the notes under the drawing [px]. */
export const NOTE_PX = 17;

/** A station in words: its piece, and what there is of it. */
export function stationWords(
  { piece, port, kind }: ProfileStation,
  nameOf: (piece: string) => string,
): string {
  const name = nameOf(piece);
  if (kind === 'appliance') return port ? `${name} ${port.replaceAll('-', ' ')}` : name;
  return kind === 'nozzle' || kind === 'terrain' ? name : `${name} ${kind}`;
}

interface Marked {
  parts: string[];
  wishes: LabelWish[];
}

/** A mark for each station, and the label it would like. */
function marks({ paths, tone, options, nameOf }: Drawing): Marked {
  const parts: string[] = [];
  const wishes: LabelWish[] = [];
  const seen = new Set<string>();
  for (const { path, points } of paths) {
    for (const [index, station] of path.stations.entries()) {
      const { x, y } = points[index]!;
      // Paths share stations; each is drawn once.
      const key = `${station.piece} ${station.kind} ${x.toFixed(0)} ${y.toFixed(0)}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const quiet = station.kind === 'terrain' || station.kind === 'outlet';
      parts.push(
        element('circle', {
          cx: x,
          cy: y,
          r: quiet ? 1.8 : 3.5,
          fill: station.kind === 'nozzle' ? '#ffffff' : tone.ink,
          stroke: tone.ink,
          'stroke-width': 1.5,
        }),
      );
      if (quiet) continue;
      const flow = station.kind === 'nozzle' ? `, ${options.formatFlow(path.flowGpm)}` : '';
      const words = stationWords(station, nameOf);
      const text = `${words} ${options.formatPressure(station.psi)}${flow}`;
      wishes.push({ x, y, text, optional: station.kind === 'appliance' });
    }
  }
  return { parts, wishes };
}

/** Marks and labels; labels with no room go under the drawing by number, from `notesTop` on. */
export function stationMarks(
  drawing: Drawing,
  bands: DrawnBands,
  notesTop: number,
): { parts: string[]; notes: number } {
  const { tone, frame, paths } = drawing;
  const { parts, wishes } = marks(drawing);
  const strokes = paths.flatMap(({ points }) =>
    points.slice(1).map((point, index): [Point, Point] => [points[index]!, point]),
  );
  const ranked = [...wishes].sort((a, b) => Number(a.optional) - Number(b.optional));
  const { placed, left } = placeLabels(ranked, {
    frame,
    fontSize: FONT_PX,
    strokes: [...strokes, ...bands.edges],
    taken: bands.labels,
  });
  for (const { wish, box, leader } of placed) {
    if (leader) parts.push(strokeAt(leader, tone.quiet, 0.8));
    const baseline = box.bottom - FONT_PX * 0.24;
    parts.push(textAt(box.left, baseline, wish.text, tone.ink, { class: 'halo' }));
  }
  for (const [index, wish] of left.entries()) {
    const number = String(index + 1);
    parts.push(
      element('circle', { cx: wish.x, cy: wish.y, r: 7, fill: '#ffffff', stroke: tone.ink }),
      textAt(wish.x, wish.y + 3.5, number, tone.ink, { 'text-anchor': 'middle', 'font-size': 10 }),
      textAt(frame.left, notesTop + index * NOTE_PX, `${number}  ${wish.text}`, tone.ink),
    );
  }
  return { parts, notes: left.length };
}
