/**
 * Fifty drills of four devices each on one server, over real WebSockets: what a beat of the clock takes and
 * how late it comes, the server's share of a core, and how long an action waits for its acknowledgement.
 * The devices run in this process, on the same machine. The floor of a beat is the steps alone.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { PROTOCOL } from '@plugside/drill';
import { WebSocket } from 'ws';
import { formatSeconds } from './measure.ts';

const ROOMS = 50;
const WARM_UP_S = 5;
const MEASURED_S = 30;
/** Each device does so much: more than a hand can [1/s]. */
const ACTIONS_PER_S = 0.5;

interface Report {
  tookMs: number;
  cpuMs: number;
  memoryMb: number;
  beats: { lateMs: number; tookMs: number; stepsMs: number; ticks: number }[];
}

const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-rooms-'));
const script = fileURLToPath(new URL('serve-rooms.js', import.meta.url));
const child = spawn(process.execPath, [script, join(folder, 'records.db'), folder], {
  stdio: ['pipe', 'pipe', 'inherit'],
});
const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
const nextLine = async () => {
  const { value, done } = await lines.next();
  if (done) throw new Error('The server has ended.');
  return value as string;
};
const say = (line: string) => child.stdin.write(`${line}\n`);
const wait = (s: number) => new Promise((resolve) => setTimeout(resolve, s * 1000));

let measuring = false;
const answeredS: number[] = [];
let [views, viewBytes, refused] = [0, 0, 0];

/** Joins, and talks on the radio for as long as it is open. */
function device(url: string, code: string, hello: object): Promise<WebSocket> {
  const socket = new WebSocket(`${url.replace('http', 'ws')}api/drills/${code}/live`);
  const sentAt = new Map<number, number>();
  let clientSeq = 0;
  const act = () => {
    if (socket.readyState !== WebSocket.OPEN) return;
    clientSeq += 1;
    sentAt.set(clientSeq, performance.now());
    const action = { do: 'radio', message: { preset: 'copied' } };
    socket.send(JSON.stringify({ type: 'action', clientSeq, action }));
    setTimeout(act, (2 * Math.random() * 1000) / ACTIONS_PER_S);
  };
  socket.once('open', () => socket.send(JSON.stringify({ type: 'hello', v: PROTOCOL, ...hello })));
  return new Promise((resolve, reject) => {
    socket.on('error', reject);
    socket.on('message', (data: Buffer) => {
      // Views are many: looked at no further than a device's network would.
      if (data.subarray(0, 14).toString() === '{"type":"view"') {
        if (measuring) {
          views += 1;
          viewBytes += data.length;
        }
        return;
      }
      const message = JSON.parse(String(data)) as { type: string; clientSeq: number };
      if (message.type === 'welcome') {
        setTimeout(act, Math.random() * 2000);
        resolve(socket);
      }
      if (message.type === 'error') reject(new Error(String(data)));
      if (message.type === 'refused') refused += 1;
      if (message.type === 'taken' && measuring) {
        answeredS.push((performance.now() - (sentAt.get(message.clientSeq) ?? 0)) / 1000);
      }
    });
  });
}

try {
  const url = await nextLine();
  const sockets: WebSocket[] = [];
  for (let room = 0; room < ROOMS; room += 1) {
    const made = await fetch(new URL('api/drills', url), {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ evolution: 'boost through valve', seed: room }),
    });
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
  await wait(WARM_UP_S);
  say('begin');
  measuring = true;
  const cpuFrom = process.cpuUsage();
  await wait(MEASURED_S);
  measuring = false;
  const { user, system } = process.cpuUsage(cpuFrom);
  say('end');
  const report = JSON.parse(await nextLine()) as Report;
  for (const socket of sockets) socket.terminate();
  print(report, (user + system) / 1e6);
} finally {
  child.kill();
  rmSync(folder, { recursive: true });
}

function print({ tookMs, cpuMs, memoryMb, beats }: Report, devicesCpuS: number): void {
  const inS = (pick: (beat: Report['beats'][number]) => number) =>
    beats.map((beat) => pick(beat) / 1000);
  const ticks = beats.reduce((sum, beat) => sum + beat.ticks, 0);
  console.log(`\n${ROOMS} drills of 4 devices, ${(tookMs / 1000).toFixed(0)} s`);
  spread(
    'a beat: steps and views of every room',
    inS(({ tookMs: took }) => took),
  );
  spread(
    'the floor: its steps alone',
    inS(({ stepsMs }) => stepsMs),
  );
  spread(
    'a beat comes late by',
    inS(({ lateMs }) => Math.max(0, lateMs)),
  );
  spread('an action until its acknowledgement', answeredS);
  const due = (ROOMS * 20 * tookMs) / 1000;
  console.log(`  ticks done of those due: ${((100 * ticks) / due).toFixed(1)} %`);
  console.log(
    `  server: ${((100 * cpuMs) / tookMs).toFixed(0)} % of a core, ${memoryMb.toFixed(0)} MB`,
  );
  console.log(`  devices: ${((1e5 * devicesCpuS) / tookMs).toFixed(0)} % of a core`);
  const perDevice = views / (ROOMS * 4) / (tookMs / 1000);
  console.log(
    `  views: ${perDevice.toFixed(1)} a second and device, ${(viewBytes / views / 1024).toFixed(1)} kB each; ${refused} actions refused`,
  );
}

function spread(name: string, seconds: number[]): void {
  const sorted = [...seconds].sort((a, b) => a - b);
  const at = (share: number) => formatSeconds(sorted[Math.floor(share * (sorted.length - 1))] ?? 0);
  console.log(
    `  ${name.padEnd(44)}median ${at(0.5).padStart(8)}  95 % ${at(0.95).padStart(8)}  99 % ${at(0.99).padStart(8)}  most ${at(1).padStart(8)}`,
  );
}
