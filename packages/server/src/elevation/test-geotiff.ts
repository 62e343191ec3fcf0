/**
 * A GeoTIFF as TIFF 6.0 and OGC 19-008r4 lay it out: 32-bit floats, one strip, EPSG:4326, cells of
 * 0.01 degrees from 71° W, 42° N.
 */
export function geotiff(width: number, heights: readonly number[]): Uint8Array<ArrayBuffer> {
  const tags: [tag: number, type: number, values: number[]][] = [
    [256, 3, [width]],
    [257, 3, [heights.length / width]],
    [258, 3, [32]],
    [259, 3, [1]],
    [262, 3, [1]],
    [273, 4, [0]],
    [277, 3, [1]],
    [278, 3, [heights.length / width]],
    [279, 4, [heights.length * 4]],
    [339, 3, [3]],
    [33550, 12, [0.01, 0.01, 0]],
    [33922, 12, [0, 0, 0, -71, 42, 0]],
    [34735, 3, [1, 1, 0, 2, 1024, 0, 1, 2, 2048, 0, 1, 4326]],
  ];
  const sizes: Record<number, number> = { 3: 2, 4: 4, 12: 8 };
  const view = new DataView(new ArrayBuffer(1024 + heights.length * 4));
  view.setUint16(0, 0x4949);
  view.setUint16(2, 42, true);
  view.setUint32(4, 8, true);
  view.setUint16(8, tags.length, true);
  const stripAt = 1024;
  let free = 10 + tags.length * 12 + 4;
  tags.forEach(([tag, type, values], n) => {
    const entry = 10 + n * 12;
    view.setUint16(entry, tag, true);
    view.setUint16(entry + 2, type, true);
    view.setUint32(entry + 4, values.length, true);
    const bytes = values.length * (sizes[type] ?? 0);
    let at = entry + 8;
    if (bytes > 4) {
      view.setUint32(at, free, true);
      at = free;
      free += bytes;
    }
    values.forEach((value, k) => {
      const where = at + k * (sizes[type] ?? 0);
      if (type === 3) view.setUint16(where, value, true);
      else if (type === 4) view.setUint32(where, tag === 273 ? stripAt : value, true);
      else view.setFloat64(where, value, true);
    });
  });
  for (const [n, one] of heights.entries()) view.setFloat32(stripAt + n * 4, one, true);
  return new Uint8Array(view.buffer);
}
