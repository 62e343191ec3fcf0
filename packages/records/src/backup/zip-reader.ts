/**
 * Files in a zip, found by the directory at its end (PKWARE's APPNOTE, sections 4.3.7, 4.3.12 and
 * 4.3.16): reading from the front has to guess where a file ends that was written as it came.
 */
import { createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { pipeline } from 'node:stream/promises';
import { createInflateRaw } from 'node:zlib';
import { ArchiveError } from './errors.ts';

const END = { signature: 0x06054b50, bytes: 22, comment: 0xffff } as const;
const ENTRY = { signature: 0x02014b50, bytes: 46 } as const;
const LOCAL = { signature: 0x04034b50, bytes: 30 } as const;
const STORED = 0;
const DEFLATED = 8;
/** In place of a number too big for its field. */
const BEYOND = 0xffffffff;

interface Entry {
  name: string;
  method: number;
  compressedBytes: number;
  /** Of the header before its data. */
  at: number;
}

export interface ZipReader {
  names: readonly string[];
  /** @throws ArchiveError where there is no such file in it or its data is damaged */
  read(name: string): AsyncIterable<Uint8Array>;
}

/** @throws ArchiveError */
export async function readZip(path: string): Promise<ZipReader> {
  const entries = await withFile(path, readEntries);
  const byName = new Map(entries.map((entry) => [entry.name, entry]));
  return {
    names: [...byName.keys()],
    read: (name) => {
      const entry = byName.get(name);
      if (!entry) throw damaged(path, `${name} is not in it`);
      return readEntry(path, entry);
    },
  };
}

async function readEntries(file: FileHandle, path: string): Promise<Entry[]> {
  const { size } = await file.stat();
  const tail = await readAt(file, Math.max(0, size - END.bytes - END.comment), size);
  const end = lastEnd(tail);
  if (end < 0) throw damaged(path, 'it is no zip file, or its end is missing');
  const count = tail.readUInt16LE(end + 10);
  const directoryBytes = tail.readUInt32LE(end + 12);
  const directoryAt = tail.readUInt32LE(end + 16);
  const directory = await readAt(file, directoryAt, directoryAt + directoryBytes);
  const entries: Entry[] = [];
  for (let at = 0; entries.length < count; ) {
    if (at + ENTRY.bytes > directory.length || directory.readUInt32LE(at) !== ENTRY.signature) {
      throw damaged(path, 'its list of files is broken');
    }
    const nameBytes = directory.readUInt16LE(at + 28);
    const after = nameBytes + directory.readUInt16LE(at + 30) + directory.readUInt16LE(at + 32);
    const entry = {
      name: directory.toString('utf8', at + ENTRY.bytes, at + ENTRY.bytes + nameBytes),
      method: directory.readUInt16LE(at + 10),
      compressedBytes: directory.readUInt32LE(at + 20),
      at: directory.readUInt32LE(at + 42),
    };
    if (entry.compressedBytes === BEYOND || entry.at === BEYOND) {
      throw damaged(path, `${entry.name} is over 4 GB`);
    }
    entries.push(entry);
    at += ENTRY.bytes + after;
  }
  return entries;
}

function lastEnd(tail: Buffer): number {
  for (let at = tail.length - END.bytes; at >= 0; at -= 1) {
    if (tail.readUInt32LE(at) === END.signature) return at;
  }
  return -1;
}

async function* readEntry(path: string, entry: Entry): AsyncIterable<Uint8Array> {
  const header = await withFile(path, (file) => readAt(file, entry.at, entry.at + LOCAL.bytes));
  if (header.length < LOCAL.bytes || header.readUInt32LE(0) !== LOCAL.signature) {
    throw damaged(path, `${entry.name} is not where it should be`);
  }
  const start = entry.at + LOCAL.bytes + header.readUInt16LE(26) + header.readUInt16LE(28);
  if (entry.compressedBytes === 0) return;
  const data = createReadStream(path, { start, end: start + entry.compressedBytes - 1 });
  if (entry.method === STORED) {
    yield* data;
    return;
  }
  if (entry.method !== DEFLATED) throw damaged(path, `${entry.name} is packed in an unknown way`);
  const inflate = createInflateRaw();
  const flowing = pipeline(data, inflate);
  // A fault comes through the loop below as well, and is told there.
  flowing.catch(() => {});
  try {
    yield* inflate;
  } catch (error) {
    throw damaged(path, `${entry.name} cannot be unpacked`, error);
  }
}

async function withFile<T>(
  path: string,
  work: (file: FileHandle, path: string) => Promise<T>,
): Promise<T> {
  const file = await open(path).catch((error: NodeJS.ErrnoException) => {
    throw new ArchiveError(`${path} cannot be read: ${error.message}.`, { cause: error });
  });
  try {
    return await work(file, path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EISDIR') throw error;
    throw new ArchiveError(`${path} is a folder. Name the archive in it.`);
  } finally {
    await file.close();
  }
}

/** Fewer bytes where the file ends before. */
async function readAt(file: FileHandle, from: number, to: number): Promise<Buffer> {
  const { size } = await file.stat();
  const buffer = Buffer.alloc(Math.max(0, Math.min(to, size) - from));
  const { bytesRead } = await file.read(buffer, 0, buffer.length, from);
  return buffer.subarray(0, bytesRead);
}

/** @returns what to throw: the archive is not as it was written */
export function damaged(path: string, what: string, cause?: unknown): ArchiveError {
  return new ArchiveError(
    `${path} cannot be used: ${what}. Nothing was restored. Take another backup, or fetch this one anew.`,
    { cause },
  );
}
