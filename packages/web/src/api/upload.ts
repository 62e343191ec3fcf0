import { problemFrom, UnreachableError } from './problem.ts';
import { apiUrl } from './request.ts';

/** The most that a file may hold [bytes]: the server's limit. */
export const FILE_LIMIT_BYTES = 200 * 1_048_576;

export interface UploadOptions {
  /** Told the bytes sent. */
  onProgress?(sentBytes: number): void;
  signal?: AbortSignal;
}

/**
 * Sends a file and reads the JSON answer; by XMLHttpRequest, since fetch does not tell how much of
 * a body has gone.
 * @param path under `/api`
 * @throws ProblemError, UnreachableError, an AbortError when aborted
 */
export function uploadFile<Answer>(
  path: string,
  query: Readonly<Record<string, string | undefined>>,
  file: File,
  { onProgress, signal }: UploadOptions = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sending = new XMLHttpRequest();
    sending.open('POST', apiUrl(path, query));
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
      if (sending.status === 201) resolve(answer as Answer);
      else reject(problemFrom(sending.status, answer));
    };
    signal?.addEventListener('abort', () => sending.abort(), { once: true });
    sending.send(file);
  });
}
