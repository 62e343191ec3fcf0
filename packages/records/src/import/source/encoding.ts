/** How a text file is encoded: marks at its start first, then what its bytes allow. */
import iconv from 'iconv-lite';
import type { Bytes } from './bytes.ts';

export interface Encoding {
  name: 'UTF-8' | 'UTF-16 LE' | 'UTF-16 BE' | 'Windows-1252';
  /** Bytes of the mark at the start. */
  mark: number;
  /** Bytes that UTF-8 does not allow, in a file that is plainly UTF-8 otherwise. */
  faulty: number;
}

/**
 * Looks through the whole file, because the first letter that is not ASCII may come late.
 * UTF-8 where its bytes are that (or nearly: a few broken ones among many good); else Windows-1252,
 * in which every byte but five means something.
 */
export async function sniffEncoding(bytes: Bytes): Promise<Encoding> {
  const head = await bytes.head(4096);
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) {
    const { faulty } = await countUtf8(bytes);
    return { name: 'UTF-8', mark: 3, faulty };
  }
  if (head[0] === 0xff && head[1] === 0xfe) return { name: 'UTF-16 LE', mark: 2, faulty: 0 };
  if (head[0] === 0xfe && head[1] === 0xff) return { name: 'UTF-16 BE', mark: 2, faulty: 0 };
  const wide = unmarkedUtf16(head);
  if (wide) return { name: wide, mark: 0, faulty: 0 };
  const { good, faulty } = await countUtf8(bytes);
  return faulty === 0 || good > 10 * faulty
    ? { name: 'UTF-8', mark: 0, faulty }
    : { name: 'Windows-1252', mark: 0, faulty: 0 };
}

/** Text in pieces, without the mark at the start. */
export async function* decode(bytes: Bytes, { name, mark }: Encoding): AsyncIterable<string> {
  const decoder = iconv.getDecoder(labels[name], { stripBOM: false });
  let skip = mark;
  for await (const piece of bytes.read()) {
    const rest = skip > 0 ? piece.subarray(skip) : piece;
    skip = Math.max(0, skip - piece.length);
    const text = decoder.write(Buffer.from(rest.buffer, rest.byteOffset, rest.byteLength));
    if (text) yield text;
  }
  const end = decoder.end();
  if (end) yield end;
}

const labels: Record<Encoding['name'], string> = {
  'UTF-8': 'utf8',
  'UTF-16 LE': 'utf-16le',
  'UTF-16 BE': 'utf-16be',
  'Windows-1252': 'win1252',
};

/** ASCII in UTF-16 has a zero in every other byte. */
function unmarkedUtf16(head: Uint8Array): 'UTF-16 LE' | 'UTF-16 BE' | undefined {
  if (head.length < 4) return undefined;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < head.length; at += 1) {
    if (head[at] !== 0) continue;
    if (at % 2 === 0) even += 1;
    else odd += 1;
  }
  const half = head.length / 2;
  if (odd > 0.4 * half && even < 0.05 * half) return 'UTF-16 LE';
  if (even > 0.4 * half && odd < 0.05 * half) return 'UTF-16 BE';
  return undefined;
}

/** Counts letters of several bytes, and bytes that fit none (RFC 3629, without the finer exclusions). */
async function countUtf8(bytes: Bytes): Promise<{ good: number; faulty: number }> {
  let good = 0;
  let faulty = 0;
  let expected = 0;
  for await (const piece of bytes.read()) {
    for (let at = 0; at < piece.length; at += 1) {
      const byte = piece[at]!;
      if (expected > 0) {
        if ((byte & 0xc0) === 0x80) {
          expected -= 1;
          if (expected === 0) good += 1;
          continue;
        }
        faulty += 1;
        expected = 0;
      }
      if (byte < 0x80) continue;
      if (byte >= 0xc2 && byte <= 0xdf) expected = 1;
      else if (byte >= 0xe0 && byte <= 0xef) expected = 2;
      else if (byte >= 0xf0 && byte <= 0xf4) expected = 3;
      else faulty += 1;
    }
  }
  return { good, faulty: faulty + (expected > 0 ? 1 : 0) };
}
