/** What is written along the lines of the profile rather than at its stations. */
import type { Units } from '../../editing/use-units.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import type { LabelSpec } from '../scene/LabelLayer.tsx';
import type { Tracks } from '../scene/tracks.ts';
import type { ProfileFrame } from './profile-frame.ts';
import type { Ceiling } from './profile-limits.ts';

/** Hydrant pressure alone, on the profile's axis, and what is said of it. */
export interface AloneLine {
  tracks: Tracks;
  text: string;
}

/** The words on the dashed line. */
export function aloneLabel(
  unassisted: AloneLine | null,
  frame: ProfileFrame,
  sizes: DrawingSizes,
): LabelSpec[] {
  const stations = unassisted?.tracks.supply[0]?.stations.filter((one) => one.region === 'lay');
  if (!unassisted || !stations || stations.length === 0) return [];
  const first = unassisted.tracks.supply[0]!.stations.filter((one) => one.region === 'hookup').at(
    -1,
  );
  const last = stations.find((one) => one.kind === 'intake') ?? stations.at(-1)!;
  if (!first) return [];
  const t = 0.4;
  return [
    {
      id: 'alone',
      x: first.x + (last.x - first.x) * t,
      y: frame.y(first.psi + (last.psi - first.psi) * t),
      lines: sizes.compact ? unassisted.text.split(': ') : [unassisted.text],
      look: 'soft',
      priority: 5,
      sides: ['above', 'below'],
      gap: 6,
      reach: 30,
    },
  ];
}

/** Each ceiling's limit, where there is room to write it. */
export function ceilingLabels(
  over: readonly Ceiling[],
  frame: ProfileFrame,
  units: Units,
): LabelSpec[] {
  return over.flatMap((one): LabelSpec[] => {
    const y = frame.y(one.limitPsi);
    const widthPx = one.x1 - one.x0;
    if (widthPx < 56 || y < frame.topPx) return [];
    const limit = units.of(one.limitPsi, 'pressure');
    const text =
      widthPx > 170 ? `hose, at most ${limit.number} ${limit.unit}` : `max ${limit.number}`;
    return [
      {
        id: `ceiling:${one.x0}:${one.limitPsi}`,
        x: one.x0 + (one.x1 - one.x0) * 0.8,
        y,
        alternates: [0.5, 0.35].map((share) => [one.x0 + (one.x1 - one.x0) * share, y] as const),
        lines: [text],
        look: 'warning',
        priority: 6,
        sides: ['above'],
        gap: 4,
        reach: 0,
      },
    ];
  });
}
