/** Everything a store refuses with; each message names what was wrong and what to do about it. */
import { type Kind, kindLabels, type Stored } from '../model/index.ts';

/** One fault in what was given. */
export interface RecordIssue {
  /** Where: `flowing[1].pitotPsi`; empty for the record as a whole. */
  path: string;
  /** As given; undefined where it was left out. */
  value: unknown;
  /** What may stand there: `0 to 500`. */
  allowed: string;
  /** A whole sentence. */
  message: string;
  remedy: string;
}

/** What was given does not fit the kind's schema, or refers to what is not there. Nothing was written. */
export class RecordIssuesError extends Error {
  readonly kind: Kind;
  readonly issues: readonly RecordIssue[];

  constructor(kind: Kind, issues: readonly RecordIssue[]) {
    super(issues.map(({ message, remedy }) => `${message} ${remedy}`).join('\n'));
    this.name = 'RecordIssuesError';
    this.kind = kind;
    this.issues = issues;
  }
}

/** The record has been changed since the version that the change was made on. Nothing was written. */
export class StaleRecordError extends Error {
  readonly kind: Kind;
  readonly id: string;
  /** The version that the change was made on. */
  readonly yours: number;
  /** The record as it is now. */
  readonly current: Stored<Kind>;

  constructor(kind: Kind, id: string, yours: number, current: Stored<Kind>) {
    super(
      `This ${kindLabels[kind][0]} is at version ${current.version}; your change was made on ` +
        `version ${yours}. Compare the two and make the change again on version ${current.version}.`,
    );
    this.name = 'StaleRecordError';
    this.kind = kind;
    this.id = id;
    this.yours = yours;
    this.current = current;
  }
}

/** No record of that kind has that id. */
export class NotFoundError extends Error {
  readonly kind: Kind;
  readonly id: string;

  constructor(kind: Kind, id: string) {
    super(`There is no ${kindLabels[kind][0]} with id ${id}. It may have been removed.`);
    this.name = 'NotFoundError';
    this.kind = kind;
    this.id = id;
  }
}

/** Records of one kind that refer to another by one field. */
export interface Referrer {
  kind: Kind;
  field: string;
  count: number;
  /** The first ten. */
  ids: string[];
}

/** Others refer to the record, so it stays. Nothing was removed. */
export class ReferredToError extends Error {
  readonly kind: Kind;
  readonly id: string;
  readonly by: readonly Referrer[];

  constructor(kind: Kind, id: string, by: readonly Referrer[]) {
    const who = by.map((one) => `${one.count} ${kindLabels[one.kind][one.count === 1 ? 0 : 1]}`);
    super(
      `This ${kindLabels[kind][0]} is referred to by ${who.join(' and ')}. Remove those first, or ` +
        'have them refer to another.',
    );
    this.name = 'ReferredToError';
    this.kind = kind;
    this.id = id;
    this.by = by;
  }
}

/** Another record of the kind already has that externalSource and externalId. Nothing was written. */
export class DuplicateKeyError extends Error {
  readonly kind: Kind;

  constructor(kind: Kind, externalSource: string | undefined, externalId: string | undefined) {
    super(
      `Another ${kindLabels[kind][0]} already has externalId "${externalId ?? ''}" of ` +
        `"${externalSource ?? ''}". Change that one, or give this one another externalId.`,
    );
    this.name = 'DuplicateKeyError';
    this.kind = kind;
  }
}

/** The database cannot be opened; the message says why and what to do. */
export class StoreOpenError extends Error {
  constructor(message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'StoreOpenError';
  }
}

/** Another process was writing for longer than the store waits. Nothing was written. */
export class StoreBusyError extends Error {
  constructor(options?: ErrorOptions) {
    super('Another program is writing to these records. Nothing was written; try again.', options);
    this.name = 'StoreBusyError';
  }
}

/** Another process runs one of the drills that were to be written. Nothing was written. */
export class DrillTakenError extends Error {
  constructor(options?: ErrorOptions) {
    super('Another server on these records runs this drill. Join it there.', options);
    this.name = 'DrillTakenError';
  }
}
