/** A real server over a real database of its own, for tests: SQLite, or PostgreSQL where the run is given one. */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type Kind,
  type OpenedStore,
  openStore,
  type Stored,
  type StoreTarget,
} from '@plugside/records';
import { createApp } from './app.ts';
import { listen } from './listen.ts';
import type { Problem } from './problem.ts';

export interface TestServer {
  url: string;
  port: number;
  folder: string;
  store: OpenedStore;
  /** A request to a path under `/api`; a plain object is sent as JSON. */
  ask(path: string, options?: AskOptions): Promise<Response>;
  /** Adds a record over HTTP. */
  add<K extends Kind>(kind: K, fields: object): Promise<Stored<K>>;
  close(): Promise<void>;
}

export interface AskOptions {
  method?: string;
  json?: unknown;
  body?: RequestInit['body'];
  version?: number;
  headers?: Record<string, string>;
}

/** Members that a problem document may have. */
export type ProblemBody = Problem & {
  type: string;
  instance: string;
  issues?: { path: string; value: unknown; allowed: string; message: string; remedy: string }[];
  current?: Record<string, unknown>;
  yours?: Record<string, unknown>;
  by?: { kind: string; field: string; count: number; ids: string[] }[];
};

export async function testServer(): Promise<TestServer> {
  const folder = await mkdtemp(join(tmpdir(), 'plugside-api-'));
  const store = await openStore(await freshDatabase(folder));
  const webRoot = join(folder, 'web');
  await mkdir(webRoot);
  const app = createApp({ webRoot, version: '9.9.9', store });
  const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
  const ask = (path: string, options: AskOptions = {}) => {
    const { json, version, headers = {}, method = json === undefined ? 'GET' : 'POST' } = options;
    const sent: RequestInit = { method, headers: { ...headers } };
    const all = sent.headers as Record<string, string>;
    if (json !== undefined) {
      sent.body = JSON.stringify(json);
      all['content-type'] ??= 'application/json';
    }
    if (options.body != null) sent.body = options.body;
    if (version !== undefined) all['if-match'] = `"${version}"`;
    return fetch(new URL(`/api${path}`, server.url), sent);
  };
  return {
    url: server.url,
    port: server.port,
    folder,
    store,
    ask,
    add: async (kind, fields) => {
      const answer = await ask(`/records/${kind}`, { json: fields });
      if (answer.status !== 201) throw new Error(await answer.text());
      return (await answer.json()) as never;
    },
    close: async () => {
      await server.close();
      await store.close();
      await rm(folder, { recursive: true });
    },
  };
}

/** An empty database: of the PostgreSQL server that runs for these tests where one does, else a file. */
async function freshDatabase(folder: string): Promise<StoreTarget> {
  const desk = process.env.PLUGSIDE_TEST_DATABASES;
  if (!desk) return { file: join(folder, 'records.sqlite') };
  const answer = await fetch(desk);
  if (!answer.ok) throw new Error(`No database: ${await answer.text()}`);
  return { url: await answer.text() };
}

/** The answer's problem document; fails the test where it is none. */
export async function problemIn(answer: Response): Promise<ProblemBody> {
  const type = answer.headers.get('content-type');
  if (type !== 'application/problem+json') {
    throw new Error(`${answer.status} ${type}: ${await answer.text()}`);
  }
  return (await answer.json()) as ProblemBody;
}
