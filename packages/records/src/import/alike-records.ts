import type { Kind } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import type { ImportKind } from './mapping/mapping.ts';
import { distanceKm } from './place/place.ts';
import type { SourceRow } from './source/source.ts';

/** Records of one name within this of each other may be one [km]. */
const SAME_NAME_KM = 0.25;

interface Known {
  place?: readonly [number, number];
  source: string | undefined;
}

type Draft = Readonly<Record<string, unknown>>;

/** Streets and tests have no name of their own. */
const named: ReadonlySet<Kind> = new Set([
  'stations',
  'hydrants',
  'water-sources',
  'rigs',
  'buildings',
]);

/**
 * Finds, among what was on record before an import, what a row that is about to be added may double: a
 * record of the same name, in any case and punctuation, at about the same place. It may be another all
 * the same, so it is told and nothing is done.
 */
export class AlikeRecords {
  readonly #byName: ReadonlyMap<string, readonly Known[]>;
  #count = 0;
  #first: { row: number; name: string } | undefined;
  readonly #sources = new Set<string>();

  private constructor(byName: ReadonlyMap<string, readonly Known[]>) {
    this.#byName = byName;
  }

  /** Looks through the store only where it has any of the kind. */
  static async of(store: RecordStore, kind: ImportKind): Promise<AlikeRecords> {
    const byName = new Map<string, Known[]>();
    if (named.has(kind) && (await store.count(kind)) > 0) {
      for await (const record of store.all(kind)) {
        const key = nameKey(record);
        const place = placeIn(record);
        const known: Known = { source: record.externalSource, ...(place && { place }) };
        const others = byName.get(key);
        if (others) others.push(known);
        else byName.set(key, [known]);
      }
    }
    return new AlikeRecords(byName);
  }

  look(record: Draft, { number }: SourceRow): void {
    const place = placeIn(record);
    const alike = this.#byName
      .get(nameKey(record))
      ?.find((one) => !one.place || !place || distanceKm(one.place, place) <= SAME_NAME_KM);
    if (!alike) return;
    this.#count += 1;
    this.#first ??= { row: number, name: String(record.name) };
    if (alike.source !== undefined) this.#sources.add(alike.source);
  }

  /** @param sourceName of the list that was brought in */
  notices(sourceName: string): string[] {
    if (!this.#first) return [];
    const others = [...this.#sources].filter((one) => one !== sourceName);
    const lists = others.map((one) => `"${one}"`).join(', ');
    const rows = this.#count === 1 ? '1 added row has' : `${this.#count} added rows have`;
    const remedy =
      others.length > 0
        ? `Those came from the list ${lists}: if this is that list again, give it that name, and it changes them instead of adding others.`
        : 'See whether they are the same, and remove one of the two.';
    return [
      `${rows} the name and the place of a record that was there before (first row ${this.#first.row}, ${this.#first.name}). ${remedy}`,
    ];
  }
}

/** `H-007`, `h 7` and `H7` are one. */
function nameKey(record: object): string {
  const name = 'name' in record ? String(record.name) : '';
  return name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .replace(/(^|\D)0+(?=\d)/g, '$1');
}

function placeIn(record: object): readonly [number, number] | undefined {
  const { longitude, latitude } = record as { longitude?: unknown; latitude?: unknown };
  return typeof longitude === 'number' && typeof latitude === 'number'
    ? [longitude, latitude]
    : undefined;
}
