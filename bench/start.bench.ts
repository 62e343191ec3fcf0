/** How long the built server takes from nothing until it answers /api/district; beside it, Node with an empty server. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fillDemo, openStore } from '@plugside/records';
import { fillLargeDistrict } from './large-district.ts';
import { type Measurement, printTable, summarize } from './measure.ts';
import { type Served, serveDatabase, serveNothing } from './served.ts';

const TURNS = 7;
const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-'));
const demo = join(folder, 'demo.db');
const large = join(folder, 'large.db');
const store = await openStore({ file: demo });
await fillDemo(store);
await store.close();
await fillLargeDistrict(large);

const starts: [name: string, start: () => Promise<Served>][] = [
  ['Node, an empty server', serveNothing],
  ['the demo district', () => serveDatabase(demo)],
  ['20,000 hydrants', () => serveDatabase(large)],
];
const times = starts.map((): number[] => []);
// In turns, so that a busy moment of the machine falls on all of them; the first turn warms the disk.
for (let turn = 0; turn <= TURNS; turn += 1) {
  for (const [n, [, start]] of starts.entries()) {
    const served = await start();
    if (turn > 0) times[n]!.push(served.startedS);
    await served.stop();
  }
}
printTable(
  'From starting the process to the first answer',
  starts.map(
    ([name], n): Measurement => ({ name, runs: times[n]!.length, ...summarize(times[n]!) }),
  ),
);
rmSync(folder, { recursive: true });
