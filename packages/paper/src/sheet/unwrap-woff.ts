import { inflateSync } from 'node:zlib';

const HEADER = 44;
const ENTRY = 20;

/**
 * The TrueType font inside a WOFF file, its tables as they were.
 *
 * pdfkit reads WOFF too, but unpacks a table again for each glyph that it looks at.
 * @throws RangeError for bytes that are no WOFF file
 * Source: WOFF File Format 1.0, W3C Recommendation, sections 3 and 4 (https://www.w3.org/TR/WOFF/).
 */
export function unwrapWoff(woff: Buffer): Buffer {
  if (woff.length < HEADER || woff.toString('latin1', 0, 4) !== 'wOFF') {
    throw new RangeError('The font is no WOFF file: it must begin with "wOFF".');
  }
  const count = woff.readUInt16BE(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = HEADER + index * ENTRY;
    const offset = woff.readUInt32BE(at + 4);
    const packed = woff.subarray(offset, offset + woff.readUInt32BE(at + 8));
    const length = woff.readUInt32BE(at + 12);
    return {
      tag: woff.subarray(at, at + 4),
      checksum: woff.readUInt32BE(at + 16),
      bytes: packed.length < length ? inflateSync(packed) : packed,
    };
  });
  const directory = Buffer.alloc(12 + 16 * count);
  woff.copy(directory, 0, 4, 8);
  directory.writeUInt16BE(count, 4);
  const power = Math.floor(Math.log2(count));
  directory.writeUInt16BE(2 ** power * 16, 6);
  directory.writeUInt16BE(power, 8);
  directory.writeUInt16BE(count * 16 - 2 ** power * 16, 10);
  let offset = directory.length;
  const parts = [directory];
  tables.forEach(({ tag, checksum, bytes }, index) => {
    const at = 12 + 16 * index;
    tag.copy(directory, at);
    directory.writeUInt32BE(checksum, at + 4);
    directory.writeUInt32BE(offset, at + 8);
    directory.writeUInt32BE(bytes.length, at + 12);
    const padded = Buffer.alloc(Math.ceil(bytes.length / 4) * 4);
    bytes.copy(padded);
    parts.push(padded);
    offset += padded.length;
  });
  return Buffer.concat(parts);
}
