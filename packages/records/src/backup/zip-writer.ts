/** A zip file written as its parts come, in memory that does not grow with it. */
import { createHash } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { Zip, ZipDeflate } from 'fflate';

/** Text gathered before it is compressed and written [characters]. */
const PIECE = 1 << 16;

/** Text, or bytes in pieces of a fitting size. */
type Content = AsyncIterable<string | Uint8Array> | Iterable<string | Uint8Array>;

export interface ZipWriter {
  /** Writes one file into the archive; its SHA-256 in hexadecimal. */
  add(name: string, content: Content): Promise<string>;
  end(): Promise<void>;
}

export function zipInto(file: FileHandle): ZipWriter {
  let pieces: Uint8Array[] = [];
  let fault: Error | undefined;
  const zip = new Zip((error, piece) => {
    if (error) fault ??= error;
    else pieces.push(piece);
  });
  const flush = async () => {
    if (fault) throw fault;
    const ready = pieces;
    pieces = [];
    for (const piece of ready) await file.writeFile(piece);
  };
  return {
    add: async (name, content) => {
      const entry = new ZipDeflate(name, { level: 6 });
      zip.add(entry);
      const hash = createHash('sha256');
      for await (const piece of inPieces(content)) {
        const bytes = typeof piece === 'string' ? Buffer.from(piece, 'utf8') : piece;
        hash.update(bytes);
        entry.push(bytes);
        await flush();
      }
      entry.push(new Uint8Array(0), true);
      await flush();
      return hash.digest('hex');
    },
    end: async () => {
      zip.end();
      await flush();
    },
  };
}

async function* inPieces(content: Content): AsyncIterable<string | Uint8Array> {
  let piece = '';
  for await (const some of content) {
    if (typeof some !== 'string') {
      yield some;
      continue;
    }
    piece += some;
    if (piece.length < PIECE) continue;
    yield piece;
    piece = '';
  }
  if (piece !== '') yield piece;
}
