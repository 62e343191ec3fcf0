/** How long it takes to bring in a list of 20,000 hydrants, and to bring it in again. Prints rows per second. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { guessMapping, openStore, readSource, runImport } from '@plugside/records';
import { seededRandom } from './measure.ts';

const ROWS = 20_000;
const random = seededRandom(1);
const places = Array.from({ length: ROWS }, () => [-84.5 + random() / 2, 33.5 + random() / 2]);
const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-'));
const csv = join(folder, 'hydrants.csv');
const geojson = join(folder, 'hydrants.geojson');
const sizes = ['6"', 'DN 200', 'twelve inch', '8'];
const lines = places.map(([x, y], at) => `H-${at},${x},${y},${sizes[at % 4]},active`);
writeFileSync(csv, `hydrant id,lon,lat,main size (in),status\n${lines.join('\n')}\n`);
const features = places.map((coordinates, at) =>
  JSON.stringify({
    type: 'Feature',
    id: `n${at}`,
    geometry: { type: 'Point', coordinates },
    properties: { emergency: 'fire_hydrant', 'fire_hydrant:diameter': '150' },
  }),
);
writeFileSync(geojson, `{"type":"FeatureCollection","features":[\n${features.join(',\n')}\n]}\n`);

/** Seconds of the best of three. */
async function best(work: (turn: number) => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let turn = 0; turn < 3; turn += 1) {
    const from = performance.now();
    await work(turn);
    times.push((performance.now() - from) / 1000);
  }
  return Math.min(...times);
}

function tell(what: string, seconds: number): void {
  const perSecond = Math.round(ROWS / seconds).toLocaleString('en');
  console.log(
    `  ${what.padEnd(40)}${seconds.toFixed(2).padStart(8)} s${perSecond.padStart(10)} rows/s`,
  );
}

for (const [name, file] of [
  ['CSV', csv],
  ['GeoJSON', geojson],
] as const) {
  console.log(`\n${ROWS.toLocaleString('en')} hydrants from ${name}`);
  tell('look through the file', await best(() => readSource(file)));
  const source = await readSource(file);
  const mapping = guessMapping('hydrants', source);
  const into = async (turn: number, again: boolean) => {
    const store = await openStore({ file: join(folder, `${name}-${turn}.db`) });
    const report = await runImport(store, source, mapping);
    await store.close();
    const { added, same } = report;
    if ((again ? same : added) !== ROWS)
      throw new Error(`Not as it should be: ${JSON.stringify(report.byReason)}`);
  };
  tell('bring it into a new SQLite file', await best((turn) => into(turn, false)));
  tell('bring it in again, nothing changed', await best((turn) => into(turn, true)));
}
rmSync(folder, { recursive: true });
