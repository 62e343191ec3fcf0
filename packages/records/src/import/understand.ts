/** One row of a file into one record, or the reason why not. */
import { type FieldsIn, type Kind, kindLabels, recordSchemas } from '../model/index.ts';
import { dayAheadRemedy, daysAhead, testDaysAllowed } from '../store/test-days.ts';
import { keyText } from './key-text.ts';
import { isPart, keptInNote, mustBeLookedAt, type Noted, namedAs, unusable } from './look-at.ts';
import { asAsked } from './mapping/contrary.ts';
import type { FieldSpec } from './mapping/field-spec.ts';
import { fieldSpec, hasPlace } from './mapping/fields.ts';
import { versionColumn } from './mapping/known-columns.ts';
import type { FieldMapping, ImportKind, Mapping } from './mapping/mapping.ts';
import { fits } from './mapping/osm-tags.ts';
import { readValue, type ValueOptions } from './mapping/read-value.ts';
import type { Place } from './place/place.ts';
import { placeOf } from './place/place.ts';
import type { Refusal } from './report.ts';
import { issueOf } from './schema-issue.ts';
import { shapeFields } from './shape-fields.ts';
import type { Cell, SourceRow } from './source/source.ts';
import { stableKey } from './stable-key.ts';
import { isBlank } from './values/blank.ts';

export interface UnderstandContext {
  /** For origins. */
  fileName: string;
  /** ISO day of the import. */
  importedOn: string;
  /** The id of the record that a text names. */
  refer?: ValueOptions['refer'];
}

export type Understood<K extends ImportKind = ImportKind> =
  | {
      is: 'record';
      fields: FieldsIn<K>;
      /** Other records out of the same row: the further lines of a street in pieces. */
      more: FieldsIn<K>[];
      /** The record's own id, where the file was exported here. */
      recordId?: string;
      /** The version of it that was exported. */
      recordVersion?: number;
      /** The row's key as it stands, where that is another than the record's. */
      keyAsWritten?: string;
      /** What was left out of the row, as sentences. */
      remarks: string[];
      /** What a person should look at in it. */
      noted: Noted[];
    }
  /** A row of another kind by the mapping's `only`. */
  | { is: 'skipped' }
  | { is: 'refused'; refusal: Refusal };

type Draft = Record<string, unknown>;

/**
 * Reads a row by a mapping: fields with their units converted and their origins noted, place in
 * degrees WGS 84, key for importing again. Never throws for what stands in a row.
 */
export function understand<K extends ImportKind>(
  row: SourceRow,
  mapping: Mapping & { kind: K },
  context: UnderstandContext,
): Understood<K> {
  const refuse = (refusal: Omit<Refusal, 'row'>): Understood<K> => ({
    is: 'refused',
    refusal: {
      ...refusal,
      row: row.number,
      ...(refusal.value !== undefined && { value: refusal.value.slice(0, 200) }),
    },
  });
  if (row.fault) return refuse(row.fault);
  // A record of our own, exported and brought back: it is as it was, however unlikely it looks.
  const own = cellText(row, mapping.recordColumn) !== undefined;
  if (!own && isTotals(row, mapping)) {
    return refuse({
      code: 'unreadable row',
      reason: 'It is a line of totals, no record.',
      remedy: 'Take it out.',
    });
  }
  if (
    mapping.only &&
    !mapping.only.some((one) => fits(row.values[one.column] ?? null, one.values))
  ) {
    return { is: 'skipped' };
  }
  const remarks: string[] = [];
  const noted: Noted[] = [];
  const unread: (() => void)[] = [];
  const draft: Draft = {};
  const origins: Draft = {};
  const from: Record<string, string> = {};
  for (const field of mapping.fields) {
    const spec = fieldSpec(mapping.kind, field.field);
    if (!spec) continue;
    const read = readField(row, field, spec, mapping, context, own);
    if (read === undefined) {
      for (const column of field.columns) {
        const cell = row.values[column] ?? null;
        if (spec.type.is === 'text' || !mustBeLookedAt(cell)) continue;
        unread.push(() => {
          noted.push(keptInNote(draft, column, cell, spec.label));
          origins.note ??= originOf(context, column);
        });
      }
      continue;
    }
    if ('fault' in read) {
      // Which test plans use is a choice, no property: it may be made again.
      if (field.field === 'planTestId' && read.fault.code === 'not found') {
        remarks.push('The test chosen for plans is not here; the newest is used.');
        continue;
      }
      return refuse(read.fault);
    }
    const ofKey = field.field === 'name' && field.columns[0] === mapping.idColumn;
    assign(draft, field.field, ofKey ? keyText(String(read.value)) : read.value);
    const top = field.field.split(/[[.]/)[0]!;
    from[field.field] ??= read.column;
    from[top] ??= read.column;
    origins[top] ??= originOf(context, read.column);
    const cell = row.values[read.column] ?? null;
    if (spec.type.is === 'count' && spec.type.partsCount && isPart(cell)) {
      unread.push(() => {
        const said = `"${String(cell).trim()}" is taken as ${read.value}`;
        noted.push(
          keptInNote(draft, read.column, cell, spec.label, `${said} and stands in the note.`),
        );
        origins.note ??= originOf(context, read.column);
      });
    }
  }
  // Outlets given as one list are as somebody kept them.
  if (draft.flowing === undefined || !isGivenWhole(row, mapping)) tidyOutlets(draft);
  // After the note's own columns.
  for (const keep of unread) keep();
  let place: Place | undefined;
  if (hasPlace(mapping.kind) && mapping.place) {
    const found = placeOf(row, mapping.place, own);
    if ('code' in found) return refuse(found);
    place = found;
    const shape = shapeFields(mapping.kind, found, row, mapping.place);
    if ('code' in shape) return refuse(shape);
    Object.assign(draft, shape.fields);
    remarks.push(...shape.remarks);
    for (const name of Object.keys(shape.fields)) {
      origins[name] = originOf(context, found.column ?? 'geometry');
      from[name] = found.column ?? 'geometry';
    }
    if (shape.more.length > 0) {
      return finish(draft, shape.more);
    }
  }
  return finish(draft, []);

  function finish(first: Draft, morePaths: Draft[]): Understood<K> {
    const written = cellText(row, mapping.idColumn);
    const id = written === undefined ? undefined : keyText(written);
    const source = cellText(row, mapping.sourceColumn) ?? mapping.sourceName;
    const recordId = cellText(row, mapping.recordColumn);
    const recordVersion = Number(recordId === undefined ? 0 : row.values[versionColumn]);
    const key = id ?? recordId ?? keyOf(mapping, first, place, row);
    for (const [column, text] of [
      [mapping.idColumn, id],
      [mapping.sourceColumn, source],
      [mapping.recordColumn, recordId],
    ]) {
      if (column === undefined || !text?.includes('\0')) continue;
      return refuse({
        code: 'value not understood',
        column,
        value: text,
        reason: 'It holds a NUL character, which no key may.',
        remedy: 'Take it out.',
      });
    }
    if (mapping.kind !== 'flow-tests' && mapping.kind !== 'streets' && first.name === undefined) {
      first.name = nameFor(mapping.kind, first, id, place);
    }
    const given = first.origins as Draft | undefined;
    const whole = (draft: Draft, n: number): Draft => ({
      ...draft,
      origins: given ?? origins,
      externalSource: source,
      externalId: n === 0 ? key : `${key}#${n + 1}`,
    });
    const records = [first, ...morePaths.map((one) => ({ ...first, ...one }))].map(whole);
    const sound: Draft[] = [];
    for (const record of records) {
      const parsed = recordSchemas[mapping.kind].safeParse(record);
      if (!parsed.success) {
        return refuse(issueOf(parsed.error.issues[0]!, record, from, mapping.kind, row));
      }
      const [ahead] = daysAhead(mapping.kind, parsed.data as Draft);
      if (ahead) {
        return refuse({
          code: 'value out of range',
          field: 'testedOn',
          ...(from.testedOn !== undefined && { column: from.testedOn }),
          value: ahead.value,
          reason: `Tested on: ${ahead.value} has not been yet; allowed: ${testDaysAllowed()}.`,
          remedy: dayAheadRemedy,
        });
      }
      // Without the schema's defaults: what the file does not say must not change what is known.
      const data = parsed.data as Draft;
      sound.push(Object.fromEntries(Object.keys(record).map((name) => [name, data[name]])));
    }
    const [fields, ...more] = sound as unknown as FieldsIn<K>[];
    const doubt = unusable(mapping.kind, fields as unknown as Draft);
    if (doubt) noted.push(doubt);
    const hydrant = mapping.fields.find(({ field }) => field === 'hydrantId')?.columns[0];
    return {
      is: 'record',
      fields: fields!,
      more,
      remarks,
      noted: namedAs(noted, first, cellText(row, hydrant)),
      ...(written !== id && { keyAsWritten: written! }),
      ...(recordId !== undefined && { recordId }),
      ...(recordVersion > 0 && { recordVersion }),
    };
  }
}

type FieldRead = { value: unknown; column: string } | { fault: Omit<Refusal, 'row'> } | undefined;

function readField(
  row: SourceRow,
  field: FieldMapping,
  spec: FieldSpec,
  mapping: Mapping,
  context: UnderstandContext,
  own: boolean,
): FieldRead {
  const options: ValueOptions = {
    ...(own && { own }),
    ...(field.unit !== undefined && { unit: field.unit }),
    ...(field.decimal !== undefined && { decimal: field.decimal }),
    ...(mapping.dateOrder !== undefined && { dateOrder: mapping.dateOrder }),
    ...(context.refer && { refer: context.refer }),
  };
  const cells = field.columns.map((column) => ({
    column,
    cell: asAsked(said(row, column, field), spec, column),
  }));
  if (field.join === 'space' || field.join === 'named') {
    const filled = cells.filter(({ cell }) =>
      own ? cell !== null && cell !== '' : !isBlank(cell, true),
    );
    if (filled.length === 0) return undefined;
    const parts = filled.map(({ column, cell }) =>
      field.join === 'named' && field.columns.length > 1 && column !== 'note'
        ? `${column}: ${cell}`
        : String(cell).trim(),
    );
    const joined = parts.join(field.join === 'named' ? '; ' : ' ');
    return read(joined, filled.map(({ column }) => column).join(', '));
  }
  let fault: FieldRead;
  for (const { column, cell } of cells) {
    const found = read(cell, column);
    // Of several columns the first that is understood, as in the tags of a map.
    if (found !== undefined && 'value' in found) return found;
    fault ??= found;
  }
  return fault;

  function read(cell: Cell, column: string): FieldRead {
    const found = readValue(cell, spec, options);
    if (found.is === 'value') return { value: found.value, column };
    if (found.is === 'blank') return undefined;
    return {
      fault: {
        code: found.code,
        column,
        value: String(cell),
        reason: `${spec.label}: ${found.reason}`,
        remedy: found.remedy,
      },
    };
  }
}

/** A line under the table; of kinds that have a place, its place is missing anyhow. */
function isTotals(row: SourceRow, mapping: Mapping): boolean {
  if (hasPlace(mapping.kind)) return false;
  const name = mapping.fields.find(({ field }) => field === 'name')?.columns[0];
  return /^(grand |sub)?totals?:?$/i.test(cellText(row, name) ?? '');
}

/** A cell after the mapping's own words. */
function said(row: SourceRow, column: string, { words }: FieldMapping): Cell {
  const cell = row.values[column] ?? null;
  if (!words || cell === null) return cell;
  const word = String(cell).trim().toLowerCase();
  if (Object.hasOwn(words, word)) return words[word]!;
  return word !== '' && Object.hasOwn(words, '*') ? words['*']! : cell;
}

function cellText(row: SourceRow, column: string | undefined): string | undefined {
  const cell = column === undefined ? null : (row.values[column] ?? null);
  return isBlank(cell, true) ? undefined : String(cell).trim();
}

/** `flowing[0].pitotPsi` → draft.flowing[0].pitotPsi. */
function assign(draft: Draft, path: string, value: unknown): void {
  const part = /^(\w+)\[(\d+)\]\.(\w+)$/.exec(path);
  if (!part) {
    draft[path] = value;
    return;
  }
  draft[part[1]!] ??= [];
  const list = draft[part[1]!] as Draft[];
  const at = Number(part[2]);
  list[at] ??= {};
  list[at][part[3]!] = value;
}

/** Whether the row gives its outlets in one cell. */
function isGivenWhole(row: SourceRow, { fields }: Mapping): boolean {
  const whole = fields.find(({ field }) => field === 'flowing');
  return whole?.columns.some((column) => !isBlank(row.values[column] ?? null, true)) ?? false;
}

/** Outlets that no column filled leave gaps; one with a size but no reading did not flow. */
function tidyOutlets(draft: Draft): void {
  if (!Array.isArray(draft.flowing)) return;
  draft.flowing = (draft.flowing as (Draft | undefined)[]).filter(
    (one) => one !== undefined && (one.pitotPsi !== undefined || one.flowGpm !== undefined),
  );
}

function keyOf(mapping: Mapping, draft: Draft, place: Place | undefined, row: SourceRow): string {
  if (mapping.kind === 'flow-tests') {
    const hydrant = mapping.fields.find(({ field }) => field === 'hydrantId')?.columns[0];
    return stableKey([cellText(row, hydrant), draft.testedOn as string]);
  }
  const ends = (draft.path as number[][] | undefined)?.flat() ?? [];
  return stableKey([draft.name as string, place?.longitude, place?.latitude, ...ends]);
}

function nameFor(
  kind: Kind,
  draft: Draft,
  id: string | undefined,
  place: Place | undefined,
): string {
  if (typeof draft.address === 'string' && draft.address !== '') return draft.address.slice(0, 120);
  const label = kindLabels[kind][0];
  const one = label[0]!.toUpperCase() + label.slice(1);
  if (id !== undefined) return `${one} ${id}`.slice(0, 120);
  return place ? `${one} at ${place.latitude.toFixed(5)}, ${place.longitude.toFixed(5)}` : one;
}

function originOf({ fileName, importedOn }: UnderstandContext, column: string) {
  return {
    kind: 'imported',
    text: `${fileName}, ${column}, imported ${importedOn}`.slice(0, 500),
    date: importedOn,
  };
}
