/**
 * The table beside a shapefile: dBASE III as in "Data File Header Structure for the dBASE Version 7
 * Table File" (dbase.com) with the older 32-byte fields. Every type is read as text but numbers and
 * yes/no, so that a type we do not know loses nothing.
 */
import iconv from 'iconv-lite';
import { distinct } from './csv-layout.ts';
import type { Cell } from './source.ts';

interface DbfField {
  name: string;
  type: string;
  from: number;
  length: number;
}

export interface DbfTable {
  columns: string[];
  count: number;
  /** Cells of a record, from 0; undefined past the end. */
  record(at: number): Cell[] | undefined;
  /** Marked as deleted by whoever edited the table. */
  deleted(at: number): boolean;
}

/** Languages that a table's own header may name (byte 29), as listed by ESRI for ArcGIS. */
const languages: Record<number, string> = {
  1: 'cp437',
  2: 'cp850',
  3: 'win1252',
  87: 'win1252',
  200: 'win1250',
  201: 'win1251',
};

/**
 * @param codePage from the .cpg file; left out, the table's header decides
 * @throws Error where the header is none of a table
 */
export function readDbf(bytes: Uint8Array, codePage?: string): DbfTable {
  if (bytes.length < 33) throw new Error('it is shorter than a table header');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const stated = view.getUint32(4, true);
  const start = view.getUint16(8, true);
  const width = view.getUint16(10, true);
  if (width < 2 || start < 33 || start > bytes.length) throw new Error('its header is damaged');
  const label = codePage ?? languages[bytes[29]!] ?? 'win1252';
  const text = (from: number, length: number) =>
    iconv.decode(Buffer.from(bytes.subarray(from, from + length)), label);

  const fields: DbfField[] = [];
  let from = 1;
  for (let at = 32; at + 32 <= start && bytes[at] !== 0x0d; at += 32) {
    const end = bytes.subarray(at, at + 11).indexOf(0);
    const type = String.fromCharCode(bytes[at + 11]!);
    // Long text fields keep the upper byte of their length where decimals would stand.
    const length = bytes[at + 16]! + (type === 'C' ? bytes[at + 17]! * 256 : 0);
    fields.push({ name: text(at, end < 0 ? 11 : end), type, from, length });
    from += length;
  }
  if (fields.length === 0 || from > width) throw new Error('its header is damaged');
  const count = Math.min(stated, Math.floor((bytes.length - start) / width));
  const names = distinct(fields.map(({ name }) => name));
  return {
    columns: names,
    count,
    deleted: (at) => bytes[start + at * width] === 0x2a,
    record(at) {
      if (at >= count) return undefined;
      const base = start + at * width;
      return fields.map((field) => cellOf(text(base + field.from, field.length), field.type));
    },
  };
}

function cellOf(text: string, type: string): Cell {
  const value = text.replaceAll('\0', ' ').trim();
  if (value === '' || /^\*+$/.test(value)) return null;
  if (type === 'N' || type === 'F') return Number.isFinite(Number(value)) ? Number(value) : value;
  if (type === 'L') return /^[YyTt]$/.test(value) ? true : /^[NnFf]$/.test(value) ? false : null;
  if (type === 'D' && /^\d{8}$/.test(value)) {
    return `${value.slice(0, 4)}-${value.slice(4, 6)}-${value.slice(6)}`;
  }
  return value;
}

/** The encoding that a .cpg file names, in iconv's words; undefined where it names none we know. */
export function codePageOf(cpg: string): string | undefined {
  const name = cpg.trim().toLowerCase();
  const number = /(\d{3,5})/.exec(name.replace(/8859[-_ ]?/, '8859-'))?.[1];
  const tries = [
    name,
    /utf-?8|65001/.test(name) ? 'utf8' : '',
    name.startsWith('88591') || /8859-?1$/.test(name) ? 'latin1' : '',
    number ? `cp${number}` : '',
    number ? `win${number}` : '',
  ];
  return tries.find((one) => one !== '' && iconv.encodingExists(one));
}
