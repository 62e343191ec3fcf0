import type { Kind } from '../model/index.ts';
import type { RecordStore } from '../store/index.ts';
import { exportColumns, referredKind } from './export-columns.ts';

export type NameOfId = (field: string, id: unknown) => string | undefined;

/** Names of the records that a kind refers to. */
export async function namesById(store: RecordStore, kind: Kind): Promise<NameOfId> {
  const tables = new Map<string, Map<string, string>>();
  for (const field of exportColumns(kind)) {
    const to = referredKind[field];
    if (!to) continue;
    const names = new Map<string, string>();
    for await (const record of store.all(to)) {
      if ('name' in record) names.set(record.id, record.name);
    }
    tables.set(field, names);
  }
  return (field, id) => tables.get(field)?.get(String(id));
}
