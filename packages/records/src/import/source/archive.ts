/** What a zip archive holds that an import can read. */
import { unzipSync } from 'fflate';
import { SourceRefusedError } from './source.ts';

/** Unpacked sizes past this are refused [bytes]. */
const MOST_UNPACKED = 600_000_000;

const wanted = /\.(shp|dbf|prj|cpg|csv|tsv|txt|geojson|json|geojsonl|ndjson)$/i;

/**
 * The files in an archive that matter, by path.
 * @throws SourceRefusedError where the archive is damaged, too large, or of another make
 */
export function unpack(name: string, bytes: Uint8Array): Map<string, Uint8Array> {
  let total = 0;
  const seen: string[] = [];
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, {
      filter: (file) => {
        seen.push(file.name);
        if (/(^|\/)(__MACOSX|\._)/.test(file.name) || !wanted.test(file.name)) return false;
        total += file.originalSize;
        if (total > MOST_UNPACKED) throw new SizeError();
        return true;
      },
    });
  } catch (error) {
    if (error instanceof SizeError) {
      throw new SourceRefusedError(
        name,
        'Unpacked, the archive would take more than 600 MB.',
        'Unpack it yourself and import the file inside.',
      );
    }
    throw new SourceRefusedError(
      name,
      'The zip archive is damaged.',
      'Download or export it again.',
    );
  }
  if (seen.some((one) => one.startsWith('xl/'))) {
    throw new SourceRefusedError(
      name,
      'This is a spreadsheet workbook.',
      'Save the sheet as CSV (UTF-8) and import that.',
    );
  }
  if (seen.some((one) => /\.(kml|gdb\/|gpkg)/i.test(one)) && Object.keys(files).length === 0) {
    throw new SourceRefusedError(
      name,
      'The archive holds a format that is not read here.',
      'Export CSV, GeoJSON or a shapefile.',
    );
  }
  return new Map(Object.entries(files));
}

class SizeError extends Error {}
