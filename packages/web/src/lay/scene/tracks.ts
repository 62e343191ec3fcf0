/** Puts every station of a pressure profile on the shared axis, one track per source. */
import type { PressureProfile, ProfilePath, ProfileStation } from '@plugside/fireground';
import { type DistanceScale, distanceScale } from './distance-scale.ts';

export interface PlacedStation extends ProfileStation {
  x: number;
  region: 'hookup' | 'lay' | 'attack';
}

export interface Track {
  path: ProfilePath;
  stations: PlacedStation[];
  /** Where its hookup begins and ends [px]. */
  hookupX: readonly [number, number];
  shares: HookupShares;
  /** Where its lay begins on the axis [ft]; 0 for the longest. */
  startFt: number;
  layFt: number;
}

export interface AttackTrack {
  path: ProfilePath;
  stations: PlacedStation[];
}

export interface Tracks {
  scale: DistanceScale;
  supply: Track[];
  attack: AttackTrack[];
}

export interface TrackSizes {
  widthPx: number;
  /** Room kept free at the left for the pressure scale [px]. */
  startPx: number;
  hookupPx: number;
  /** Nothing but the source stands there: no valve, no booster. */
  bareSource?: boolean;
  leastAttackPx: number;
  endPx: number;
  rigPx: number;
}

/** Where the pieces of a hookup stand, as shares of its width. */
export interface HookupShares {
  source: number;
  valve: number;
  rigLeft: number;
  rigRight: number;
}

const FULL_HOOKUP: HookupShares = { source: 0.12, valve: 0.4, rigLeft: 0.48, rigRight: 0.77 };

/** With nothing but the source there, the hookup needs little room. */
const BARE_HOOKUP: HookupShares = { source: 0.3, valve: 0.6, rigLeft: 0.6, rigRight: 0.9 };
const BARE_WIDTH = 0.45;

function lastAlong(path: ProfilePath): number {
  return path.stations.at(-1)?.alongFt ?? 0;
}

/** Index of the station where the lay begins. */
function layStart(path: ProfilePath): number {
  const at = path.regions.findIndex((region) => region !== 'hookup');
  return at < 0 ? path.stations.length - 1 : at;
}

/** Shares of the hookup's width for stations 0 … `count`, the last one being the lay's start. */
function hookupShares(path: ProfilePath, count: number, shares: HookupShares): number[] {
  const { source, rigLeft, rigRight } = shares;
  const pumpAt = path.spans.findIndex((span, i) => span.kind === 'pump' && i < count);
  const spread = (from: number, to: number, steps: number, i: number) =>
    steps === 0 ? to : from + ((to - from) * i) / steps;
  return Array.from({ length: count + 1 }, (_, i) => {
    if (pumpAt < 0) return spread(source, 1, count, i);
    if (i <= pumpAt) return spread(source, rigLeft, pumpAt, i);
    return spread(rigRight, 1, count - pumpAt - 1, i - pumpAt - 1);
  });
}

/** Places a profile's supply and attack paths on one axis; shorter lays end at the scene too. */
export function placeTracks(profile: PressureProfile, sizes: TrackSizes): Tracks {
  const lengths = profile.supply.map((path) => {
    const start = path.stations[layStart(path)]?.alongFt ?? 0;
    return Math.max(lastAlong(path) - start, 0);
  });
  const layFt = Math.max(1, ...lengths);
  const shares = sizes.bareSource ? BARE_HOOKUP : FULL_HOOKUP;
  const hookupPx = sizes.bareSource ? sizes.hookupPx * BARE_WIDTH : sizes.hookupPx;
  const rigsAtFt = profile.supply.flatMap((path, p) => {
    const start = path.stations[layStart(path)]?.alongFt ?? 0;
    return path.spans.flatMap((span, i) =>
      span.kind === 'pump' && path.regions[i] !== 'hookup'
        ? [layFt - lengths[p]! + path.stations[i]!.alongFt - start]
        : [],
    );
  });
  const scale = distanceScale({
    ...sizes,
    hookupPx: sizes.startPx + hookupPx,
    layFt,
    attackFt: Math.max(0, ...profile.attack.map(lastAlong)),
    rigsAtFt,
  });
  const supply = profile.supply.map((path, p) =>
    placeSupply(path, scale, {
      startFt: layFt - lengths[p]!,
      layFt: lengths[p]!,
      hookupPx,
      shares,
    }),
  );
  const attack = profile.attack.map((path) => ({
    path,
    stations: path.stations.map((station) => ({
      ...station,
      x: scale.attackX(station.alongFt),
      region: 'attack' as const,
    })),
  }));
  return { scale, supply, attack };
}

function placeSupply(
  path: ProfilePath,
  scale: DistanceScale,
  {
    startFt,
    layFt,
    hookupPx,
    shares,
  }: Pick<Track, 'startFt' | 'layFt' | 'shares'> & { hookupPx: number },
): Track {
  const first = layStart(path);
  const zero = path.stations[first]?.alongFt ?? 0;
  const endX = scale.layX(startFt, 'before');
  const placed = hookupShares(path, first, shares);
  const passedPump = path.stations.map((_, i) => path.spans[i - 1]?.kind === 'pump');
  let lastPumpFt = Number.NEGATIVE_INFINITY;
  const stations = path.stations.map((station, i): PlacedStation => {
    if (i <= first) {
      return { ...station, x: endX - hookupPx + placed[i]! * hookupPx, region: 'hookup' };
    }
    const ft = startFt + station.alongFt - zero;
    if (passedPump[i]) lastPumpFt = ft;
    return {
      ...station,
      x: scale.layX(ft, ft === lastPumpFt ? 'after' : 'before'),
      region: 'lay',
    };
  });
  return { path, stations, hookupX: [endX - hookupPx, endX], shares, startFt, layFt };
}
