/** Addresses within the drill's place: `/drill`, `/drill/learn/boost-through-valve`. */
import { type Evolution, evolutions } from '@plugside/drill';

export type DrillMode = 'learn' | 'sandbox';

export type DrillAddress =
  | { at: 'start' }
  | { at: DrillMode; evolution: Evolution }
  /** Names an evolution that does not exist. */
  | { at: 'unknown' };

const slugOf = (key: string) => key.replaceAll(' ', '-');

/** Where to go for an evolution. */
export function drillAddress(mode: DrillMode, key: string): string {
  return `/drill/${mode}/${slugOf(key)}`;
}

/** What an address of the drill's place names. */
export function readDrillAddress(pathname: string): DrillAddress {
  const [, , mode, slug] = pathname.split('/');
  if (!mode) return { at: 'start' };
  const evolution = evolutions.find(({ key }) => slugOf(key) === slug);
  if (!evolution || (mode !== 'learn' && mode !== 'sandbox')) return { at: 'unknown' };
  return { at: mode, evolution };
}
