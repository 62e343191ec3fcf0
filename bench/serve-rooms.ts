/**
 * The built server over an empty database, or one with the demo district; told to by lines on its
 * input, it prints how its drills' clock went, or works out a building's water plan on its main thread.
 */
import { createInterface } from 'node:readline';
import { type Beat, createApp, listen, openRecords } from '@plugside/server';
import { printHere } from './print-here.ts';

const [file, webRoot, district] = process.argv.slice(2) as [string, string, string?];
const demo = district === 'demo';
const { store } = await openRecords({ target: { file }, isDefault: false, demo });
let beats: Beat[] = [];
const app = createApp({
  webRoot,
  version: 'bench',
  store,
  drills: { onBeat: (beat) => beats.push(beat) },
});
const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
console.log(server.url);

let from = { at: performance.now(), cpu: process.cpuUsage() };
for await (const line of createInterface({ input: process.stdin })) {
  const [, buildingId] = /^print (\S+)$/.exec(line) ?? [];
  if (buildingId !== undefined) {
    await printHere(store, buildingId);
    console.log('printed');
  }
  if (line === 'begin') {
    beats = [];
    from = { at: performance.now(), cpu: process.cpuUsage() };
  }
  if (line === 'end') {
    const cpu = process.cpuUsage(from.cpu);
    const tookMs = performance.now() - from.at;
    const cpuMs = (cpu.user + cpu.system) / 1000;
    const memoryMb = process.memoryUsage().rss / 2 ** 20;
    console.log(JSON.stringify({ tookMs, cpuMs, memoryMb, beats }));
  }
}
