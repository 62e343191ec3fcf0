/** What records are called, and their values in words. */
import { formatNumber, type HoseSize, hoseSizes } from '@plugside/fireground';
import { type Kind, kindLabels } from '@plugside/records/model';
import type { Units } from '../editing/use-units.ts';
import { readingText } from '../field-tests/reading-text.ts';
import type { FieldSpec } from './fields/field.ts';
import type { Values } from './form/draft.ts';

export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const kindName = (kind: Kind): string => sentence(kindLabels[kind][1]);

export const countWords = (kind: Kind, count: number): string =>
  `${formatNumber(count, 0)} ${kindLabels[kind][count === 1 ? 0 : 1]}`;

export function hoseWords(size: unknown, units: Units): string {
  return (hoseSizes as readonly unknown[]).includes(size)
    ? units.hose(size as HoseSize)
    : String(size);
}

/** What a record is called where its name alone, or its date, would not tell. */
export function recordTitle(kind: Kind, record: Values, units: Units): string {
  if (kind === 'flow-tests') return `Flow test of ${record.testedOn}`;
  if (kind === 'pump-tests') return `Pump test of ${record.testedOn}`;
  if (kind === 'hose-tests') {
    return `Test of ${hoseWords(record.size, units)} hose, ${record.testedOn}`;
  }
  if (typeof record.name === 'string' && record.name !== '') return record.name;
  return `${sentence(kindLabels[kind][0])} without a name`;
}

export const yesNoWords = (value: boolean): string => (value ? 'yes' : 'no');

/** A value in words with its unit; null where there is none. */
export function valueWords(spec: FieldSpec, value: unknown, units: Units): string | null {
  if (value === undefined || value === null || value === '') return null;
  const { type } = spec;
  switch (type.is) {
    case 'quantity':
      return `${readingText(value as number, type.of, units.system)} ${units.of(1, type.of).unit}`;
    case 'numbers': {
      const numbers = (value as number[]).map((one) => units.number(one, type.of));
      return `${numbers.join(', ')} ${units.of(1, type.of).unit}`;
    }
    case 'count':
      return formatNumber(value as number, 0);
    case 'degrees': {
      const degrees = value as number;
      const side = degrees < 0 ? type.negative : type.positive;
      return `${Math.abs(degrees)}° ${side}`;
    }
    case 'choice':
      return type.words?.[value as string] ?? String(value);
    case 'yes-no':
      return yesNoWords(value as boolean);
    case 'hose-size':
      return hoseWords(value, units);
    case 'parts':
      return partsWords(type.parts, value as Values, units);
    case 'rows':
      return countedWords((value as unknown[]).length, type.one);
    case 'records':
      return countedWords((value as unknown[]).length, 'record');
    case 'path':
      return countedWords((value as unknown[]).length, 'place');
    case 'rings': {
      // A ring ends where it begins.
      const corners = (value as unknown[][]).reduce((sum, ring) => sum + ring.length - 1, 0);
      return countedWords(corners, 'corner');
    }
    case 'json':
      return typeof value === 'string' ? value : JSON.stringify(value);
    default:
      return String(value);
  }
}

function partsWords(parts: readonly FieldSpec[], value: Values, units: Units): string {
  return parts
    .map((part, at) => {
      const words = valueWords(part, value[part.field], units) ?? '';
      return at === 0 ? words : `${part.label.toLowerCase()} ${words}`;
    })
    .join(' ');
}

function countedWords(count: number, one: string): string | null {
  if (count === 0) return null;
  return count === 1 ? `1 ${one}` : `${formatNumber(count, 0)} ${one}s`;
}
