/**
 * Ten drills of four devices each on one server, while nothing else is asked for, while water plans are
 * printed one after another as the server prints them, and while the same plans are worked out on its main
 * thread, as it did before: how late the clock's beats come. The three take turns, so that they meet the same
 * machine.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { PROTOCOL } from '@plugside/drill';
import type { Stored } from '@plugside/records';
import { WebSocket } from 'ws';
import { formatSeconds } from './measure.ts';

const ROOMS = 10;
const TURNS = 3;
const TURN_S = 10;
const TICKS_PER_S = 20;

interface Report {
  tookMs: number;
  beats: { lateMs: number; ticks: number }[];
}

interface Way {
  name: string;
  /** Prints one plan; left out where none is. */
  print?: () => Promise<void>;
  latesS: number[];
  ticks: number;
  tookS: number;
  printedS: number[];
}

const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-print-'));
const script = fileURLToPath(new URL('serve-rooms.js', import.meta.url));
const child = spawn(process.execPath, [script, join(folder, 'records.db'), folder, 'demo'], {
  stdio: ['pipe', 'pipe', 'inherit'],
});
const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
const nextLine = async () => {
  const { value, done } = await lines.next();
  if (done) throw new Error('The server has ended.');
  return value as string;
};
const say = (line: string) => child.stdin.write(`${line}\n`);

try {
  const url = await nextLine();
  const post = (path: string, json: object) =>
    fetch(new URL(path, url), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(json),
    });
  const buildingId = await aBuilding(url);
  const sockets: WebSocket[] = [];
  for (let room = 0; room < ROOMS; room += 1) {
    const made = await post('api/drills', { evolution: 'boost through valve', seed: room });
    const { code, keys } = (await made.json()) as { code: string; keys: { instructor: string } };
    for (const hello of [
      { role: 'instructor', key: keys.instructor },
      { role: 'hydrant operator' },
      { role: 'attack operator' },
      { role: 'nozzle crew' },
    ]) {
      sockets.push(await device(url, code, hello));
    }
  }

  const way = (name: string, print?: () => Promise<void>): Way => ({
    name,
    ...(print && { print }),
    latesS: [],
    ticks: 0,
    tookS: 0,
    printedS: [],
  });
  const ways = [
    way('nothing is printed'),
    way('plans printed in threads', async () => {
      const answer = await post('api/paper/building-plan', { buildingId });
      if (!answer.ok) throw new Error(await answer.text());
      await answer.arrayBuffer();
    }),
    way('plans printed on the main thread', async () => {
      say(`print ${buildingId}`);
      await nextLine();
    }),
  ];
  // Warm: code compiled, streets read, threads begun.
  for (let time = 0; time < 4; time += 1) for (const { print } of ways) await print?.();
  for (let turn = 0; turn < TURNS; turn += 1) for (const one of ways) await takeTurn(one);
  for (const socket of sockets) socket.terminate();
  print(ways);
} finally {
  child.kill();
  rmSync(folder, { recursive: true });
}

async function takeTurn(way: Way): Promise<void> {
  say('begin');
  const from = performance.now();
  const left = () => from + TURN_S * 1000 - performance.now();
  while (way.print && left() > 0) {
    const began = performance.now();
    await way.print();
    way.printedS.push((performance.now() - began) / 1000);
  }
  await new Promise((resolve) => setTimeout(resolve, Math.max(0, left())));
  say('end');
  const { tookMs, beats } = JSON.parse(await nextLine()) as Report;
  way.latesS.push(...beats.map(({ lateMs }) => Math.max(0, lateMs) / 1000));
  way.ticks += beats.reduce((sum, { ticks }) => sum + ticks, 0);
  way.tookS += tookMs / 1000;
}

/** A building that needs water; the same in each run. */
async function aBuilding(url: string): Promise<string> {
  const answer = await fetch(new URL('api/records/buildings?limit=200', url));
  const { records } = (await answer.json()) as { records: Stored<'buildings'>[] };
  const found = records.find(({ neededGpm = 0 }) => neededGpm > 500);
  if (!found) throw new Error('The demo district has no building that needs water.');
  return found.id;
}

/** Joins and looks on. */
function device(url: string, code: string, hello: object): Promise<WebSocket> {
  const socket = new WebSocket(`${url.replace('http', 'ws')}api/drills/${code}/live`);
  socket.once('open', () => socket.send(JSON.stringify({ type: 'hello', v: PROTOCOL, ...hello })));
  return new Promise((resolve, reject) => {
    socket.on('error', reject);
    socket.on('message', (data: Buffer) => {
      if (data.subarray(0, 14).toString() === '{"type":"view"') return;
      const { type } = JSON.parse(String(data)) as { type: string };
      if (type === 'welcome') resolve(socket);
      if (type === 'error') reject(new Error(String(data)));
    });
  });
}

function at(seconds: readonly number[], share: number): number {
  const sorted = [...seconds].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
}

function print(ways: readonly Way[]): void {
  console.log(
    `\n${ROOMS} drills of 4 devices, ${TURNS} times ${TURN_S} s each; a beat comes late by`,
  );
  for (const { name, latesS, ticks, tookS, printedS } of ways) {
    const shares = [0.5, 0.95, 0.99, 1].map((share) =>
      formatSeconds(at(latesS, share)).padStart(8),
    );
    const done = (100 * ticks) / (ROOMS * TICKS_PER_S * tookS);
    const plans =
      printedS.length > 0
        ? `; ${printedS.length} plans, median ${formatSeconds(at(printedS, 0.5))}`
        : '';
    console.log(
      `  ${name.padEnd(34)}median ${shares[0]}  95 % ${shares[1]}  99 % ${shares[2]}  most ${shares[3]}; ${done.toFixed(1)} % of ticks done${plans}`,
    );
  }
  const [quiet, threads, main] = ways.map(({ latesS }) => at(latesS, 0.99)) as [
    number,
    number,
    number,
  ];
  console.log(
    `  late at the 99th percentile: main thread ${(main / threads).toFixed(0)}× threads; threads ${(threads / quiet).toFixed(1)}× nothing printed`,
  );
}
