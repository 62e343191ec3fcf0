/** What a store of records does, whichever database is under it. */
import type { FieldsIn, Kind, Stored } from '../model/index.ts';
import type { DrillRuns } from './drill-runs.ts';
import type { Pieces, TerrainFile, TerrainGiven } from './terrain-file.ts';

export type Scalar = string | number | boolean;

/**
 * Fields that must be equal; null asks for records that leave the field out, a list for any of its
 * values. Scalar fields alone: a list or an object cannot be asked for.
 */
export type Where<K extends Kind> = {
  [F in keyof Stored<K> as NonNullable<Stored<K>[F]> extends Scalar ? F : never]?:
    | Stored<K>[F]
    | null
    | readonly NonNullable<Stored<K>[F]>[];
};

/** Degrees WGS 84, edges included. */
export type Box = readonly [west: number, south: number, east: number, north: number];

/** By a field of `sortFields`; names as people count, other texts by their letters. */
export interface Sort {
  field: string;
  descending?: boolean;
}

export interface ListQuery<K extends Kind> {
  where?: Where<K>;
  /**
   * Words to be found in a record's names and notes, or in the name of a record that it belongs to
   * (the hydrant of a flow test), in any case and without accents.
   */
  search?: string;
  /** Places inside; streets that may pass through. Kinds without a place refuse it. */
  box?: Box;
  /** 1 to 5000; 100 where left out. */
  limit?: number;
  /**
   * In the order of making where left out. Records without a value come last both ways; a record
   * that is changed between two pages may come twice or not at all.
   */
  sort?: Sort | undefined;
  /** `next` of the page before, with the same `sort`. */
  after?: string;
}

export interface Page<K extends Kind> {
  /** In the order asked for; else of id, which is the order in which they were made. */
  records: Stored<K>[];
  /** How many there are in all the pages together. */
  total: number;
  /** Left out on the last page. */
  next?: string;
}

export interface MergeOptions {
  /** Called after each batch with how many rows were read so far. */
  onProgress?(done: number): void;
  /** Aborting it ends the merge with nothing written. */
  signal?: AbortSignal;
}

export interface MergeCount {
  added: number;
  changed: number;
  same: number;
}

export interface RecordStore {
  readonly engine: 'sqlite' | 'postgresql';

  /**
   * Writes a new record; the store gives it its id, version and times.
   * @throws RecordIssuesError, DuplicateKeyError
   */
  create<K extends Kind>(kind: K, fields: FieldsIn<K>): Promise<Stored<K>>;

  get<K extends Kind>(kind: K, id: string): Promise<Stored<K> | undefined>;

  /** @throws RecordIssuesError where a field, the box or the limit cannot be asked for */
  list<K extends Kind>(kind: K, query?: ListQuery<K>): Promise<Page<K>>;

  /** Every record, in order of id, read page by page: one made meanwhile may be among them. */
  all<K extends Kind>(kind: K, where?: Where<K>): AsyncIterable<Stored<K>>;

  count(kind: Kind): Promise<number>;

  /** Another text whenever any record of a kind has been made, changed or removed, by whomever. */
  revision(kind: Kind): Promise<string>;

  /**
   * Changes the fields given and leaves the others; a field given as undefined is cleared. A change
   * that changes nothing leaves the version as it is. A value that changes is the department's own:
   * it loses the origin of the one before unless another is given for it. Origins are joined by
   * field; one given as undefined is taken away.
   * @param version the version that the change was made on
   * @throws NotFoundError, StaleRecordError, RecordIssuesError, DuplicateKeyError
   */
  change<K extends Kind>(
    kind: K,
    id: string,
    version: number,
    changes: Partial<FieldsIn<K>>,
  ): Promise<Stored<K>>;

  /** @throws NotFoundError, StaleRecordError, ReferredToError while others refer to it */
  remove(kind: Kind, id: string, version: number): Promise<void>;

  /**
   * Brings in a list again and again without doubling it, in one transaction. A row whose
   * (externalSource, externalId) is known changes that record: fields given are written, fields
   * given as undefined are cleared, fields left out stay, and origins are joined by field; a value
   * that changes without an origin given for it loses the one it had. Any other row is added; one without an externalId is always added. Where a key comes twice, the
   * later row changes the earlier.
   * @throws RecordIssuesError with paths like `rows[17].latitude`; whatever `rows` or the signal throws
   */
  merge<K extends Kind>(
    kind: K,
    rows: Iterable<FieldsIn<K>> | AsyncIterable<FieldsIn<K>>,
    options?: MergeOptions,
  ): Promise<MergeCount>;

  /**
   * All of the work or, where it throws, nothing of it. Use the store that the work is given:
   * writing through the outer one would wait for this very transaction.
   */
  transaction<T>(work: (store: RecordStore) => Promise<T>): Promise<T>;

  /**
   * Reads, through the store that the work is given, everything as it was at one moment. Others go
   * on writing meanwhile; only in memory they wait.
   */
  snapshot<T>(work: (store: RecordStore) => Promise<T>): Promise<T>;

  /** The district's terrain file, which is kept with the records; undefined where there is none. */
  terrainFile(): Promise<TerrainFile | undefined>;

  /** Its bytes in order; read them inside a snapshot where another may be put in meanwhile. */
  terrainPieces(): AsyncIterable<Uint8Array>;

  /** Keeps a terrain file in place of the one before. What it holds is not looked at. */
  putTerrainFile(given: TerrainGiven, pieces: Pieces): Promise<TerrainFile>;

  removeTerrainFile(): Promise<void>;

  /** Drills that run or have run, with their logs. */
  readonly drillRuns: DrillRuns;

  close(): Promise<void>;
}
