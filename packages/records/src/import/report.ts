import type { ImportKind } from './mapping/mapping.ts';
import type { RefusalCode } from './source/source.ts';

/** One row that was not taken, and what to do about it. */
export interface Refusal {
  code: RefusalCode;
  /** CSV: line of the file, from 1. Otherwise the feature, from 1. */
  row: number;
  column?: string;
  /** The record's field that is missing or out of range. */
  field?: string;
  /** Of a row whose key another row has: that key. */
  key?: string;
  /** As it stands in the file, cut to 200 characters. */
  value?: string;
  reason: string;
  remedy: string;
}

/** A value that the department gave itself and that an import left as it was. */
export interface KeptValue {
  row: number;
  /** Name of the record, or its id. */
  record: string;
  field: string;
  /** "cleared" where the department has emptied the field. */
  ours: string;
  theirs: string;
}

/** A row that was taken, and what a person should look at in it. */
export interface NotedRow {
  row: number;
  /** Name of the record, or its day. */
  record: string;
  /** A test that plans cannot use; or a value that is not understood, kept in the note. */
  what: 'cannot be used' | 'kept in the note';
  /** A whole sentence. */
  text: string;
}

export interface ImportReport {
  kind: ImportKind;
  sourceName: string;
  fileName: string;
  /** True where nothing was written because nobody asked for it. */
  dryRun: boolean;
  /** Rows read. */
  rows: number;
  added: number;
  changed: number;
  same: number;
  /** Rows that are of another kind by the mapping's `only`. */
  skipped: number;
  /** Of the skipped rows, those that are known to be of another kind. */
  otherKinds: { kind: ImportKind; count: number }[];
  notedCount: number;
  /** The first 1,000. */
  noted: NotedRow[];
  refusedCount: number;
  /** The first 1,000 refused rows; all of them are in the file of refused rows. */
  refused: Refusal[];
  byReason: { code: RefusalCode; count: number; example: string }[];
  keptCount: number;
  /** The first 1,000. */
  kept: KeptValue[];
  notices: string[];
}
