/** For tests: one-coloured pictures of map tiles, and a PMTiles file that holds one for every tile. */
import { crc32, deflateSync } from 'node:zlib';

type Colour = readonly [red: number, green: number, blue: number];

/** A picture of one colour (PNG, W3C Recommendation, 24 June 2025). */
export function onePng([red, green, blue]: Colour, sizePx = 256): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(sizePx, 0);
  header.writeUInt32BE(sizePx, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const row = Buffer.alloc(1 + 3 * sizePx);
  for (let x = 0; x < sizePx; x += 1) row.set([red, green, blue], 1 + 3 * x);
  const rows = Buffer.concat(Array.from({ length: sizePx }, () => row));
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}

const HEADER_BYTES = 127;
const MAX_ZOOM = 14;
const PNG_TILES = 2;

interface TilesOptions {
  attribution: string;
}

/**
 * A file whose one picture stands for every tile of zoom 0 to 14, after "PMTiles Version 3
 * Specification" (https://github.com/protomaps/PMTiles/blob/main/spec/v3/spec.md).
 */
export function onePictureFile(picture: Buffer, options: TilesOptions): Buffer {
  const metadata = Buffer.from(JSON.stringify({ attribution: options.attribution }));
  const tiles = (4 ** (MAX_ZOOM + 1) - 1) / 3;
  // One entry: tile id 0, run over all tiles, length, offset (kept as offset + 1).
  const directory = Buffer.concat([1, 0, tiles, picture.length, 1].map(varint));
  const header = Buffer.alloc(HEADER_BYTES);
  header.write('PMTiles', 'latin1');
  header[7] = 3;
  const at = {
    root: HEADER_BYTES,
    metadata: HEADER_BYTES + directory.length,
    tiles: HEADER_BYTES + directory.length + metadata.length,
  };
  const longs = [
    ...[at.root, directory.length],
    ...[at.metadata, metadata.length],
    // No leaf directories.
    ...[at.tiles, 0],
    ...[at.tiles, picture.length],
    ...[tiles, 1, 1],
  ];
  longs.forEach((long, i) => {
    header.writeBigUInt64LE(BigInt(long), 8 + 8 * i);
  });
  // Clustered; directories and tiles not compressed; the type; the zooms.
  header.set([1, 1, 1, PNG_TILES, 0, MAX_ZOOM], 96);
  [-180, -85, 180, 85].forEach((degrees, i) => {
    header.writeInt32LE(degrees * 1e7, 102 + 4 * i);
  });
  return Buffer.concat([header, directory, metadata, picture]);
}

/** Little-endian base 128. */
function varint(value: number): Buffer {
  const bytes: number[] = [];
  let rest = value;
  while (rest > 0x7f) {
    bytes.push((rest % 128) | 0x80);
    rest = Math.floor(rest / 128);
  }
  return Buffer.from([...bytes, rest]);
}
