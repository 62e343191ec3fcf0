/** A plain GeoTIFF of heights: one strip of 32-bit floats in degrees (TIFF 6.0, OGC 19-008r4). */

export interface Heights {
  /** Row by row from the north [ft]. */
  valuesFt: ArrayLike<number>;
  width: number;
  /** North-west corner of the first cell, degrees WGS 84. */
  west: number;
  north: number;
  /** Size of a cell [degrees]. */
  cellLongitude: number;
  cellLatitude: number;
}

type Tag = [tag: number, type: 3 | 4 | 12, values: readonly number[]];

/** Types of TIFF values [bytes]: short, long, double. */
const sizes = { 3: 2, 4: 4, 12: 8 } as const;
const STRIP_AT = 1024;

export function geotiffOf(heights: Heights): Uint8Array {
  const { valuesFt, width, west, north, cellLongitude, cellLatitude } = heights;
  const height = valuesFt.length / width;
  const tags: Tag[] = [
    [256, 4, [width]],
    [257, 4, [height]],
    // 32 bits, not packed, black is zero, one strip of one sample.
    [258, 3, [32]],
    [259, 3, [1]],
    [262, 3, [1]],
    [273, 4, [STRIP_AT]],
    [277, 3, [1]],
    [278, 4, [height]],
    [279, 4, [valuesFt.length * 4]],
    // Floating point.
    [339, 3, [3]],
    [33550, 12, [cellLongitude, cellLatitude, 0]],
    [33922, 12, [0, 0, 0, west, north, 0]],
    // Geographic, cells are areas, EPSG:4326, heights in feet (EPSG:9002).
    [34735, 3, [1, 1, 0, 4, 1024, 0, 1, 2, 1025, 0, 1, 1, 2048, 0, 1, 4326, 4099, 0, 1, 9002]],
  ];
  const view = new DataView(new ArrayBuffer(STRIP_AT + valuesFt.length * 4));
  view.setUint16(0, 0x4949);
  view.setUint16(2, 42, true);
  view.setUint32(4, 8, true);
  view.setUint16(8, tags.length, true);
  let free = 10 + tags.length * 12 + 4;
  for (const [n, [tag, type, values]] of tags.entries()) {
    const entry = 10 + n * 12;
    view.setUint16(entry, tag, true);
    view.setUint16(entry + 2, type, true);
    view.setUint32(entry + 4, values.length, true);
    let at = entry + 8;
    if (values.length * sizes[type] > 4) {
      view.setUint32(at, free, true);
      at = free;
      free += values.length * sizes[type];
    }
    for (const [k, value] of values.entries()) {
      const place = at + k * sizes[type];
      if (type === 3) view.setUint16(place, value, true);
      else if (type === 4) view.setUint32(place, value, true);
      else view.setFloat64(place, value, true);
    }
  }
  for (let n = 0; n < valuesFt.length; n += 1) {
    view.setFloat32(STRIP_AT + n * 4, valuesFt[n] ?? Number.NaN, true);
  }
  return new Uint8Array(view.buffer);
}
