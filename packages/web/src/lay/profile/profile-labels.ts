/** Pressures written on the profile where they occur. */
import type { Units } from '../../editing/use-units.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import type { LabelSpec } from '../scene/LabelLayer.tsx';
import { type Rect, rectsAlong, type Side } from '../scene/label-placement.ts';
import type { PlacedStation, Tracks } from '../scene/tracks.ts';
import type { ProfileFrame } from './profile-frame.ts';

const WORDS: Partial<Record<PlacedStation['kind'], string>> = {
  main: 'main',
  intake: 'in',
  discharge: 'out',
  nozzle: 'nozzle',
};

const SIDES: Partial<Record<PlacedStation['kind'], readonly Side[]>> = {
  main: ['above', 'above right', 'below', 'right'],
  intake: ['below left', 'below', 'above left', 'below right', 'left', 'above'],
  discharge: ['above', 'above right', 'above left', 'right'],
  nozzle: ['right', 'above', 'above right', 'below right'],
};

/** Which stations carry a number: pumps and ends always, bends of the lay where there is room. */
export function stationLabels(
  tracks: Tracks,
  frame: ProfileFrame,
  sizes: DrawingSizes,
  units: Units,
): LabelSpec[] {
  const labels: LabelSpec[] = [];
  const add = (key: string, station: PlacedStation, priority: number, text?: string) => {
    const word = text ?? WORDS[station.kind];
    const number = units.number(station.psi, 'pressure');
    labels.push({
      id: `${key}:${station.piece}:${station.port ?? station.kind}`,
      x: station.x,
      y: frame.y(station.psi),
      lines: [word && !(sizes.compact && station.kind === 'nozzle') ? `${number} ${word}` : number],
      look: 'strong',
      priority,
      sides: SIDES[station.kind] ?? ['above right', 'above', 'below'],
      gap: 9,
      reach: 46,
    });
  };
  for (const [t, track] of tracks.supply.entries()) {
    const start = track.stations.filter((one) => one.region === 'hookup').at(-1);
    for (const station of track.stations) {
      const important =
        station.kind === 'main' || station.kind === 'intake' || station.kind === 'discharge';
      if (t > 0 && station.region === 'lay' && station.kind !== 'intake') continue;
      if (important) add(`s${t}`, station, station.kind === 'discharge' ? 9 : 8);
      else if (station === start && !sizes.compact) add(`s${t}`, station, 3, ' ');
    }
  }
  for (const [a, track] of tracks.attack.entries()) {
    const end = track.stations.at(-1);
    if (end) add(`a${a}`, end, 4);
  }
  return dedupe(labels);
}

function dedupe(labels: readonly LabelSpec[]): LabelSpec[] {
  const seen = new Set<string>();
  return labels.filter((label) => {
    const key = `${Math.round(label.x)}:${Math.round(label.y / 4)}:${label.lines[0]}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** The lines that labels keep off. */
export function lineRects(tracks: Tracks, frame: ProfileFrame): Rect[] {
  return [...tracks.supply, ...tracks.attack].flatMap(({ stations }) =>
    rectsAlong(
      stations.map((one): [number, number] => [one.x, frame.y(one.psi)]),
      6,
    ),
  );
}
