/** A file looked at before it is sent: whether it can be taken, and what it most likely holds. */
import type { ImportKind } from '@plugside/records/import-fields';
import { FILE_LIMIT_BYTES } from '../api/upload.ts';

/** Endings that the server reads. */
export const acceptedEndings = ['.csv', '.tsv', '.txt', '.geojson', '.json', '.zip'] as const;

const remedyByEnding: Readonly<Record<string, string>> = {
  xlsx: 'Save the sheet as CSV in the spreadsheet program, then choose that file.',
  xls: 'Save the sheet as CSV in the spreadsheet program, then choose that file.',
  ods: 'Save the sheet as CSV in the spreadsheet program, then choose that file.',
  shp: 'A shapefile is several files: put the .shp, .shx, .dbf and .prj into one zip file and choose that.',
  dbf: 'A shapefile is several files: put the .shp, .shx, .dbf and .prj into one zip file and choose that.',
  shx: 'A shapefile is several files: put the .shp, .shx, .dbf and .prj into one zip file and choose that.',
  kml: 'Export the layer as GeoJSON, CSV or a shapefile from the map program.',
  kmz: 'Export the layer as GeoJSON, CSV or a shapefile from the map program.',
  gpkg: 'Export the layer as GeoJSON, CSV or a shapefile from the map program.',
  gdb: 'Export the layer as GeoJSON, CSV or a shapefile from the map program.',
  pdf: 'A printed list cannot be read; ask for the list as a CSV file.',
};

/** Why a file cannot be taken and what to do, as one text; null where it can. */
export function fileProblem({ name, size }: { name: string; size: number }): string | null {
  const ending = /\.([^.]+)$/.exec(name)?.[1]?.toLowerCase() ?? '';
  if (!acceptedEndings.some((one) => one === `.${ending}`)) {
    const what = ending === '' ? `${name} has no ending` : `${name} is a .${ending} file`;
    const remedy = remedyByEnding[ending] ?? 'Choose another file, or export this one as CSV.';
    return `${what}; lists are taken as CSV, GeoJSON or a zipped shapefile. ${remedy}`;
  }
  if (size === 0) return `${name} is empty. Choose another file, or save it anew.`;
  if (size > FILE_LIMIT_BYTES) {
    return `${name} is ${sizeText(size)}; the most is ${sizeText(FILE_LIMIT_BYTES)}. Split it into smaller files, or leave out what is not needed.`;
  }
  return null;
}

/** The first that fits a name counts, so the narrower words come first. */
const wordsOfKinds: readonly [RegExp, ImportKind][] = [
  [/flow.?tests?|fire.?flow|pitot/, 'flow-tests'],
  [/ponds?|cisterns?|water.?sources?|water.?tanks?|draft|dry.?hydrants?|lakes?/, 'water-sources'],
  [/hydrants?|hyd(?![a-z])/, 'hydrants'],
  [/buildings?|bldgs?|footprints?|structures?|parcels?|pre.?plans?/, 'buildings'],
  [/streets?|roads?|centerlines?|centrelines?/, 'streets'],
  [/rigs?(?![a-z])|apparatus|engines?|vehicles?/, 'rigs'],
  [/stations?/, 'stations'],
];

/** The kind of record that a file's name tells of; null where it tells none. */
export function kindFromName(name: string): ImportKind | null {
  const plain = name.toLowerCase();
  return wordsOfKinds.find(([words]) => words.test(plain))?.[1] ?? null;
}

const KB = 1024;
const MB = KB * KB;

/** `12.3 MB`, `940 KB`. */
export function sizeText(bytes: number): string {
  if (bytes >= MB) return `${(bytes / MB).toFixed(bytes >= 100 * MB ? 0 : 1)} MB`;
  return `${Math.max(1, Math.round(bytes / KB))} KB`;
}
