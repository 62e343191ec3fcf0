/** What was acknowledged over HTTP is there after the server was killed, and no part of anything else. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page, Stored } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildServed, serve } from './served-process.ts';

const folder = mkdtempSync(join(tmpdir(), 'plugside-crash-http-'));
const file = join(folder, 'records.sqlite');
afterAll(() => {
  for (const one of [folder, built]) rmSync(one, { recursive: true, force: true });
});

const ROUNDS = 20;
const WRITERS = 4;
/** Longest that the writers are left to write [ms]. */
const LONGEST_MS = 250;
const IMPORTED_ROWS = 1500;

/** By id: the note that was last acknowledged, or null where its removal was. */
const acknowledged = new Map<string, string | null>();
/** Sent and not acknowledged: may be there or not. */
const open = new Map<string, string | null>();
let imports = 0;

let built: string;
beforeAll(async () => {
  built = await buildServed();
});

function ask(url: string, path: string, method = 'GET', json?: object, version?: number) {
  return fetch(new URL(`/api${path}`, url), {
    method,
    headers: {
      ...(json && { 'content-type': 'application/json' }),
      ...(version !== undefined && { 'if-match': `"${version}"` }),
    },
    ...(json && { body: JSON.stringify(json) }),
  });
}

/** Adds, changes and removes until the server is gone. */
async function write(url: string, name: string): Promise<void> {
  const place = { longitude: -71, latitude: 42 };
  try {
    for (let turn = 0; ; turn += 1) {
      const note = `${name}.${turn}`;
      const added = await ask(url, '/records/hydrants', 'POST', { name: note, ...place, note });
      const { id, version } = (await added.json()) as Stored<'hydrants'>;
      acknowledged.set(id, note);
      const at = `/records/hydrants/${id}`;
      open.set(id, `${note} changed`);
      const changed = await ask(url, at, 'PATCH', { note: `${note} changed` }, version);
      if (changed.status !== 200) throw new Error(await changed.text());
      acknowledged.set(id, `${note} changed`);
      open.delete(id);
      if (turn % 3 !== 0) continue;
      open.set(id, null);
      const removed = await ask(url, at, 'DELETE', undefined, version + 1);
      if (removed.status !== 204) throw new Error(await removed.text());
      acknowledged.set(id, null);
      open.delete(id);
    }
  } catch (error) {
    // The connection breaks when the server is killed; anything else is a fault.
    if (!(error instanceof TypeError)) throw error;
  }
}

/** One import, all of it or nothing; the writers wait for it, so it comes in some rounds only. */
async function importOnce(url: string, round: number): Promise<void> {
  const rows = Array.from({ length: IMPORTED_ROWS }, (_, n) => `${n},B-${n},42.3,-71.1`);
  const body = ['id,name,lat,lon', ...rows].join('\n');
  try {
    const path = `/imports?name=list-${round}.csv&kind=buildings`;
    const sent = await fetch(new URL(`/api${path}`, url), { method: 'POST', body });
    const { id } = (await sent.json()) as { id: string };
    for (;;) {
      const job = (await (await ask(url, `/imports/${id}`)).json()) as { state: string };
      if (job.state === 'ready') await ask(url, `/imports/${id}/run`, 'POST');
      if (job.state === 'done') {
        imports += 1;
        return;
      }
    }
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
  }
}

async function all<K extends 'hydrants' | 'buildings'>(url: string, kind: K) {
  const records: Stored<K>[] = [];
  let after = '';
  do {
    const path = `/records/${kind}?limit=5000${after && `&after=${after}`}`;
    const page = (await (await ask(url, path)).json()) as Page<K>;
    records.push(...page.records);
    after = page.next ?? '';
  } while (after);
  return records;
}

async function expectKept(url: string): Promise<void> {
  const kept = new Map((await all(url, 'hydrants')).map(({ id, note }) => [id, note ?? null]));
  const lost = [...acknowledged].filter(([id, note]) => {
    const found = kept.get(id) ?? null;
    return found !== note && !(open.has(id) && found === open.get(id));
  });
  expect(lost).toEqual([]);
  // What was under way is settled now: from here on it must not change.
  for (const id of open.keys()) acknowledged.set(id, kept.get(id) ?? null);
  open.clear();

  const lists = new Map<string, number>();
  for (const { externalSource = '' } of await all(url, 'buildings')) {
    lists.set(externalSource, (lists.get(externalSource) ?? 0) + 1);
  }
  expect([...lists.values()].filter((count) => count !== IMPORTED_ROWS)).toEqual([]);
  expect(lists.size).toBeGreaterThanOrEqual(imports);
}

describe('a server killed with SIGKILL while it writes', () => {
  it.each(Array.from({ length: ROUNDS }, (_, round) => round))(
    'round %i: what it acknowledged in the rounds before is there after its next start',
    async (round) => {
      const before = acknowledged.size;
      const server = await serve(built, file);
      await expectKept(server.url);
      const work = Array.from({ length: WRITERS }, (_, n) => write(server.url, `${round}.${n}`));
      if (round % 4 === 3) work.push(importOnce(server.url, round));
      do {
        await new Promise((go) => setTimeout(go, Math.random() * LONGEST_MS));
      } while (acknowledged.size === before);
      await server.kill();
      await Promise.all(work);
      expect(acknowledged.size).toBeGreaterThan(before);
    },
  );

  it('after the last round too', async () => {
    const server = await serve(built, file);
    await expectKept(server.url);
    await server.kill();
  });
});
