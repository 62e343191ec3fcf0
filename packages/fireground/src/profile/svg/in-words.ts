import type { PressureProfile } from '../profile.ts';
import type { ProfileSvgOptions } from './options.ts';
import { stationWords } from './stations.ts';

/** The drawing in words, for those who cannot see it: each path with its stations in order. */
export function inWords(profile: PressureProfile, options: ProfileSvgOptions): string {
  const { formatPressure, formatDistance, formatFlow, nameOf = (piece) => piece } = options;
  return [...profile.supply, ...profile.attack]
    .map(({ label, flowGpm, stations }) => {
      const stops = stations
        .filter(({ kind }) => kind !== 'terrain')
        .map((station) => {
          const { psi, alongFt } = station;
          const words = stationWords(station, nameOf);
          return `${words} ${formatPressure(psi)} at ${formatDistance(alongFt)}`;
        });
      return `${label}, ${formatFlow(flowGpm)}: ${stops.join('; ')}.`;
    })
    .join(' ');
}
