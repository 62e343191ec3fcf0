/** What may stand in a field, in words and in the units that this person reads. */
import type { UnitSystem } from '@plugside/fireground';
import { shownEntry } from '../../editing/quantity-entry.ts';
import type { FieldSpec } from './field.ts';
import type { FieldLimits } from './limits.ts';

/** For instance `more than 0, up to 120 in`; empty where anything may. */
export function allowedWords(spec: FieldSpec, limits: FieldLimits, system: UnitSystem): string {
  const { min, max, above, maxLength, options } = limits;
  if (options) return `one of ${options.join(', ')}`;
  if (spec.type.is === 'date') return 'a date';
  if (maxLength !== undefined) return `up to ${maxLength.toLocaleString('en-US')} characters`;
  const unit = unitOf(spec, system);
  const shown = (value: number) => boundText(spec, value, system);
  if (min !== undefined && max !== undefined) {
    const from = above ? `more than ${shown(min)}, up to` : `${shown(min)} to`;
    return `${from} ${withUnit(shown(max), unit)}`;
  }
  if (min !== undefined) return `${above ? 'more than' : 'at least'} ${withUnit(shown(min), unit)}`;
  return max === undefined ? '' : `up to ${withUnit(shown(max), unit)}`;
}

/** A number with its unit as it is set. */
export function withUnit(number: string, unit: string): string {
  return unit === '' || unit === '°' ? number + unit : `${number} ${unit}`;
}

/** The unit beside a field; empty where it has none. */
export function unitOf({ type }: FieldSpec, system: UnitSystem): string {
  if (type.is === 'quantity' || type.is === 'numbers') return shownEntry(1, type.of, system).unit;
  return type.is === 'degrees' ? '°' : '';
}

function boundText({ type }: FieldSpec, value: number, system: UnitSystem): string {
  if (type.is === 'quantity') return value === 0 ? '0' : shownEntry(value, type.of, system).number;
  return value.toLocaleString('en-US').replace('-', '−');
}
