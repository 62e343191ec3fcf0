import { type Kind, kindLabels } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { keyText } from './key-text.ts';
import type { ImportKind } from './mapping/mapping.ts';

/** Kinds that the rows of a kind refer to. */
const referred: Partial<Record<ImportKind, readonly Kind[]>> = {
  'flow-tests': ['hydrants'],
  rigs: ['stations'],
  hydrants: ['flow-tests'],
};

export type Refer = (kind: string, text: string) => string | 'none' | 'several';

/**
 * Finds records by what a list calls them: their id here, their name in any case, or their id in the
 * list that they came from, in that order.
 */
export async function readReferences(store: RecordStore, kind: ImportKind): Promise<Refer> {
  const tables = new Map<string, Map<string, string>[]>();
  for (const to of referred[kind] ?? []) {
    const [ids, names, keys] = [new Map(), new Map(), new Map()] as Map<string, string>[];
    for await (const record of store.all(to)) {
      ids!.set(record.id, record.id);
      if ('name' in record) add(names!, plain(record.name), record.id);
      if (record.externalId !== undefined) add(keys!, plain(record.externalId), record.id);
    }
    tables.set(to, [ids!, names!, keys!]);
  }
  const find = (to: string, text: string) => {
    const [ids, names, keys] = tables.get(to) ?? [];
    return (
      ids?.get(text) ??
      names?.get(plain(text)) ??
      // "Hydrant 12" for 12.
      names?.get(plain(text).replace(new RegExp(`^${kindLabels[to as Kind]?.[0]}\\s+`), '')) ??
      keys?.get(plain(text))
    );
  };
  // "12.0" for 12, where a spreadsheet has made a decimal number of it.
  return (to, text) => find(to, text) ?? find(to, keyText(text)) ?? 'none';
}

function add(table: Map<string, string>, key: string, id: string): void {
  table.set(key, table.has(key) ? 'several' : id);
}

const plain = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ');
