/** Files on their way into the records, as the server tells of them. */
import type { ImportKind, ImportReport, Mapping, Refusal } from '@plugside/records/import-fields';
import { problemFrom, UnreachableError } from './problem.ts';
import { apiRequest, apiUrl } from './request.ts';

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

/** The most that a file may hold [bytes]: the server's limit. */
export const FILE_LIMIT_BYTES = 200 * 1_048_576;

/**
 * Sends a file; by XMLHttpRequest, since fetch does not tell how much of a body has gone.
 * @param onProgress told the bytes sent
 * @throws ProblemError, UnreachableError, an AbortError when aborted
 */
export function uploadImport(
  file: File,
  kind: ImportKind,
  { onProgress, signal }: { onProgress?(sentBytes: number): void; signal?: AbortSignal } = {},
): Promise<ImportView> {
  return new Promise((resolve, reject) => {
    const sending = new XMLHttpRequest();
    sending.open('POST', apiUrl('/imports', { name: file.name, kind }));
    sending.setRequestHeader('Accept', 'application/json');
    sending.setRequestHeader('Content-Type', 'application/octet-stream');
    sending.upload.onprogress = ({ loaded }) => onProgress?.(loaded);
    sending.onerror = () => reject(new UnreachableError());
    sending.onabort = () => reject(new DOMException('The upload was cancelled.', 'AbortError'));
    sending.onload = () => {
      if (!/json/.test(sending.getResponseHeader('Content-Type') ?? '')) {
        reject(new UnreachableError());
        return;
      }
      const answer: unknown = JSON.parse(sending.responseText);
      if (sending.status === 201) resolve(answer as ImportView);
      else reject(problemFrom(sending.status, answer));
    };
    signal?.addEventListener('abort', () => sending.abort(), { once: true });
    sending.send(file);
  });
}

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

/** Cells written anew, by row; the next run takes them. */
export const mendRows = (
  id: string,
  rows: readonly { row: number; values: Readonly<Record<string, string>> }[],
): Promise<ImportView> => apiRequest(`/imports/${id}/mend`, { method: 'POST', json: { rows } });

export const refusedCsvUrl = (id: string): string => apiUrl(`/imports/${id}/refused.csv`);
