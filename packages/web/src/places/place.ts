/** Where in the app the page is, told by its address. */
import { useSyncExternalStore } from 'react';

export type PlaceName = 'lay' | 'district' | 'supply' | 'estimate' | 'drill' | 'records' | 'import';

export interface PlaceEntry {
  name: PlaceName;
  path: string;
  text: string;
  /** Reached from another place; it does not stand in the row. */
  under?: PlaceName;
}

/** In the order shown. */
export const places: readonly PlaceEntry[] = [
  { name: 'lay', path: '/', text: 'Lay' },
  { name: 'district', path: '/district', text: 'District' },
  { name: 'supply', path: '/supply', text: 'Supply' },
  { name: 'estimate', path: '/estimate', text: 'Estimate' },
  { name: 'drill', path: '/drill', text: 'Drill' },
  { name: 'records', path: '/records', text: 'Records' },
  { name: 'import', path: '/import', text: 'Import', under: 'records' },
];

/** The place of an address; the lay for one that is none. */
export function placeAt(pathname: string): PlaceName {
  const first = `/${pathname.split('/')[1] ?? ''}`;
  return places.find(({ path }) => path === first)?.name ?? 'lay';
}

const MOVED = 'plugside:moved';

/** Goes to an address of this app without loading the page anew. */
export function goTo(address: string, { replace = false }: { replace?: boolean } = {}): void {
  if (replace) window.history.replaceState(null, '', address);
  else window.history.pushState(null, '', address);
  window.dispatchEvent(new Event(MOVED));
}

function subscribe(tell: () => void): () => void {
  window.addEventListener('popstate', tell);
  window.addEventListener(MOVED, tell);
  return () => {
    window.removeEventListener('popstate', tell);
    window.removeEventListener(MOVED, tell);
  };
}

export function usePathname(): string {
  return useSyncExternalStore(subscribe, () => window.location.pathname);
}

/** What follows the `?`, as it stands in the address. */
export function useSearch(): URLSearchParams {
  const text = useSyncExternalStore(subscribe, () => window.location.search);
  return new URLSearchParams(text);
}
