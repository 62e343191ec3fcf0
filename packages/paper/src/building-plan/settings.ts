/** What each pump is set to, what each source brings, and what crews do. */
import {
  clock,
  formatHoseSize,
  formatQuantity,
  type RigOrder,
  type SourcePart,
  type SupplyWay,
  type UnitSystem,
} from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { type Cell, type Column, table } from '../sheet/table.ts';
import { capital } from '../words.ts';
import type { BuildingWaterPlan } from './data.ts';
import { runsFrom } from './legs.ts';

/** Each pump's setting in large figures, and what its operator says. */
export function settings(sheet: Sheet, plan: BuildingWaterPlan): void {
  const { bare, unit } = sheet.figures;
  const { way } = plan;
  const rows = way.orders.map((order): Cell[] => {
    const name = nameIn(plan, order.id);
    const pumps = pumpsAt(way, order);
    const set = pumps ? bare(order.pdpPsi, 'pressure') : '';
    const how = pumps ? '' : pumps === undefined ? 'as its lines need' : 'no pumping';
    const said = `“${inTens(order.radio)}”`;
    return [name, set, how === '' ? said : `${capital(how)}. ${said}`];
  });
  const pump = way.shuttle?.pump;
  if (pump && !way.orders.some(({ id }) => id === pump.rigId)) {
    const set = pump.pdpPsi === null ? '' : bare(pump.pdpPsi, 'pressure');
    rows.push([pump.rigName, set, `At the portable tank. ${inTens(pump.text)}`]);
  }
  if (rows.length === 0) return;
  sheet.heading('Pumps, and what their operators say', { withPt: 48, abovePt: GAP });
  table(
    sheet,
    [
      { head: 'Rig', share: 2.6, size: 12, bold: true },
      { head: 'Set to', unit: unit('pressure'), share: 1, number: true, size: 16, bold: true },
      { head: 'Says', share: 6.4, size: 10.5 },
    ],
    rows,
    { rowPt: 21 },
  );
}

/** Above a heading [pt]. */
export const GAP = 15;

/** An engine at the fire beside the attack engine is not drawn in the way's plan. */
function nameIn({ way, rigs }: BuildingWaterPlan, id: string): string {
  const drawn = way.plan?.rigs.find((rig) => rig.id === id)?.name;
  return drawn ?? rigs.find((rig) => rig.id === id)?.name ?? id;
}

/** Whether a rig pumps in this supply; undefined for an engine at the fire, whose lines decide that. */
function pumpsAt({ plan }: SupplyWay, order: RigOrder): boolean | undefined {
  if (plan && !plan.rigs.some(({ id }) => id === order.id)) return undefined;
  if (order.id === plan?.scene && plan.nozzles.length === 0) return undefined;
  return order.setting.mode === 'governed' && order.pdpPsi > 0;
}

/** By source: hose, length, its share, when. */
export function parts(sheet: Sheet, plan: BuildingWaterPlan): void {
  const { way } = plan;
  if (!way.parts || way.parts.length === 0) return;
  const { bare, unit, units } = sheet.figures;
  const flow = unit('flow');
  sheet.heading('What each source brings', {
    aside: 'minutes from the call',
    withPt: 76,
    abovePt: GAP,
  });
  const columns: Column[] = [
    { head: 'Source', share: 2.2, size: 10.5, bold: true },
    { head: 'Hose', share: 1.9, size: 10 },
    { head: 'Street', unit: unit('length'), share: 0.9, number: true, size: 11 },
    { head: 'Laid in sections', unit: unit('length'), share: 1.5, number: true, size: 11 },
    { head: 'Set to bring', unit: flow, share: 1.15, number: true, size: 11, bold: true },
    { head: 'Its most', unit: flow, share: 1.1, number: true, size: 11 },
    { head: 'First water', unit: 'min', share: 1.1, number: true, size: 11 },
    { head: 'All of it', unit: 'min', share: 1, number: true, size: 11 },
  ];
  const rows = way.parts.map((part): Cell[] => [
    part.sourceName,
    hoseCell(way, part, units),
    part.lengthFt > 0 ? bare(part.lengthFt, 'length') : '—',
    laidWords(way, part, units),
    bare(part.setGpm, 'flow'),
    bare(part.mostGpm, 'flow'),
    clock(part.waterAtMin),
    clock(part.fullAtMin),
  ]);
  table(sheet, columns, rows, { size: 10, rowPt: 17 });
  if (plan.comesBy.length === 0) return;
  sheet.y += 2;
  sheet.paragraph(`At the building the hose comes in from ${comesWords(plan)}.`, { size: 9.5 });
  sheet.y += 3;
}

/** "Market Avenue South (H-413 and H-106) and Mill Lane (H-12)" */
function comesWords({ comesBy }: BuildingWaterPlan): string {
  const byStreet = new Map<string, string[]>();
  for (const { street, source } of comesBy) {
    byStreet.set(street, [...(byStreet.get(street) ?? []), source]);
  }
  return [...byStreet].map(([street, names]) => `${street} (${names.join(' and ')})`).join(' and ');
}

/** "2 × 5 in", "5 in, then 4 in", "5 in and 3 in". */
function hoseCell({ plan }: SupplyWay, part: SourcePart, units: UnitSystem): string {
  if (part.hose.length === 0) return 'portable tank';
  const runs = plan ? runsFrom(plan, part.sourceId) : [];
  const cells = runs.map((run) => ({
    words: run.map(({ hose }) => formatHoseSize(hose, units)).join(', then '),
    count: run[0]!.count,
  }));
  const told =
    cells.length > 0
      ? cells
      : part.hose.map((size) => ({ words: formatHoseSize(size, units), count: 1 }));
  const counts = new Map<string, number>();
  for (const { words, count } of told) counts.set(words, (counts.get(words) ?? 0) + count);
  return [...counts]
    .map(([words, count]) => (count > 1 ? `${count} × ${words}` : words))
    .join(' and ');
}

/** "500 = 5 × 100": hose laid, and its sections where they are of one length; "2,900 = 2,700 + 200" of two sizes. */
function laidWords(
  { plan }: SupplyWay,
  { sourceId, laidFt, laidSections }: SourcePart,
  units: UnitSystem,
): string {
  if (laidFt === undefined) return '—';
  const { number: laid } = formatQuantity(laidFt, 'length', units);
  const [longest = []] = plan ? runsFrom(plan, sourceId) : [];
  if (longest.length > 1) {
    const pieces = longest.map(({ lengthFt }) => formatQuantity(lengthFt, 'length', units).number);
    return `${laid} = ${pieces.join(' + ')}`;
  }
  if (!laidSections) return laid;
  const { count, sectionFt } = laidSections;
  // As everywhere a section of 100 ft is told as 30.5 m.
  const digits = units === 'si' ? 1 : 0;
  return `${laid} = ${count} × ${formatQuantity(sectionFt, 'length', units, { digits }).number}`;
}

/** Where the water goes through several engines at the fire: which lines each takes, and what it puts out. */
export function atFire(sheet: Sheet, { way }: BuildingWaterPlan): void {
  const engines = way.atFire ?? [];
  if (engines.length < 2) return;
  const { bare, full, unit } = sheet.figures;
  const sourceName = (id: string) =>
    way.parts?.find(({ sourceId }) => sourceId === id)?.sourceName ?? id;
  sheet.heading('Engines at the fire', {
    aside: `with ${full(engines[0]!.pdpPsi, 'pressure')} at the discharge`,
    withPt: 76,
    abovePt: GAP,
  });
  const rows = engines.map((engine): Cell[] => [
    engine.rigName,
    engine.sources.map(sourceName).join(', '),
    bare(engine.mostGpm, 'flow'),
    bare(engine.pumpMostGpm, 'flow'),
  ]);
  table(
    sheet,
    [
      { head: 'Rig', share: 2.6, size: 11, bold: true },
      { head: 'Takes the lines from', share: 4.4, size: 10.5 },
      { head: 'Its part at most', unit: unit('flow'), share: 1.5, number: true, size: 11 },
      { head: 'Its pump', unit: unit('flow'), share: 1.5, number: true, size: 11 },
    ],
    rows,
    { size: 10, rowPt: 17 },
  );
}

/** Every rig with a part, in order of arrival; tenders that stand by last. */
export function duties(sheet: Sheet, plan: BuildingWaterPlan): void {
  sheet.heading('Who does what, by arrival', { withPt: 76, abovePt: GAP });
  const arrives = new Map(plan.rigs.map(({ id, arrivesMin }) => [id, arrivesMin]));
  const all = [...plan.way.duties, ...(plan.way.standBy ?? [])];
  const rows = all
    .map((duty) => ({ ...duty, atMin: arrives.get(duty.rigId) }))
    .sort((one, two) => (one.atMin ?? Number.MAX_VALUE) - (two.atMin ?? Number.MAX_VALUE))
    .map(({ rigName, duty, atMin }): Cell[] => [
      atMin === undefined ? '—' : clock(atMin),
      rigName,
      capital(inTens(duty)),
    ]);
  const columns: Column[] = [
    { head: 'Arrives', unit: 'min', share: 0.8, number: true, size: 11 },
    { head: 'Rig', share: 2.2, size: 11, bold: true },
    { head: 'Does', share: 7, size: 10.5 },
  ];
  table(sheet, columns, rows, { size: 10.5 });
}
