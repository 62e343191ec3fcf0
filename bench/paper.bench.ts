/** How long it takes to print cards of 300 hydrants, with the solving alone beside it; and the other documents. */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { patternList } from '@plugside/fireground';
import {
  drillSheetFor,
  type HydrantCard,
  hydrantCardsFrom,
  pickedRig,
  pumpChartFor,
  readDepartment,
  renderDrillSheet,
  renderHydrantCards,
  renderPumpChart,
  writePdf,
} from '@plugside/paper';
import { districtStreets, fillDemo, openStore, planTests, type Stored } from '@plugside/records';

const CARDS = 300;
const printedAt = new Date('2026-11-25T12:00:00Z');
const folder = mkdtempSync(join(tmpdir(), 'plugside-bench-'));
const file = join(folder, 'printed.pdf');

const store = await openStore({ memory: true });
await fillDemo(store);
const hydrants: Stored<'hydrants'>[] = [];
for await (const hydrant of store.all('hydrants')) hydrants.push(hydrant);
const tests = await planTests(store, hydrants);
const records = await readDepartment(store);
const streets = await districtStreets(store);
const cards = () =>
  hydrantCardsFrom({
    records,
    hydrants: hydrants.slice(0, CARDS),
    around: hydrants,
    testOf: ({ id }) => tests.get(id),
    streets,
    today: '2026-11-25',
    invented: true,
  });

/** Seconds of the best of three. */
async function best(work: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let turn = 0; turn < 3; turn += 1) {
    const from = performance.now();
    await work();
    times.push((performance.now() - from) / 1000);
  }
  return Math.min(...times);
}

function tell(what: string, seconds: number, each: string): void {
  console.log(`  ${what.padEnd(44)}${seconds.toFixed(2).padStart(8)} s   ${each}`);
}
const perCard = (seconds: number) => `${((1000 * seconds) / CARDS).toFixed(1)} ms a card`;

console.log(`\nCards of ${CARDS} hydrants, 14 lays solved on each`);
const made: HydrantCard[] = [];
const solving = await best(async () => {
  made.length = 0;
  for await (const card of cards()) made.push(card);
});
tell('solve alone', solving, perCard(solving));
const drawing = await best(() => writePdf(file, renderHydrantCards(made, { printedAt })));
tell('draw and write alone', drawing, perCard(drawing));
const all = await best(() => writePdf(file, renderHydrantCards(cards(), { printedAt })));
tell('solve, draw and write', all, perCard(all));
console.log(
  `  ${(statSync(file).size / 1e6).toFixed(1)} MB; ${(all / solving).toFixed(1)}× the solving alone`,
);

console.log('\nOther documents, solved and written');
const rig = records.rigs[0]!;
const chart = () =>
  pumpChartFor({
    ...pickedRig(records, rig),
    nozzles: records.nozzles,
    department: records.department,
  });
tell('pump chart', await best(() => writePdf(file, renderPumpChart(chart(), { printedAt }))), '');
const plan = patternList.find(({ id }) => id === 'boosted-at-hydrant')!.make();
const drill = () => renderDrillSheet(drillSheetFor({ plan }), { printedAt });
tell('drill sheet', await best(() => writePdf(file, drill())), '');

await store.close();
rmSync(folder, { recursive: true });
