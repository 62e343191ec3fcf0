/** What is picked, kept in the address: a link leads back to it. */
import { useMemo } from 'react';
import { goTo, useSearch } from '../places/place.ts';

export type PickKind = 'building' | 'hydrant' | 'station' | 'water';

export interface Selection {
  building: string | null;
  hydrant: string | null;
  station: string | null;
  water: string | null;
}

const KINDS: readonly PickKind[] = ['building', 'hydrant', 'station', 'water'];

export function selectionIn(search: URLSearchParams): Selection {
  return {
    building: search.get('building'),
    hydrant: search.get('hydrant'),
    station: search.get('station'),
    water: search.get('water'),
  };
}

/** The address of the district with this picked. */
export function addressOf(selection: Partial<Selection>): string {
  const search = new URLSearchParams();
  for (const kind of KINDS) {
    const id = selection[kind];
    if (id) search.set(kind, id);
  }
  const text = search.toString();
  return `/district${text === '' ? '' : `?${text}`}`;
}

/** A hydrant joins the building that is picked; anything else stands alone. */
export function withPick(before: Selection, kind: PickKind, id: string): Partial<Selection> {
  return kind === 'hydrant' && before.building
    ? { building: before.building, hydrant: id }
    : { [kind]: id };
}

export function useSelection(): Selection {
  const search = useSearch().toString();
  return useMemo(() => selectionIn(new URLSearchParams(search)), [search]);
}

export function pick(kind: PickKind, id: string): void {
  const before = selectionIn(new URLSearchParams(window.location.search));
  goTo(addressOf(withPick(before, kind, id)));
}

export function select(selection: Partial<Selection>): void {
  goTo(addressOf(selection));
}
