/** Files on their way into the records, as the server tells of them. */
import type { ImportKind, ImportReport, Mapping, Refusal } from '@plugside/records/import-fields';
import { apiRequest, apiUrl } from './request.ts';
import { type UploadOptions, uploadFile } from './upload.ts';

export type Cells = Readonly<Record<string, unknown>>;

export type UnderstoodRow =
  | { is: 'record'; fields: Cells; remarks: readonly string[] }
  | { is: 'skipped' }
  | { is: 'refused'; refusal: Refusal };

/** A row as it stands in the file, and as it was understood. */
export interface SampleRow {
  row: number;
  values: Cells;
  understood: UnderstoodRow;
}

/** Where the first rows lie, beside what is on record. */
export interface Whereabouts {
  /** West, south, east, north [degrees]. */
  district: readonly [number, number, number, number];
  places: readonly (readonly [longitude: number, latitude: number])[];
  middle: readonly [longitude: number, latitude: number];
  /** From it to the nearest edge of the district [km]. */
  awayKm: number;
}

export interface ImportView {
  id: string;
  name: string;
  kind: ImportKind;
  state: 'reading' | 'ready' | 'running' | 'done' | 'cancelled' | 'failed';
  format: 'csv' | 'geojson' | 'shapefile' | null;
  encoding: string | null;
  delimiter: string | null;
  columns: readonly string[];
  hasGeometry: boolean;
  crs: { crs: string; from: string } | null;
  mapping: Mapping | null;
  /** The kind that its columns tell of, where that is another. */
  likelyKind: ImportKind | null;
  whereabouts: Whereabouts | null;
  sample: readonly SampleRow[];
  /** Of the file, while it is read: 0 to 1. */
  readShare: number;
  progress: { done: number; total: number };
  elapsedMs: number | null;
  mendedCount: number;
  report: ImportReport | null;
  hasRefusedFile: boolean;
  failure: { detail: string; remedy: string } | null;
}

export interface RefusedRow {
  row: number;
  values: Cells;
  refusal: Refusal;
}

/** Sends a list, as `uploadFile` does; without a kind its columns tell it. */
export const uploadImport = (
  file: File,
  kind: ImportKind | null,
  options: UploadOptions = {},
): Promise<ImportView> =>
  uploadFile('/imports', { name: file.name, ...(kind && { kind }) }, file, options);

export const getImport = (id: string, signal?: AbortSignal): Promise<ImportView> =>
  apiRequest(`/imports/${id}`, { signal });

/** @throws ProblemError with what is wrong of it in `problem.issues` */
export const changeMapping = (id: string, mapping: Mapping): Promise<ImportView> =>
  apiRequest(`/imports/${id}/mapping`, { method: 'PUT', json: mapping });

/** A fresh guess, for instance for another kind. */
export const guessAnew = (id: string, kind: ImportKind): Promise<ImportView> =>
  apiRequest(`/imports/${id}/mapping`, { method: 'PUT', json: { kind } });

/** A dry run counts and writes nothing. */
export const runImport = (id: string, dryRun: boolean): Promise<ImportView> =>
  apiRequest(`/imports/${id}/run`, { method: 'POST', query: { dryRun } });

/** Ends a run with nothing written; the import is ready again. */
export const stopImport = (id: string): Promise<ImportView> =>
  apiRequest(`/imports/${id}/stop`, { method: 'POST' });

export const cancelImport = (id: string): Promise<ImportView | undefined> =>
  apiRequest(`/imports/${id}`, { method: 'DELETE' });

/** The first 1,000 refused rows of the last run, with their cells. */
export async function refusedRows(id: string, signal?: AbortSignal): Promise<RefusedRow[]> {
  const { rows } = await apiRequest<{ rows: RefusedRow[] }>(`/imports/${id}/refused`, { signal });
  return rows;
}

export interface MendedRow {
  row: number;
  /** Cells written anew. */
  values: Readonly<Record<string, string>>;
  /** In place of the file's geometry: degrees, as they were typed. */
  place?: { longitude: string; latitude: string };
}

/** Cells and places written anew; the next run takes them. */
export const mendRows = (id: string, rows: readonly MendedRow[]): Promise<ImportView> =>
  apiRequest(`/imports/${id}/mend`, { method: 'POST', json: { rows } });

export const refusedCsvUrl = (id: string): string => apiUrl(`/imports/${id}/refused.csv`);
