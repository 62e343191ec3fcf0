/** What a list may say of service, and of walkers, beside the columns that are taken. */
import type { Source, SourceRow } from '../source/source.ts';
import { nameScore, plainName } from './column-name.ts';
import { asAsked } from './contrary.ts';
import { fieldsByKind } from './fields.ts';
import type { FieldMapping, ImportKind } from './mapping.ts';
import { LEAST_MATCH } from './match-columns.ts';
import { onFoot } from './osm-tags.ts';
import { readValue } from './read-value.ts';
import { valuesOf } from './sample-values.ts';

/** Ways on foot by the class that a list of streets has, where no column of its own says so. */
export function footOnlyByClass(
  kind: ImportKind,
  { sample }: Source,
  fields: readonly FieldMapping[],
): FieldMapping | undefined {
  if (kind !== 'streets' || fields.some(({ field }) => field === 'footOnly')) return undefined;
  const column = fields.find(({ field }) => field === 'class')?.columns[0];
  if (column === undefined) return undefined;
  const word = (row: SourceRow) =>
    String(row.values[column] ?? '')
      .trim()
      .toLowerCase();
  if (!sample.some((row) => onFoot.has(word(row)))) return undefined;
  return {
    field: 'footOnly',
    columns: [column],
    words: { ...Object.fromEntries([...onFoot].map((one) => [one, true])), '*': false },
    confidence: 0.8,
    why: 'Some of its classes are ways on foot.',
  };
}

/** Columns that may tell which hydrants are out of service, where none is taken for it. */
export function untoldService(
  kind: ImportKind,
  { columns, sample }: Source,
  fields: readonly FieldMapping[],
  used: ReadonlySet<string>,
  said: readonly string[],
): string[] {
  if (kind !== 'hydrants' || fields.some(({ field }) => field === 'status')) return [];
  const reason = fields.find(({ field }) => field === 'statusReason')?.columns[0];
  const hints = columns.filter(
    (column) =>
      (column === reason || !used.has(column)) &&
      /\boos\b|in service|out of service|abandoned|retired|removed|status reason/.test(
        plainName(column),
      ) &&
      valuesOf(sample, column).length > 0 &&
      !said.some((one) => one.startsWith(`${column}: it may be`)),
  );
  return hints.map(
    (column) =>
      `${column}: it may tell which hydrants are out of service. No column is taken for that, and all count as in service.`,
  );
}

/** Rows in which a column that is not taken says another thing of a choice than the one that is. */
export function contradictions(
  kind: ImportKind,
  source: Source,
  fields: readonly FieldMapping[],
  columns: readonly string[],
): string[] {
  const taken = new Set(fields.flatMap((one) => one.columns));
  return fields.flatMap((field) => {
    const spec = fieldsByKind[kind].find((one) => one.field === field.field);
    const own = field.columns[0]!;
    if (!spec || field.columns.length !== 1) return [];
    if (spec.type.is !== 'choice' && spec.type.is !== 'yes-no') return [];
    const said = (row: SourceRow, column: string) => {
      const read = readValue(asAsked(row.values[column] ?? null, spec, column), spec);
      return read.is === 'value' ? read.value : undefined;
    };
    return columns.flatMap((other) => {
      if (taken.has(other) || spec.not?.test(plainName(other))) return [];
      if (nameScore(plainName(other), spec.names) < LEAST_MATCH) return [];
      const rows = source.sample.filter((row) => {
        const [ours, theirs] = [said(row, own), said(row, other)];
        return ours !== undefined && theirs !== undefined && ours !== theirs;
      });
      const first = rows[0]?.number;
      if (first === undefined) return [];
      return `${own}: ${spec.label} is taken from it, and ${other} says otherwise in ${rows.length} of the rows looked at (row ${first}). Say which of them counts.`;
    });
  });
}
