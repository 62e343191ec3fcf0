/** Pressures at rest, every nozzle shut, over the hose of the lay. */
import type { Units } from '../../editing/use-units.ts';
import type { Answered } from '../../plan-store/ask.ts';
import type { LabelSpec } from '../scene/LabelLayer.tsx';
import type { Tracks } from '../scene/tracks.ts';
import type { ProfileFrame } from './profile-frame.ts';

export interface ShutLine {
  id: string;
  x0: number;
  x1: number;
  y: number;
  /** Off the scale, so drawn at its top edge. */
  above: boolean;
  psi: number;
  passed: boolean;
  /** Worth a label: it stands above the flowing pressure, and is the first piece of its line. */
  tell: boolean;
}

/** One line for each piece of hose, at the pressure that stands in it at rest. */
export function shutOffLines(answered: Answered, tracks: Tracks, frame: ProfileFrame): ShutLine[] {
  const lines: ShutLine[] = [];
  for (const { path, stations } of tracks.supply) {
    for (const [i, span] of path.spans.entries()) {
      if (span.kind !== 'hose' || path.regions[i] === 'hookup') continue;
      const shut = answered.shutOff.lines.find((one) => one.id === span.line);
      if (!shut) continue;
      const first = lines.every((one) => one.id !== span.line);
      const y = frame.y(shut.shutPsi);
      lines.push({
        id: first ? span.line : `${span.line}#${i}`,
        x0: stations[i]!.x,
        x1: stations[i + 1]!.x,
        y: Math.max(y, frame.topPx),
        above: y < frame.topPx,
        psi: shut.shutPsi,
        passed: shut.passed,
        tell: first && shut.shutPsi > shut.flowingPsi + 2,
      });
    }
  }
  return lines;
}

/** The pressures at rest, written on their lines. */
export function shutOffLabels(lines: readonly ShutLine[], units: Units): LabelSpec[] {
  return lines.flatMap((one): LabelSpec[] => {
    if (!one.tell) return [];
    const at = (share: number) => one.x0 + (one.x1 - one.x0) * share;
    return [
      {
        id: `shut:${one.id}`,
        x: at(0.72),
        y: one.y,
        alternates: [0.45, 0.25].map((share) => [at(share), one.y] as const),
        lines: [`${one.above ? '↑ ' : ''}${units.number(one.psi, 'pressure')} with nozzles shut`],
        look: one.passed ? 'warning' : 'soft',
        priority: 3,
        sides: ['below', 'above'],
        gap: 5,
        reach: 20,
      },
    ];
  });
}
