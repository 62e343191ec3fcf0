import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { unwrapWoff } from './unwrap-woff.ts';

const woff = readFileSync(
  new URL('../../fonts/IBMPlexSansCondensed-Regular.woff', import.meta.url),
);

/** The checksum of OpenType tables: their 32-bit words added up (OpenType specification, "Calculating Checksums"). */
function checksum(table: Buffer): number {
  let sum = 0;
  for (let at = 0; at < table.length; at += 4) sum = (sum + table.readUInt32BE(at)) >>> 0;
  return sum;
}

describe('a WOFF file unwrapped', () => {
  const font = unwrapWoff(woff);
  const count = font.readUInt16BE(4);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = 12 + 16 * index;
    return {
      tag: font.toString('latin1', at, at + 4),
      checksum: font.readUInt32BE(at + 4),
      offset: font.readUInt32BE(at + 8),
      length: font.readUInt32BE(at + 12),
    };
  });

  it('has the length that the file says its font has', () => {
    expect(font.length).toBe(woff.readUInt32BE(16));
  });

  it('has every table whole, by the checksum that the font carries', () => {
    expect(tables.map(({ tag }) => tag)).toEqual(expect.arrayContaining(['cmap', 'glyf', 'head']));
    for (const { tag, offset, length, checksum: told } of tables) {
      // The head's own checksum is reckoned without its adjustment.
      if (tag === 'head') continue;
      expect(offset % 4).toBe(0);
      const table = font.subarray(offset, offset + Math.ceil(length / 4) * 4);
      expect(checksum(table), tag).toBe(told);
    }
  });

  it('refuses what is no WOFF file', () => {
    expect(() => unwrapWoff(Buffer.from('no font at all, and too short'))).toThrow(RangeError);
    expect(() => unwrapWoff(Buffer.alloc(100))).toThrow(/wOFF/);
  });
});
