import type { FieldsIn, Stored } from '../model/index.ts';
import type { MergeCount, RecordStore, Where } from '../store/index.ts';
import { AlikeRecords } from './alike-records.ts';
import { differenceFrom } from './compare-known.ts';
import { SeenKeys } from './duplicate-row.ts';
import type { ImportKind, Mapping } from './mapping/mapping.ts';
import { osmKindOf } from './mapping/osm-tags.ts';
import { readReferences } from './references.ts';
import { RefusedFile } from './refused-file.ts';
import type { ImportReport, Refusal } from './report.ts';
import type { Source, SourceRow } from './source/source.ts';
import { Tally } from './tally.ts';
import { type UnderstandContext, understand } from './understand.ts';

export interface RunImportOptions {
  /** Aborting it ends the import with nothing written. */
  signal?: AbortSignal;
  onProgress?(progress: { done: number; total: number }): void;
  /** Where refused rows go, as a CSV to mend; made only where there are any. */
  refusedFile?: string;
  /** Told of each refused row, in the file's order. */
  onRefused?(row: SourceRow, refusal: Refusal): void;
  /** Count what would happen and write nothing. */
  dryRun?: boolean;
  /** ISO day; left out: today. */
  importedOn?: string;
}

/** Rows that are looked up in the store at once. */
const BATCH = 400;

type Draft = Record<string, unknown>;

interface Entry {
  row: SourceRow;
  record: Draft;
  /** Its key as it stands in the file, where it is written another way. */
  keyAsWritten?: string;
  recordId?: string;
  recordVersion?: number;
}

/**
 * Imports every row of a file in one transaction: all of it, or on an abort or a fault of the
 * database nothing. A row that cannot be understood is refused and reported, and the others go on.
 * A record is known again by the list's name and the row's id, so that importing the same file twice
 * adds nothing; where two rows of the file have the same id the first one counts and the second is
 * refused. A blank cell says nothing: it does not clear what is known.
 * @throws the signal's reason when aborted; whatever the store throws
 */
export async function runImport(
  store: RecordStore,
  source: Source,
  mapping: Mapping,
  options: RunImportOptions = {},
): Promise<ImportReport> {
  const { signal, dryRun = false } = options;
  signal?.throwIfAborted();
  const context: UnderstandContext = {
    fileName: source.name,
    importedOn: options.importedOn ?? new Date().toISOString().slice(0, 10),
    refer: await readReferences(store, mapping.kind),
  };
  const refused = options.refusedFile
    ? new RefusedFile(options.refusedFile, source, mapping)
    : undefined;
  const tally = new Tally();
  try {
    const reading = new Reading(source, mapping, context, options, tally, refused);
    const counts = dryRun ? await reading.count(store) : await reading.write(store);
    await refused?.close();
    reading.tellAlike();
    return tally.report(mapping, source.name, dryRun, counts);
  } catch (error) {
    await refused?.discard();
    throw error;
  }
}

class Reading {
  readonly #source: Source;
  readonly #mapping: Mapping;
  readonly #context: UnderstandContext;
  readonly #options: RunImportOptions;
  readonly #tally: Tally;
  readonly #refused: RefusedFile | undefined;
  readonly #seen = new SeenKeys();
  /** Read when the first row is added. */
  #alike: AlikeRecords | undefined;

  constructor(
    source: Source,
    mapping: Mapping,
    context: UnderstandContext,
    options: RunImportOptions,
    tally: Tally,
    refused: RefusedFile | undefined,
  ) {
    this.#source = source;
    this.#mapping = mapping;
    this.#context = context;
    this.#options = options;
    this.#tally = tally;
    this.#refused = refused;
  }

  /** Rows that were added beside a record that may be the same. */
  tellAlike(): void {
    for (const notice of this.#alike?.notices(this.#mapping.sourceName) ?? []) {
      this.#tally.remark(notice);
    }
  }

  async count(store: RecordStore): Promise<MergeCount> {
    const counts = { added: 0, changed: 0, same: 0 };
    for await (const batch of this.#batches()) {
      for (const one of await this.#compared(store, batch)) counts[one.is] += 1;
    }
    return counts;
  }

  async write(store: RecordStore): Promise<MergeCount> {
    const { kind } = this.#mapping;
    return store.transaction(async (inside) => {
      let same = 0;
      /** Records that no list knows, by their own id: written after the others. */
      const own: { current: Stored<ImportKind>; changes: Draft }[] = [];
      const rows = async function* (this: Reading): AsyncIterable<FieldsIn<ImportKind>> {
        for await (const batch of this.#batches()) {
          for (const one of await this.#compared(inside, batch)) {
            if (one.is === 'same') same += 1;
            else if (one.is === 'changed' && one.current.externalId === undefined) own.push(one);
            else yield one.changes as unknown as FieldsIn<ImportKind>;
          }
        }
      }.call(this);
      const merged = await inside.merge(kind, rows, {
        ...(this.#options.signal && { signal: this.#options.signal }),
      });
      for (const { current, changes } of own) {
        this.#options.signal?.throwIfAborted();
        const { externalSource: _, externalId: __, ...rest } = changes;
        const origins = { ...current.origins, ...(rest.origins as object | undefined) };
        await inside.change(kind, current.id, current.version, { ...rest, origins } as Partial<
          FieldsIn<ImportKind>
        >);
      }
      return {
        added: merged.added,
        changed: merged.changed + own.length,
        same: merged.same + same,
      };
    });
  }

  async *#batches(): AsyncIterable<Entry[]> {
    const { signal, onProgress } = this.#options;
    let batch: Entry[] = [];
    for await (const row of this.#source.rows()) {
      if (this.#tally.rows % 100 === 0) signal?.throwIfAborted();
      this.#tally.rows += 1;
      batch.push(...(await this.#entriesOf(row)));
      if (this.#tally.rows % 500 === 0) {
        onProgress?.({ done: this.#tally.rows, total: this.#source.total });
        // Others in this process get their turn, whoever wants to cancel too.
        await new Promise((resolve) => setImmediate(resolve));
      }
      if (batch.length < BATCH) continue;
      yield batch;
      batch = [];
    }
    signal?.throwIfAborted();
    if (batch.length > 0) yield batch;
    onProgress?.({ done: this.#tally.rows, total: this.#source.total });
  }

  async #entriesOf(row: SourceRow): Promise<Entry[]> {
    const found = understand(row, this.#mapping, this.#context);
    if (found.is === 'skipped') {
      this.#tally.skip(osmKindOf(row, this.#mapping.kind));
      return [];
    }
    if (found.is === 'refused') {
      await this.#refuse(row, found.refusal);
      return [];
    }
    const fields = found.fields as unknown as Draft;
    const duplicate = this.#seen.refusalOf(row, fields, this.#mapping);
    if (duplicate) {
      await this.#refuse(row, duplicate);
      return [];
    }
    for (const remark of found.remarks) this.#tally.remark(remark);
    this.#tally.note(found.noted.map((one) => ({ ...one, row: row.number })));
    const more = found.more.map((one) => ({ row, record: one as unknown as Draft }));
    const { keyAsWritten, recordId, recordVersion } = found;
    return [
      {
        row,
        record: fields,
        ...(keyAsWritten !== undefined && { keyAsWritten }),
        ...(recordId !== undefined && { recordId }),
        ...(recordVersion !== undefined && { recordVersion }),
      },
      ...more,
    ];
  }

  async #refuse(row: SourceRow, refusal: Refusal): Promise<void> {
    this.#tally.refuse(refusal);
    this.#options.onRefused?.(row, refusal);
    await this.#refused?.add(row, refusal);
  }

  /** Each entry beside the record that it is about, where that is known. */
  async #compared(store: RecordStore, batch: readonly Entry[]) {
    const known = await findKnown(store, this.#mapping.kind, batch);
    const compared = batch.map((entry) => {
      const { row, record, recordId, recordVersion } = entry;
      const current = known(entry);
      if (!current) return { is: 'added' as const, changes: record, row };
      const { changes, same, kept } = differenceFrom(
        this.#mapping.kind,
        current as unknown as Draft,
        record,
        // A version of another store's record says nothing of ours.
        current.id === recordId ? recordVersion : undefined,
      );
      this.#tally.keep(kept.map((one) => ({ ...one, row: row.number })));
      return same
        ? { is: 'same' as const, changes }
        : { is: 'changed' as const, changes: withKeyOf(current, changes), current };
    });
    for (const one of compared) {
      if (one.is !== 'added') continue;
      this.#alike ??= await AlikeRecords.of(store, this.#mapping.kind);
      this.#alike.look(one.changes, one.row);
    }
    return compared;
  }
}

/** A record found by its own id may be known to another list: it stays that list's. */
function withKeyOf(current: Stored<ImportKind>, changes: Draft): Draft {
  return current.externalId === undefined
    ? changes
    : { ...changes, externalSource: current.externalSource, externalId: current.externalId };
}

async function findKnown(store: RecordStore, kind: ImportKind, batch: readonly Entry[]) {
  const byKey = new Map<string, Stored<ImportKind>>();
  const byId = new Map<string, Stored<ImportKind>>();
  const bySource = new Map<string, string[]>();
  for (const { record, keyAsWritten } of batch) {
    const source = String(record.externalSource);
    const keys = bySource.get(source) ?? [];
    keys.push(String(record.externalId));
    if (keyAsWritten !== undefined) keys.push(keyAsWritten);
    bySource.set(source, keys);
  }
  // A record that went to another store and comes back has its first id as its key.
  const ids = batch.flatMap(({ recordId, record }) =>
    [recordId, record.externalId].filter((one) => ownId.test(String(one ?? ''))),
  );
  if (ids.length > 0) await collect({ id: ids }, byId, (one) => one.id);
  for (const [externalSource, externalId] of bySource) {
    await collect({ externalSource, externalId }, byKey, keyOf);
  }
  return ({ record, recordId, keyAsWritten }: Entry) =>
    (recordId === undefined ? undefined : byId.get(recordId)) ??
    byKey.get(keyOf(record)) ??
    (keyAsWritten === undefined
      ? undefined
      : byKey.get(keyOf({ externalSource: record.externalSource, externalId: keyAsWritten }))) ??
    byId.get(String(record.externalId));

  async function collect(
    where: object,
    into: Map<string, Stored<ImportKind>>,
    key: (record: Stored<ImportKind>) => string,
  ): Promise<void> {
    const { records } = await store.list(kind, { where: where as Where<ImportKind>, limit: 5000 });
    for (const record of records) into.set(key(record), record);
  }
}

/** A ULID, which no two stores give out. */
const ownId = /^[0-7][0-9A-HJKMNP-TV-Z]{25}$/;

const keyOf = ({
  externalSource,
  externalId,
}: {
  externalSource?: unknown;
  externalId?: unknown;
}) => JSON.stringify([externalSource, externalId]);
