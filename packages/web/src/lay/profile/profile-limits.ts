/** The limits that belong on the pressure profile: ceilings over hose, floors under intakes. */
import type { LimitCheck } from '@plugside/fireground';
import type { PlacedStation, Track, Tracks } from '../scene/tracks.ts';

export interface Ceiling {
  x0: number;
  x1: number;
  limitPsi: number;
  passed: boolean;
}

export interface Floor {
  id: string;
  x: number;
  limitPsi: number;
  valuePsi: number;
  passed: boolean;
  word: string;
}

const FLOOR_KINDS = new Set(['main residual', 'booster intake', 'relay intake', 'attack intake']);

/** Greatest pressures over the hose they hold for; neighbours with the same limit are one. */
export function ceilings(tracks: Tracks, limits: readonly LimitCheck[]): Ceiling[] {
  const found: Ceiling[] = [];
  for (const { path, stations } of [...tracks.supply, ...tracks.attack]) {
    const pumpAt = path.spans.findIndex((span) => span.kind === 'pump');
    for (const [i, span] of path.spans.entries()) {
      if (span.kind !== 'hose') continue;
      const check = limits.find((one) => one.kind === 'hose pressure' && one.piece === span.line);
      const limitPsi = check?.limit ?? span.limitPsi;
      const passed = check?.passed ?? false;
      // Short suction hose before the first pump is far below its limit: a ceiling there is noise.
      if (path.regions[i] === 'hookup' && i < pumpAt && !passed) continue;
      const [x0, x1] = [stations[i]!.x, stations[i + 1]!.x];
      const last = found.at(-1);
      if (last && last.limitPsi === limitPsi && last.passed === passed && x0 - last.x1 < 40) {
        last.x1 = Math.max(last.x1, x1);
      } else if (!found.some((one) => one.limitPsi === limitPsi && one.x0 <= x0 && one.x1 >= x1)) {
        found.push({ x0, x1, limitPsi, passed });
      }
    }
  }
  return found;
}

function stationOf(track: Track, check: LimitCheck): PlacedStation | undefined {
  const wanted = check.kind === 'main residual' ? 'main' : 'intake';
  return track.stations.find((one) => one.piece === check.piece && one.kind === wanted);
}

/** Least pressures at the stations that they hold for. */
export function floors(tracks: Tracks, limits: readonly LimitCheck[]): Floor[] {
  return limits.flatMap((check): Floor[] => {
    if (!FLOOR_KINDS.has(check.kind) || check.sense !== 'min' || check.unit !== 'psi') return [];
    for (const track of tracks.supply) {
      const station = stationOf(track, check);
      if (!station) continue;
      return [
        {
          id: check.id,
          x: station.x,
          limitPsi: check.limit,
          valuePsi: check.value,
          passed: check.passed,
          word: check.kind,
        },
      ];
    }
    return [];
  });
}
