/** A value as the text that stands in its field, and back. */
import { parseQuantity, type Quantity, quantities, type UnitSystem } from '@plugside/fireground';
import { readingText } from '../../field-tests/reading-text.ts';
import { allowedWords, unitOf, withUnit } from '../fields/allowed-words.ts';
import type { FieldSpec } from '../fields/field.ts';
import type { FieldLimits } from '../fields/limits.ts';
import { opened, type Position } from '../outline/outline.ts';

/** `value` is undefined where nothing is written. */
export type Reading = { ok: true; value: unknown } | { ok: false; message: string };

export function fieldText({ type }: FieldSpec, value: unknown, system: UnitSystem): string {
  if (value === undefined || value === null) return '';
  switch (type.is) {
    case 'quantity':
      return readingText(value as number, type.of, system);
    case 'numbers':
      return (value as number[])
        .map((one) => readingText(one, type.of, system).replaceAll(',', ''))
        .join(', ');
    case 'path':
      return placesText(value as number[][]);
    case 'rings':
      return (value as Position[][]).map((ring) => placesText(opened(ring))).join('\n\n');
    case 'json':
      return JSON.stringify(value, null, 1);
    default:
      return String(value);
  }
}

/** Reads what was typed: a bare number counts in the unit shown beside the field. */
export function readField(
  spec: FieldSpec,
  typed: string,
  system: UnitSystem,
  limits: FieldLimits,
): Reading {
  const text = spec.type.is === 'text' && spec.type.lines ? typed.trimEnd() : typed.trim();
  if (text === '') {
    if (!limits.required) return { ok: true, value: undefined };
    return { ok: false, message: missingWords(spec, limits, system) };
  }
  switch (spec.type.is) {
    case 'quantity':
      return inRange(spec, quantityIn(text, spec.type.of, system), text, system, limits);
    case 'count':
    case 'bare':
    case 'degrees':
      return inRange(spec, numberIn(text, spec.type.is === 'count'), text, system, limits);
    case 'numbers':
      return numbersIn(spec, text, spec.type.of, system, limits);
    case 'path':
      return pathIn(text);
    case 'rings':
      return ringsIn(text);
    case 'json':
      return jsonIn(text);
    default:
      return textIn(spec, text, system, limits);
  }
}

/** What to say of a field that cannot be left empty. */
export function missingWords(spec: FieldSpec, limits: FieldLimits, system: UnitSystem): string {
  const allowed = allowedWords(spec, limits, system);
  return `${spec.label} is missing. Give it${allowed === '' ? '' : `: ${allowed}`}.`;
}

type NumberRead = { ok: true; value: number } | { ok: false; message: string };

function quantityIn(text: string, of: Quantity, system: UnitSystem): NumberRead {
  const hasUnit = /[a-z"'″′°]/i.test(text);
  const parsed = parseQuantity(hasUnit ? text : `${text} ${quantities[of].shown[system]}`, of);
  if (parsed.ok) return parsed;
  return { ok: false, message: `${parsed.message}. ${parsed.remedy}` };
}

function numberIn(text: string, whole: boolean): NumberRead {
  const value = Number(text.replaceAll(',', '').replace('−', '-').replace(/\s*°$/, ''));
  if (!Number.isFinite(value)) {
    return { ok: false, message: `“${text}” is not a number. Write digits alone.` };
  }
  if (whole && !Number.isInteger(value)) {
    return { ok: false, message: `“${text}” is not a whole number. Write one.` };
  }
  return { ok: true, value };
}

function inRange(
  spec: FieldSpec,
  read: NumberRead,
  text: string,
  system: UnitSystem,
  limits: FieldLimits,
): Reading {
  if (!read.ok || isWithin(read.value, limits)) return read;
  const unit = unitOf(spec, system);
  const shown = /[a-z"'″′°]/i.test(text) ? text : withUnit(text, unit);
  return { ok: false, message: outOfRangeWords(spec, shown, limits, system) };
}

export function isWithin(value: number, { min, max, above }: FieldLimits): boolean {
  if (min !== undefined && (above ? value <= min : value < min)) return false;
  return max === undefined || value <= max;
}

/** The value, what is allowed, and what to do. */
export function outOfRangeWords(
  spec: FieldSpec,
  shown: string,
  limits: FieldLimits,
  system: UnitSystem,
): string {
  const remedy = limits.required
    ? 'Give a value in that range.'
    : 'Give a value in that range, or leave it empty.';
  return `${shown} is not allowed: ${allowedWords(spec, limits, system)}. ${remedy}`;
}

function numbersIn(
  spec: FieldSpec,
  text: string,
  of: Quantity,
  system: UnitSystem,
  limits: FieldLimits,
): Reading {
  const values: number[] = [];
  for (const part of text.split(/[,;\s]+(?=[\d.])/)) {
    const read = inRange(spec, quantityIn(part.trim(), of, system), part, system, limits);
    if (!read.ok) return read;
    values.push(read.value as number);
  }
  return { ok: true, value: values };
}

const placesText = (places: readonly (readonly number[])[]): string =>
  places.map((place) => place.join(', ')).join('\n');

type PlacesRead = { ok: true; rings: Position[][] } | { ok: false; message: string };

/** Places, one a line, with an empty line between rings; however few there are. */
export function readPlaces(text: string): PlacesRead {
  const rings: Position[][] = [];
  let ring: Position[] | undefined;
  for (const [at, line] of text.split('\n').entries()) {
    if (line.trim() === '') {
      ring = undefined;
      continue;
    }
    const place = line
      .split(/[,;\s]+/)
      .filter((part) => part !== '')
      .map(Number);
    const [longitude = Number.NaN, latitude = Number.NaN] = place;
    const fits = place.length === 2 && Math.abs(longitude) <= 180 && Math.abs(latitude) <= 90;
    if (!fits) {
      const message = `Line ${at + 1}, “${line.trim()}”, is no place. Write longitude (−180 to 180), a comma, latitude (−90 to 90).`;
      return { ok: false, message };
    }
    if (!ring) {
      ring = [];
      rings.push(ring);
    }
    ring.push([longitude, latitude]);
  }
  return { ok: true, rings };
}

function pathIn(text: string): Reading {
  const read = readPlaces(text);
  if (!read.ok) return read;
  const places = read.rings.flat();
  if (places.length < 2) return { ok: false, message: 'Give two places or more, one a line.' };
  return { ok: true, value: places };
}

function ringsIn(text: string): Reading {
  const read = readPlaces(text);
  if (!read.ok) return read;
  const rings = read.rings.map(opened);
  const short = rings.findIndex((ring) => ring.length < 3);
  if (short >= 0) {
    const which = rings.length > 1 ? `Ring ${short + 1} has` : 'It has';
    const message = `${which} ${rings[short]?.length ?? 0} corners. Give three or more, one a line.`;
    return { ok: false, message };
  }
  return { ok: true, value: rings.map((ring) => [...ring, ring[0]]) };
}

function jsonIn(text: string): Reading {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, message: `This is not JSON: ${why}. Text needs quotes around it.` };
  }
}

function textIn(spec: FieldSpec, text: string, system: UnitSystem, limits: FieldLimits): Reading {
  const { maxLength } = limits;
  if (maxLength === undefined || text.length <= maxLength) return { ok: true, value: text };
  const message = `${text.length.toLocaleString('en-US')} characters are too many: ${allowedWords(spec, limits, system)}. Shorten it.`;
  return { ok: false, message };
}
