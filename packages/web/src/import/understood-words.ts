/** A row as it was understood, in words: each value with its unit and where it comes from. */
import {
  fieldSpec,
  fieldsByKind,
  type ImportKind,
  type Measure,
} from '@plugside/records/import-fields';
import type { Cells } from '../api/imports.ts';
import { formatNumber, type Units } from '../editing/use-units.ts';

export interface UnderstoodLine {
  /** The record's field. */
  field: string;
  label: string;
  value: string;
  /** "list.csv, MAIN_SIZE, imported 2026-11-25". */
  origin: string | null;
}

const apart = new Set(['origins', 'externalSource', 'externalId', 'longitude', 'latitude']);

/** The lines of a record, in the order of its kind's fields; place and key last. */
export function understoodLines(kind: ImportKind, fields: Cells, units: Units): UnderstoodLine[] {
  const origins = (fields.origins ?? {}) as Record<string, { text?: string } | undefined>;
  const origin = (field: string) => origins[field]?.text ?? null;
  const order = fieldsByKind[kind].map(({ field }) => field.split(/[[.]/)[0]);
  const names = Object.keys(fields)
    .filter((name) => !apart.has(name) && fields[name] !== undefined)
    .sort((a, b) => rank(order, a) - rank(order, b));
  const lines = names.flatMap((name) =>
    name === 'flowing'
      ? flowLines(kind, fields.flowing, units, origin('flowing'))
      : [
          {
            field: name,
            label: fieldLabel(kind, name),
            value: valueText(kind, name, fields[name], units),
            origin: origin(name),
          },
        ],
  );
  const { longitude, latitude } = fields;
  if (typeof longitude === 'number' && typeof latitude === 'number') {
    lines.push({
      field: 'place',
      label: 'Place',
      value: placeText(longitude, latitude),
      origin: origin('longitude'),
    });
  }
  const key = fields.externalId;
  lines.push({
    field: 'key',
    label: 'Key in the list',
    value: typeof key === 'string' && !key.startsWith('~') ? key : 'from its name and place',
    origin: null,
  });
  return lines;
}

const rank = (order: readonly (string | undefined)[], name: string) => {
  const at = order.indexOf(name);
  return at < 0 ? order.length : at;
};

function flowLines(
  kind: ImportKind,
  flowing: unknown,
  units: Units,
  origin: string | null,
): UnderstoodLine[] {
  if (!Array.isArray(flowing)) return [];
  return flowing.flatMap((outlet: Cells, at) =>
    Object.entries(outlet).map(([part, value]) => {
      const field = `flowing[${at}].${part}`;
      return {
        field,
        label: fieldLabel(kind, field),
        value: valueText(kind, field, value, units),
        origin,
      };
    }),
  );
}

/** The label of a record's field, as this app says it. */
export function fieldLabel(kind: ImportKind, field: string): string {
  if (field === 'path') return 'Line';
  if (field === 'longitude' || field === 'latitude')
    return field === 'longitude' ? 'Longitude' : 'Latitude';
  const spec = fieldSpec(kind, field);
  if (spec) return spec.label;
  const spaced = field.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
  return `${spaced.charAt(0).toUpperCase()}${spaced.slice(1)}`;
}

/** A value in the units of whoever reads it. */
export function valueText(kind: ImportKind, field: string, value: unknown, units: Units): string {
  if (field === 'path' && Array.isArray(value)) return `${value.length} points`;
  if (field === 'footprint' && Array.isArray(value)) {
    const corners = (value[0] as unknown[] | undefined)?.length ?? 1;
    return `${corners - 1} corners`;
  }
  if (typeof value === 'number' && (field === 'longitude' || field === 'latitude')) {
    return `${formatNumber(value, 5)}°`;
  }
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') {
    const type = fieldSpec(kind, field)?.type;
    return type?.is === 'measure'
      ? measureText(value, type.of, units)
      : formatNumber(value, digitsOf(value));
  }
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

const measureText = (value: number, measure: Measure, units: Units): string =>
  units.text(value, measure);

const digitsOf = (value: number) => (Number.isInteger(value) ? 0 : 2);

/** `42.36005° N, 71.05888° W`: five digits are about a metre. */
export function placeText(longitude: number, latitude: number): string {
  const angle = (value: number, [plus, minus]: readonly [string, string]) =>
    `${Math.abs(value).toFixed(5)}° ${value >= 0 ? plus : minus}`;
  return `${angle(latitude, ['N', 'S'])}, ${angle(longitude, ['E', 'W'])}`;
}
