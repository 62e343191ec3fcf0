/** One cell into one field's value, by the field's type. */
import type { Cell, RefusalCode } from '../source/source.ts';
import { isBlank } from '../values/blank.ts';
import { type DateOrder, readDate } from '../values/dates.ts';
import { readCount, readMeasure, readParts } from '../values/measures.ts';
import { type Decimal, readNumber } from '../values/numbers.ts';
import { insideUnitOf, unitsOf } from '../values/units.ts';
import { readYesNo } from '../values/yes-no.ts';
import type { FieldSpec } from './field-spec.ts';

export type ValueRead =
  | { is: 'value'; value: unknown }
  | { is: 'blank' }
  | { is: 'fault'; code: RefusalCode; reason: string; remedy: string };

export interface ValueOptions {
  unit?: string;
  decimal?: Decimal;
  dateOrder?: DateOrder;
  /** The row is a record of our own: what lists write for "not known" is a value there. */
  own?: boolean;
  /** Finds the record that a text names. */
  refer?: (kind: string, text: string) => string | 'none' | 'several';
}

const blank: ValueRead = { is: 'blank' };

export function readValue(cell: Cell, spec: FieldSpec, options: ValueOptions = {}): ValueRead {
  const { type } = spec;
  const { own = false } = options;
  if (
    own && type.is === 'text'
      ? cell === null || cell === ''
      : isBlank(cell, type.is === 'text' || type.is === 'reference')
  )
    return blank;
  if (typeof cell === 'string' && cell.includes('\0')) {
    return fault(
      'value not understood',
      'It holds a NUL character, which no text may.',
      'Take it out.',
    );
  }
  switch (type.is) {
    case 'text':
      return { is: 'value', value: own ? String(cell) : String(cell).trim() };
    case 'measure': {
      if (!own && standsForNothing(cell, type)) return blank;
      const read = readMeasure(cell, type.of, options);
      if (!own && read.ok && type.least !== undefined && read.value < type.least) {
        return fault(
          'value out of range',
          `It comes to ${shownNumber(read.value)} ${insideUnitOf(type.of)}, less than the least there is (${type.least} ${insideUnitOf(type.of)}).`,
          `Correct the value, or write its unit beside it (${unitsOf(type.of).join(', ')}).`,
        );
      }
      return from(read);
    }
    case 'number': {
      const value = typeof cell === 'number' ? cell : readNumber(String(cell), options.decimal);
      return value === undefined
        ? fault('value not understood', 'It is no number.', 'Write a number, such as 0.9.')
        : { is: 'value', value };
    }
    case 'count': {
      if (!own && type.zeroIsBlank && Number(cell) === 0) return blank;
      return from(
        (type.partsCount ? readParts(cell, options.decimal) : undefined) ??
          readCount(cell, options.decimal),
      );
    }
    case 'yes-no':
      return from(readYesNo(cell));
    case 'date': {
      const read = readDate(cell, options.dateOrder, own);
      if (read.ok) return { is: 'value', value: read.value };
      return fault(
        'ambiguous' in read ? 'date ambiguous' : 'value not understood',
        read.reason,
        read.remedy,
      );
    }
    case 'choice': {
      const said = String(cell).trim().toLowerCase().replace(/\s+/g, ' ');
      const means =
        type.words[said] ??
        type.words[said.replaceAll('_', ' ')] ??
        // "out of service - broken stem": the word, then more about it.
        type.words[/^([\p{L} ]{4,}?)\s*[-–—:;,/(]/u.exec(said)?.[1] ?? ''];
      const allowed = [...new Set(Object.values(type.words))].join(', ');
      return means === undefined
        ? fault(
            'value not understood',
            'The word is not known.',
            `Write one of: ${allowed}; or say what the word means.`,
          )
        : { is: 'value', value: means };
    }
    case 'reference': {
      const said = String(cell).trim();
      const found = options.refer?.(type.to, said) ?? 'none';
      if (found === 'none') {
        return fault(
          'not found',
          `No record of ${type.to} goes by that name or id.`,
          `Import the ${type.to} first, or correct the name.`,
        );
      }
      if (found === 'several') {
        return fault(
          'not found',
          `Several records of ${type.to} go by that name.`,
          'Use their id from the list they came from.',
        );
      }
      return { is: 'value', value: found };
    }
    case 'json':
      return fromJson(cell);
  }
}

/** Numbers that lists write for "not known". */
function standsForNothing(
  cell: Cell,
  type: Extract<FieldSpec['type'], { is: 'measure' }>,
): boolean {
  const number = typeof cell === 'number' ? cell : Number(cell);
  if (number === 0) return type.zeroIsBlank ?? false;
  if (number === -9999 || number === -999 || number === -99999) return true;
  return (number === 9999 || number === 99999) && type.of !== 'volume';
}

const shownNumber = (value: number) => String(Math.round(value * 1000) / 1000);

function fromJson(cell: Cell): ValueRead {
  try {
    return { is: 'value', value: JSON.parse(String(cell)) };
  } catch {
    return fault(
      'value not understood',
      'It is no JSON.',
      'Leave it as the export wrote it, or blank.',
    );
  }
}

const fault = (code: RefusalCode, reason: string, remedy: string): ValueRead => ({
  is: 'fault',
  code,
  reason,
  remedy,
});

const from = (
  read: { ok: true; value: unknown } | { ok: false; reason: string; remedy: string },
): ValueRead =>
  read.ok
    ? { is: 'value', value: read.value }
    : fault('value not understood', read.reason, read.remedy);
