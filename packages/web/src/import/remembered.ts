/** How each list was taken last time, kept on this device, so that its next file needs no work. */
import {
  fieldSpec,
  type ImportKind,
  type Mapping,
  missingFieldNotice,
} from '@plugside/records/import-fields';
import { keep, kept } from '../plan-store/device-memory.ts';

export interface RememberedList {
  kind: ImportKind;
  /** The file's name without its ending. */
  file: string;
  columns: readonly string[];
  mapping: Mapping;
}

const NAME = 'plugside.imported-lists';
/** The oldest gives way. */
const MOST_LISTS = 40;

/** Lists remembered, the latest first. */
export function rememberedLists(): RememberedList[] {
  try {
    const lists: unknown = JSON.parse(kept(NAME) ?? '[]');
    return Array.isArray(lists) ? lists.filter(isList) : [];
  } catch {
    return [];
  }
}

const isList = (one: unknown): one is RememberedList => {
  const { kind, columns, mapping } = (one ?? {}) as Partial<RememberedList>;
  return (
    typeof kind === 'string' && Array.isArray(columns) && typeof mapping?.sourceName === 'string'
  );
};

/** A file's name without its ending, and without what a file of refused rows adds. */
const stemOf = (name: string) =>
  name
    .replace(/\.[^.]*$/, '')
    .replace(/ \(\d+\)$/, '')
    .replace(/-refused$/, '');

/** The kind that a file of this name was last; null where it was never brought in here. */
export function kindFromMemory(lists: readonly RememberedList[], name: string): ImportKind | null {
  return lists.find(({ file }) => file === stemOf(name))?.kind ?? null;
}

/** Keeps how a list was taken, in place of what was kept of it before. */
export function rememberList(name: string, columns: readonly string[], mapping: Mapping): void {
  const others = rememberedLists().filter(
    (one) => one.kind !== mapping.kind || one.mapping.sourceName !== mapping.sourceName,
  );
  const lists = [{ kind: mapping.kind, file: stemOf(name), columns, mapping }, ...others].slice(
    0,
    MOST_LISTS,
  );
  keep(NAME, JSON.stringify(lists));
}

export type Recalled =
  /** The list is known by its name: its mapping, made ready for this file. */
  | { is: 'same list'; mapping: Mapping }
  /** The columns are those of a list that was brought in under another name: a person must say. */
  | { is: 'same columns'; name: string; mapping: Mapping }
  | null;

/** What is remembered that fits a file, beside the fresh guess at its mapping. */
export function recall(
  lists: readonly RememberedList[],
  fresh: Mapping,
  columns: readonly string[],
): Recalled {
  const fitting = lists.filter(
    ({ kind, mapping }) =>
      kind === fresh.kind && columnsNamed(mapping).every((column) => columns.includes(column)),
  );
  const known = fitting.find(({ mapping }) => mapping.sourceName === fresh.sourceName);
  if (known) return { is: 'same list', mapping: adapted(known.mapping, fresh, columns) };
  const own = JSON.stringify(withoutRefused(columns));
  const alike = fitting.find((one) => JSON.stringify(withoutRefused(one.columns)) === own);
  if (!alike) return null;
  return {
    is: 'same columns',
    name: alike.mapping.sourceName,
    mapping: adapted(alike.mapping, fresh, columns),
  };
}

const withoutRefused = (columns: readonly string[]) =>
  columns.filter((column) => !column.startsWith('refused_'));

/** The places of this file are its own: only what was chosen about them is taken over. */
function adapted(mapping: Mapping, fresh: Mapping, columns: readonly string[]): Mapping {
  const used = columnsNamed(mapping);
  const { near: _, ...place } = mapping.place ?? {};
  // A file of refused rows brings its geometry as text, whatever the list's own file had.
  const ownPlace = fresh.place?.point === 'refused_geometry' || !mapping.place;
  return {
    ...mapping,
    ...(fresh.place && {
      place: ownPlace
        ? fresh.place
        : {
            ...(place as NonNullable<Mapping['place']>),
            geometry: fresh.place.geometry,
            ...(fresh.place.near && { near: fresh.place.near }),
          },
    }),
    unused: withoutRefused(columns).filter((column) => !used.includes(column)),
    notices: fresh.notices.filter(
      (notice) =>
        !used.some((column) => notice.startsWith(`${column}: `)) &&
        !mapping.fields.some(({ field }) => {
          const label = fieldSpec(mapping.kind, field)?.label;
          return label !== undefined && notice === missingFieldNotice(label);
        }),
    ),
  };
}

/** Every column that a mapping names. */
export function columnsNamed({
  idColumn,
  sourceColumn,
  recordColumn,
  place,
  fields,
  only = [],
}: Mapping): string[] {
  const named = [
    idColumn,
    sourceColumn,
    recordColumn,
    place?.longitude,
    place?.latitude,
    place?.point,
    ...only.map(({ column }) => column),
    ...fields.flatMap(({ columns }) => columns),
  ];
  return [...new Set(named.filter((column) => column !== undefined))];
}

const FRESH = 'plugside.fresh-import';

/** A file just uploaded: nothing of its mapping has been changed by hand. */
export function markFresh(id: string): void {
  try {
    globalThis.sessionStorage?.setItem(FRESH, id);
  } catch {
    // Without it the mapping is guessed, and nothing is lost.
  }
}

/** True for the import that was marked, until it is unmarked. */
export function isFresh(id: string): boolean {
  try {
    return globalThis.sessionStorage?.getItem(FRESH) === id;
  } catch {
    return false;
  }
}

export function unmarkFresh(): void {
  try {
    globalThis.sessionStorage?.removeItem(FRESH);
  } catch {
    // Then nothing was marked either.
  }
}
