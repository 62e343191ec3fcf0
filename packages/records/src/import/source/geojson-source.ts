import type { Bytes } from './bytes.ts';
import { sniffEncoding } from './encoding.ts';
import { type Feature, features, rowOfFeature } from './geojson-rows.ts';
import { Sampler } from './sample.ts';
import {
  type Cell,
  type Source,
  type SourceCrs,
  SourceRefusedError,
  type SourceRow,
} from './source.ts';

/** Columns past this are no list of records but something else. */
const MOST_COLUMNS = 2000;

/** @throws SourceRefusedError where there is no feature in it */
export async function geojsonSource(name: string, bytes: Bytes): Promise<Source> {
  const encoding = await sniffEncoding(bytes);
  const columns = new Set<string>();
  const sampled = new Map<SourceRow, Feature>();
  const sampler = new Sampler();
  let crs: SourceCrs | undefined;
  let total = 0;
  let broken = 0;
  let ids = false;
  let hasGeometry = false;
  for await (const feature of features(bytes, encoding, (found) => {
    crs = found;
  })) {
    total += 1;
    if (feature.broken) broken += 1;
    if (feature.id !== undefined) ids = true;
    if (feature.geometry !== undefined) hasGeometry = true;
    for (const column of Object.keys(feature.properties)) columns.add(column);
    if (columns.size > MOST_COLUMNS) {
      throw new SourceRefusedError(
        name,
        `Its features have more than ${MOST_COLUMNS} different members.`,
        'Export only the ones that are wanted.',
      );
    }
    const row = rowOfFeature(feature, undefined);
    sampled.set(row, feature);
    sampler.add(row);
    if (sampled.size > 5000) {
      const kept = new Set(sampler.rows);
      for (const one of sampled.keys()) if (!kept.has(one)) sampled.delete(one);
    }
  }
  if (total === 0 || broken === total) {
    throw new SourceRefusedError(
      name,
      total === 0
        ? 'There is no feature in the file.'
        : 'The file begins like JSON, but no feature in it can be read.',
      'Give a GeoJSON FeatureCollection, or a feature on each line.',
    );
  }
  const [only] = sampler.rows;
  if (total === 1 && !hasGeometry && only && Object.values(only.values).some(isListOfObjects)) {
    throw new SourceRefusedError(
      name,
      'The file is JSON, but neither GeoJSON nor a list of rows.',
      'Export GeoJSON (a FeatureCollection), CSV or a shapefile.',
    );
  }
  const idColumn = ids ? (columns.has('id') ? 'feature id' : 'id') : undefined;
  return {
    name,
    format: 'geojson',
    encoding: encoding.name,
    columns: [...(idColumn ? [idColumn] : []), ...columns],
    hasGeometry,
    ...(crs && { crs }),
    total,
    sample: sampler.rows.map((row) => rowOfFeature(sampled.get(row)!, idColumn)),
    notices: [],
    async *rows() {
      for await (const feature of features(bytes, encoding)) {
        yield rowOfFeature(feature, idColumn);
      }
    },
    close: async () => {},
  };
}

/** A member that holds what should be the rows: `{"data": [{...}]}`, or the arcs of a topology. */
const isListOfObjects = (cell: Cell) =>
  typeof cell === 'string' && /^(\[\s*[{[]|\{"\w+":\{"type")/.test(cell);
