/** Bytes to read from: a file, or what was taken out of an archive. */
import { createReadStream } from 'node:fs';
import { open, stat } from 'node:fs/promises';

export interface Bytes {
  size: number;
  head(length: number): Promise<Uint8Array>;
  /** From the start, in pieces; may be asked for again. */
  read(): AsyncIterable<Uint8Array>;
}

const PIECE = 1 << 18;

export async function bytesOfFile(path: string): Promise<Bytes> {
  const { size } = await stat(path);
  return {
    size,
    async head(length) {
      const file = await open(path);
      try {
        const buffer = new Uint8Array(Math.min(length, size));
        let at = 0;
        while (at < buffer.length) {
          const { bytesRead } = await file.read(buffer, at, buffer.length - at, at);
          if (bytesRead === 0) break;
          at += bytesRead;
        }
        return buffer.subarray(0, at);
      } finally {
        await file.close();
      }
    },
    read: () => createReadStream(path, { highWaterMark: PIECE }) as AsyncIterable<Uint8Array>,
  };
}

export function bytesInMemory(bytes: Uint8Array): Bytes {
  return {
    size: bytes.length,
    head: async (length) => bytes.subarray(0, length),
    async *read() {
      for (let at = 0; at < bytes.length; at += PIECE) yield bytes.subarray(at, at + PIECE);
    },
  };
}

/** All of it at once: for files that cannot be read in pieces. */
export async function allOf(bytes: Bytes): Promise<Uint8Array> {
  return bytes.head(bytes.size);
}
