/** Heights of the ground on the screen. */
import type { Tracks } from './tracks.ts';

export interface Ground {
  /** Screen height of an elevation, within a track whose lowest ground is at `lowY`. */
  y(elevationFt: number, lowY: number): number;
  pxPerFt: number;
  lowestFt: number;
  highestFt: number;
  /** How many times taller heights are drawn than distances; 0 where the ground is flat. */
  exaggeration: number;
}

/**
 * One vertical scale for all tracks. Rises are drawn as tall as the room allows, but never
 * so tall that a few feet look like a cliff.
 * @param roomPx height for the tallest rise [px]
 */
export function groundScale(tracks: Tracks, roomPx: number): Ground {
  const heights = tracks.supply.flatMap((track) =>
    track.stations.filter((station) => station.region === 'lay').map((s) => s.elevationFt),
  );
  const hookups = tracks.supply.flatMap((track) => {
    const start = track.stations.filter((station) => station.region === 'hookup').at(-1);
    return start ? [start.elevationFt] : [];
  });
  const all = [...heights, ...hookups];
  const lowestFt = all.length === 0 ? 0 : Math.min(...all);
  const highestFt = all.length === 0 ? 0 : Math.max(...all);
  const range = highestFt - lowestFt;
  const pxPerFt = range === 0 ? 1 : Math.min(roomPx / range, 2.2);
  return {
    pxPerFt,
    lowestFt,
    highestFt,
    exaggeration: range === 0 ? 0 : pxPerFt / tracks.scale.pxPerFt,
    y: (elevationFt, lowY) => lowY - (elevationFt - lowestFt) * pxPerFt,
  };
}
