/** A record while it is being written: only what was touched, as it was typed. */
import type { UnitSystem } from '@plugside/fireground';
import type { Kind } from '@plugside/records/model';
import type { FieldSpec } from '../fields/field.ts';
import { type FieldLimits, limitsAt } from '../fields/limits.ts';
import { sameValue } from '../same-value.ts';
import { fieldText, missingWords, readField } from './field-text.ts';

export type Values = Readonly<Record<string, unknown>>;

export interface RowDraft {
  key: number;
  /** As the record had it; empty for a new row. */
  before: Values;
  cells: Drafts;
}

export type Draft =
  /** Bare numbers in it count in the units that were shown when it was typed. */
  | { is: 'text'; text: string; system: UnitSystem }
  /** Picked, not typed; undefined for none. */
  | { is: 'value'; value?: unknown }
  | { is: 'parts'; cells: Drafts }
  | { is: 'rows'; rows: readonly RowDraft[] };

export type Drafts = Readonly<Record<string, Draft>>;

/** What is wrong, by place: `mainIn`, `hose[1].lengthFt`, as the server names places too. */
export type Problems = Readonly<Record<string, string>>;

export interface FieldRead {
  value: unknown;
  problems: Problems;
}

const NONE: Problems = {};

/** Reads a field of a kind: what was written, or what the record has where nothing was. */
export function readDraft(
  kind: Kind,
  spec: FieldSpec,
  draft: Draft | undefined,
  before: unknown,
  system: UnitSystem,
): FieldRead {
  if (!draft) return { value: before, problems: NONE };
  if (draft.is === 'parts' && spec.type.is === 'parts') {
    const read = readCells(kind, spec, spec.type.parts, draft.cells, before, spec.field, system);
    return read;
  }
  if (draft.is === 'rows' && spec.type.is === 'rows') {
    const { columns } = spec.type;
    const reads = draft.rows
      .map((row) => ({ ...row, blank: isBlank(columns, row) }))
      .filter(({ blank }) => !blank)
      .map(({ before: was, cells }, at) =>
        readCells(kind, spec, columns, cells, was, `${spec.field}[${at}]`, system),
      );
    return {
      value: reads.map(({ value }) => value),
      problems: Object.assign({}, ...reads.map(({ problems }) => problems)),
    };
  }
  return readOne(spec, draft, limitsAt(kind, [spec.field]), spec.field, before, system);
}

/** Values that belong together; undefined where all of them are empty. */
function readCells(
  kind: Kind,
  spec: FieldSpec,
  columns: readonly FieldSpec[],
  cells: Drafts,
  before: unknown,
  place: string,
  system: UnitSystem,
): FieldRead {
  const was = (before ?? {}) as Values;
  const reads = columns.map((column) => {
    const limits = limitsAt(kind, [spec.field, column.field]);
    const at = `${place}.${column.field}`;
    const draft = cells[column.field];
    return {
      column,
      limits,
      at,
      ...(draft
        ? readOne(column, draft, { ...limits, required: false }, at, was[column.field], system)
        : { value: was[column.field] ?? limits.fallback, problems: NONE }),
    };
  });
  const faults: Record<string, string> = Object.assign({}, ...reads.map((one) => one.problems));
  const empty = reads.every(({ value }) => value === undefined || value === false);
  if (empty && Object.keys(faults).length === 0) return { value: undefined, problems: NONE };
  for (const { column, limits, at, value } of reads) {
    if (!limits.required || value !== undefined || faults[at]) continue;
    faults[at] = missingWords(column, limits, system);
  }
  const written = reads.filter(({ value }) => value !== undefined);
  return {
    value: Object.fromEntries(written.map(({ column, value }) => [column.field, value])),
    problems: faults,
  };
}

function readOne(
  spec: FieldSpec,
  draft: Draft,
  limits: FieldLimits,
  at: string,
  before: unknown,
  system: UnitSystem,
): FieldRead {
  if (draft.is === 'value') {
    if (draft.value === undefined && limits.required) {
      return { value: undefined, problems: { [at]: missingWords(spec, limits, system) } };
    }
    return { value: draft.value, problems: NONE };
  }
  if (draft.is !== 'text') return { value: before, problems: NONE };
  // Text that shows what is there already would else come back rounded.
  if (draft.text === fieldText(spec, before, draft.system))
    return { value: before, problems: NONE };
  const read = readField(spec, draft.text, draft.system, limits);
  return read.ok
    ? { value: read.value, problems: NONE }
    : { value: before, problems: { [at]: read.message } };
}

/** A row that nobody wrote in says nothing. */
export function isBlank(columns: readonly FieldSpec[], { before, cells }: RowDraft): boolean {
  return columns.every(({ field }) => {
    const draft = cells[field];
    if (!draft) return before[field] === undefined;
    if (draft.is === 'text') return draft.text.trim() === '';
    return draft.is === 'value' && (draft.value === undefined || draft.value === false);
  });
}

/**
 * What stands in a text field: what was typed, or the value in the units now shown. Text that was
 * typed in the other system is turned over where it can be read, and kept as it is where not.
 */
export function shownText(
  spec: FieldSpec,
  draft: Draft | undefined,
  before: unknown,
  system: UnitSystem,
  limits: FieldLimits,
): string {
  if (draft?.is !== 'text') return fieldText(spec, before, system);
  if (draft.system === system) return draft.text;
  const read = readField(spec, draft.text, draft.system, { ...limits, required: false });
  return read.ok ? fieldText(spec, read.value, system) : draft.text;
}

/** The first row of a list as the record has it, ready to be written in. */
export function rowDrafts(value: unknown): RowDraft[] {
  return ((value ?? []) as Values[]).map((before, key) => ({ key, before, cells: {} }));
}

export interface FormRead {
  /** Fields that are another than before; null clears one. */
  changes: Readonly<Record<string, unknown>>;
  problems: Problems;
}

/**
 * What a form would write.
 * @param before the record as read; null for a new one, where required fields must be given
 * @param known fields of a new record that are given already
 */
export function readForm(
  kind: Kind,
  table: readonly FieldSpec[],
  drafts: Drafts,
  before: Values | null,
  system: UnitSystem,
  known: Values = {},
): FormRead {
  const changes: Record<string, unknown> = {};
  const problems: Record<string, string> = {};
  for (const spec of table) {
    if (spec.elsewhere) continue;
    const was = (before ?? known)[spec.field];
    const read = readDraft(kind, spec, drafts[spec.field], was, system);
    Object.assign(problems, read.problems);
    const limits = limitsAt(kind, [spec.field]);
    const { value } = read;
    if (before === null) {
      if (value !== undefined) changes[spec.field] = value;
      else if (limits.required && !problems[spec.field]) {
        problems[spec.field] = missingWords(spec, limits, system);
      }
    } else if (!sameValue(value, was)) {
      changes[spec.field] = value === undefined ? null : value;
    }
  }
  return { changes, problems };
}
