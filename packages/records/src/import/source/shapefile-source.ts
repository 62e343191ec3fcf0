import { codePageOf, type DbfTable, readDbf } from './dbf.ts';
import { Sampler } from './sample.ts';
import { shapefileRows } from './shapefile-rows.ts';
import { type Source, SourceRefusedError } from './source.ts';

export interface ShapefileParts {
  shp: Uint8Array;
  dbf?: Uint8Array | undefined;
  /** Coordinate system as WKT. */
  prj?: string | undefined;
  /** Encoding of the table. */
  cpg?: string | undefined;
}

/** @throws SourceRefusedError where its parts are damaged or missing */
export async function shapefileSource(name: string, parts: ShapefileParts): Promise<Source> {
  const notices: string[] = [];
  const codePage = parts.cpg === undefined ? undefined : codePageOf(parts.cpg);
  if (parts.cpg !== undefined && codePage === undefined) {
    notices.push(
      `The encoding "${parts.cpg.trim().slice(0, 40)}" of the .cpg file is not known; Windows-1252 is read.`,
    );
  }
  const table = tableOf(name, parts.dbf, codePage);
  if (!table) notices.push('There is no .dbf file: the shapes come without their columns.');
  const sampler = new Sampler();
  let total = 0;
  try {
    for await (const row of shapefileRows(parts.shp, table)) {
      total += 1;
      sampler.add(row);
    }
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new SourceRefusedError(
      name,
      `The .shp file cannot be read (${why}).`,
      'Export the shapefile again from where it came from.',
    );
  }
  if (total === 0) {
    throw new SourceRefusedError(name, 'There is no shape in the file.', 'Export it again.');
  }
  if (!parts.prj) {
    notices.push('There is no .prj file: say which coordinate system the shapes are in.');
  }
  return {
    name,
    format: 'shapefile',
    encoding: codePage ?? 'Windows-1252 unless the table says otherwise',
    columns: table?.columns ?? [],
    hasGeometry: true,
    ...(parts.prj && { crs: { crs: parts.prj.trim(), from: 'its .prj file' } }),
    total,
    sample: sampler.rows,
    notices,
    rows: () => shapefileRows(parts.shp, table),
    close: async () => {},
  };
}

function tableOf(
  name: string,
  dbf: Uint8Array | undefined,
  codePage: string | undefined,
): DbfTable | undefined {
  if (!dbf) return undefined;
  try {
    return readDbf(dbf, codePage);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new SourceRefusedError(
      name,
      `The .dbf file cannot be read: ${why}.`,
      'Export the shapefile again from where it came from.',
    );
  }
}
