import { problemFrom, UnreachableError } from './problem.ts';

export interface ApiRequest {
  method?: 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE';
  /** Left out: none sent. Undefined values are left out. */
  query?: Readonly<Record<string, string | number | boolean | undefined>>;
  /** Sent as JSON. */
  json?: unknown;
  /** Sent as it is, instead of `json`. */
  body?: BodyInit;
  /** The version that a change is made on; of a drill, when it ended. */
  version?: number | string;
  signal?: AbortSignal;
}

/** Address of a path under `/api`, with its query. */
export function apiUrl(path: string, query: ApiRequest['query'] = {}): string {
  const asked = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined) asked.set(name, String(value));
  }
  const text = asked.toString();
  return `/api${path}${text === '' ? '' : `?${text}`}`;
}

/**
 * Asks the server and reads its JSON answer; undefined for an answer without content.
 * @param path under `/api`, beginning with `/`
 * @throws ProblemError (StaleError for 409 with the record as it is) where the server refuses,
 * UnreachableError where none answers
 */
export async function apiRequest<Answer>(path: string, request: ApiRequest = {}): Promise<Answer> {
  const { method = 'GET', query, json, body, version, signal } = request;
  const headers: Record<string, string> = { Accept: 'application/json' };
  if (json !== undefined) headers['Content-Type'] = 'application/json';
  if (version !== undefined) headers['If-Match'] = `"${version}"`;
  let response: Response;
  try {
    response = await fetch(apiUrl(path, query), {
      method,
      headers,
      body: json === undefined ? body : JSON.stringify(json),
      signal,
    });
  } catch (error) {
    if (signal?.aborted) throw error;
    throw new UnreachableError();
  }
  if (response.status === 204) return undefined as Answer;
  const type = response.headers.get('Content-Type') ?? '';
  // A server of files alone answers any address with the page itself.
  if (!/json/.test(type)) throw new UnreachableError();
  const answer: unknown = await response.json();
  if (response.ok) return answer as Answer;
  throw problemFrom(response.status, answer);
}
