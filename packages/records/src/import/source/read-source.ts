import { readdir, readFile, stat } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import { unpack } from './archive.ts';
import { allOf, type Bytes, bytesInMemory, bytesOfFile } from './bytes.ts';
import { csvSource } from './csv-source.ts';
import { geojsonSource } from './geojson-source.ts';
import { shapefileSource } from './shapefile-source.ts';
import { type Source, SourceRefusedError } from './source.ts';

export interface ReadSourceOptions {
  /** Which of several files in an archive, by its path there. */
  layer?: string;
  /** Aborting it ends the reading; of no effect once the file has been looked through. */
  signal?: AbortSignal;
  /** How much of the reading is done, 0 to 1. */
  onProgress?(share: number): void;
}

/**
 * Looks through a file once and says what it holds: CSV with any usual delimiter, GeoJSON (a
 * collection or a feature per line), or a shapefile (zipped, or with its parts beside it). What it
 * is shows from its bytes; the name only decides where they leave a choice.
 * @param path where it lies
 * @param name as people know it, where that is another (an upload)
 * @throws SourceRefusedError where the file as a whole cannot be read; the signal's reason when aborted
 */
export async function readSource(
  path: string,
  name: string = basename(path),
  options: ReadSourceOptions = {},
): Promise<Source> {
  const { bytes, release } = watched(await openBytes(path, name), options);
  const source = await sourceOf(path, name, bytes, options);
  release();
  return source;
}

async function sourceOf(
  path: string,
  name: string,
  bytes: Bytes,
  options: ReadSourceOptions,
): Promise<Source> {
  const head = await bytes.head(65_536);
  if (startsWith(head, [0x50, 0x4b, 3, 4])) {
    return fromArchive(name, unpack(name, await allOf(bytes)), options);
  }
  if (startsWith(head, [0, 0, 0x27, 0x0a])) {
    const parts = await partsBeside(path, name);
    return shapefileSource(name, { shp: await allOf(bytes), ...parts });
  }
  if (/\.shp$/i.test(name)) {
    throw new SourceRefusedError(name, 'This is no shapefile, or a damaged one.', again);
  }
  return fromText(name, bytes, head);
}

/** Text is read twice: for its letters, then for its rows. */
const PASSES = 2;

/** The bytes, with their reading told and stopped until they are released for reading rows. */
function watched(bytes: Bytes, { signal, onProgress }: ReadSourceOptions) {
  let watching = true;
  let done = 0;
  const own: Bytes = {
    ...bytes,
    read: async function* () {
      for await (const piece of bytes.read()) {
        if (watching) {
          signal?.throwIfAborted();
          done += piece.length;
          onProgress?.(Math.min(1, done / (PASSES * bytes.size)));
        }
        yield piece;
      }
    },
  };
  return {
    bytes: own,
    release: () => {
      watching = false;
    },
  };
}

const again = 'Export it again from where it came from.';

async function openBytes(path: string, name: string): Promise<Bytes> {
  const info = await stat(path).catch(() => undefined);
  if (!info) throw new SourceRefusedError(name, 'There is no such file.', 'Check its name.');
  if (!info.isFile()) {
    throw new SourceRefusedError(name, 'This is no file.', 'Name one file, not a folder.');
  }
  if (info.size === 0) throw new SourceRefusedError(name, 'The file is empty (0 bytes).', again);
  return bytesOfFile(path);
}

function fromText(name: string, bytes: Bytes, head: Uint8Array): Promise<Source> {
  const binary = knownBinary(head);
  if (binary) throw new SourceRefusedError(name, binary.what, binary.remedy);
  if (looksBinary(head)) {
    throw new SourceRefusedError(name, 'The file is no text.', 'Give a CSV, GeoJSON or shapefile.');
  }
  return looksLikeJson(head) ? geojsonSource(name, bytes) : csvSource(name, bytes);
}

async function fromArchive(
  name: string,
  files: Map<string, Uint8Array>,
  { layer }: ReadSourceOptions,
): Promise<Source> {
  const layers = [...files.keys()].filter((one) => !/\.(dbf|prj|cpg)$/i.test(one));
  const shapes = layers.filter((one) => /\.shp$/i.test(one));
  const tables = layers.filter((one) => !/\.txt$/i.test(one));
  // A text beside a shapefile or a table is its description, hardly ever its data.
  const choices = [shapes, tables, layers].find((some) => some.length > 0) ?? [];
  const chosen = layer === undefined ? choices : choices.filter((one) => one === layer);
  if (chosen.length === 0) {
    throw new SourceRefusedError(
      name,
      layer ? `The archive holds no ${layer}.` : 'The archive holds no CSV, GeoJSON or shapefile.',
      layer ? `It holds: ${choices.join(', ')}.` : 'Put the files themselves into it.',
    );
  }
  if (chosen.length > 1) {
    throw new SourceRefusedError(
      name,
      `The archive holds several files: ${chosen.join(', ')}.`,
      'Say which one to import, or put each into an archive of its own.',
    );
  }
  const path = chosen[0]!;
  const bytes = files.get(path)!;
  if (bytes.length === 0) throw new SourceRefusedError(name, `${path} is empty.`, again);
  if (!/\.shp$/i.test(path)) {
    return fromText(name, bytesInMemory(bytes), bytes.subarray(0, 65_536));
  }
  const part = (end: string) => {
    const wanted = path.replace(/\.shp$/i, end).toLowerCase();
    return [...files].find(([one]) => one.toLowerCase() === wanted)?.[1];
  };
  return shapefileSource(name, {
    shp: bytes,
    dbf: part('.dbf'),
    prj: textOf(part('.prj')),
    cpg: textOf(part('.cpg')),
  });
}

const textOf = (bytes: Uint8Array | undefined) =>
  bytes && new TextDecoder().decode(bytes).replace(/^\uFEFF/, '');

async function partsBeside(path: string, name: string) {
  const stem = basename(path, extname(path)).toLowerCase();
  const folder = dirname(path);
  const entries = await readdir(folder).catch(() => [] as string[]);
  const part = async (end: string) => {
    const found = entries.find((one) => one.toLowerCase() === `${stem}${end}`);
    return found === undefined ? undefined : readFile(join(folder, found));
  };
  const dbf = await part('.dbf');
  if (!dbf) {
    throw new SourceRefusedError(
      name,
      'There is no .dbf file beside the .shp file.',
      'Put the .shp, .dbf and .prj files into one zip archive and import that.',
    );
  }
  return { dbf, prj: textOf(await part('.prj')), cpg: textOf(await part('.cpg')) };
}

const startsWith = (head: Uint8Array, mark: readonly number[]) =>
  mark.every((byte, at) => head[at] === byte);

function looksLikeJson(head: Uint8Array): boolean {
  const wide = head[0] === 0xff ? 'utf-16le' : head[0] === 0xfe ? 'utf-16be' : 'utf-8';
  const text = new TextDecoder(wide).decode(head.subarray(0, 64));
  return /^[\uFEFF\s]*[{[]/.test(text.replaceAll('\u001e', ' '));
}

function knownBinary(head: Uint8Array): { what: string; remedy: string } | undefined {
  const sheet = {
    what: 'This is a spreadsheet workbook.',
    remedy: 'Save the sheet as CSV (UTF-8).',
  };
  if (startsWith(head, [0xd0, 0xcf, 0x11, 0xe0])) return sheet;
  const start = new TextDecoder('latin1').decode(head.subarray(0, 300));
  if (/^(II\*\0|MM\0\*)/.test(start)) {
    return { what: 'This is a TIFF picture.', remedy: 'Terrain is loaded as elevation.' };
  }
  if (start.startsWith('SQLite format 3')) {
    return { what: 'This is a database.', remedy: 'Export the table as CSV or GeoJSON.' };
  }
  if (start.startsWith('%PDF')) {
    return { what: 'This is a PDF.', remedy: 'Ask for the list itself, as CSV or a spreadsheet.' };
  }
  if (/^\s*(<\?xml|<!doctype|<html|<kml)/i.test(start)) {
    return {
      what: 'This is a page or an XML file.',
      remedy: 'Download the data itself, as CSV, GeoJSON or a shapefile.',
    };
  }
  return undefined;
}

/** More than three control characters, and one in a hundred, that no text has; UTF-16 has its zeros in order. */
function looksBinary(head: Uint8Array): boolean {
  if (startsWith(head, [0xff, 0xfe]) || startsWith(head, [0xfe, 0xff])) return false;
  let controls = 0;
  const zeros = [0, 0];
  for (let at = 0; at < head.length; at += 1) {
    const byte = head[at]!;
    if (byte === 0) zeros[at % 2]! += 1;
    if (byte < 32 && byte !== 9 && byte !== 10 && byte !== 13 && byte !== 0x1e) controls += 1;
  }
  const half = head.length / 2;
  const wide = Math.max(...zeros) > 0.4 * half && Math.min(...zeros) < 0.05 * half;
  return !wide && controls > 3 && controls > head.length / 100;
}
