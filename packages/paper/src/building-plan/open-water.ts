/** What a plan tells of a pump at draft, and of a tender shuttle. */
import { clock, type DraftPart, formatHoseSize, type ShuttlePart } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import { type Source, sources } from '../sheet/notes.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { type Cell, table } from '../sheet/table.ts';
import { originWords } from '../words.ts';
import type { BuildingWaterPlan } from './data.ts';
import { GAP } from './settings.ts';

export function openWater(sheet: Sheet, { way }: BuildingWaterPlan): void {
  for (const draft of way.drafts ?? []) drafting(sheet, draft);
  if (way.shuttle) shuttle(sheet, way.shuttle);
}

function drafting(sheet: Sheet, draft: DraftPart): void {
  const { full, units } = sheet.figures;
  sheet.heading(`Draft at ${draft.sourceName}: ${draft.rigName}`, { withPt: 60, abovePt: GAP });
  const { suction, liftFt, altitudeFt, waterTempF } = draft;
  const hose = `${full(suction.lengthFt, 'length')} of ${formatHoseSize(suction.hose, units)}`;
  const facts: Source[] = [
    { what: `Lift ${full(liftFt.value, 'length')}`, from: originWords(liftFt.origin, units) },
    {
      what: `Suction hose: ${suction.count > 1 ? `${suction.count} × ` : ''}${hose}`,
      from: originWords(suction.origin, units),
    },
    {
      what: `Vacuum ${full(draft.vacuumInHg, 'vacuum')} at the flow set`,
      from: `${full(draft.vacuumLimitInHg, 'vacuum')} is the deepest to count on here`,
    },
    {
      what: `The pump gives ${full(draft.pumpMostGpm, 'flow')} at most there`,
      from: inTens(
        `${draft.bindingText}${draft.ruleGpm === null ? '' : ` By the published share of its rating at this lift: ${full(draft.ruleGpm, 'flow')}.`}`,
      ),
    },
    {
      what:
        draft.lastsMin === undefined
          ? 'How long the water lasts is not known'
          : `The water lasts ${Math.floor(draft.lastsMin).toLocaleString('en-US')} min at the flow set`,
      from:
        draft.usableGal === undefined
          ? 'its amount is not on record'
          : `${full(draft.usableGal, 'volume')} can be drawn`,
    },
    {
      what: `Access: ${draft.access ?? 'nothing on record'}`,
      from: draft.access ? 'as on record; look in every season' : 'walk it before it is counted on',
    },
    {
      what: `${full(altitudeFt.value, 'length')} above the sea, water at ${full(waterTempF.value, 'temperature')}`,
      from: `${originWords(altitudeFt.origin, units)}; ${originWords(waterTempF.origin, units)}`,
    },
  ];
  sources(sheet, facts, { size: 9, columns: 2 });
}

function shuttle(sheet: Sheet, part: ShuttlePart): void {
  const { bare, full, unit, units } = sheet.figures;
  const { place } = part;
  sheet.heading(`Tender shuttle from ${place.name}`, {
    aside: `${full(place.roadMi, 'distance')} one way`,
    withPt: 60,
    abovePt: GAP,
  });
  const rows = part.tenders.map((one): Cell[] => [
    one.rigName,
    bare(one.loadGal, 'volume'),
    one.fillMin.toFixed(1),
    (one.outMin + one.backMin).toFixed(1),
    one.dumpMin.toFixed(1),
    one.roundTripMin.toFixed(1),
    bare(one.gpm, 'flow'),
    clock(one.firstAtMin),
  ]);
  const number = { share: 1, number: true, size: 10.5 } as const;
  table(
    sheet,
    [
      { head: 'Tender', share: 2.2, size: 10.5, bold: true },
      { head: 'Load', unit: unit('volume'), ...number },
      { head: 'Fill', unit: 'min', ...number },
      { head: 'Travel', unit: 'min', ...number },
      { head: 'Dump', unit: 'min', ...number },
      { head: 'Round', unit: 'min', ...number },
      { head: 'Keeps up', unit: unit('flow'), ...number, bold: true },
      { head: 'First load at', unit: 'min', ...number },
    ],
    rows,
    { size: 10, rowPt: 16 },
  );
  sheet.y += 3;
  const engine = place.fillingRig
    ? `${place.fillingRig.rigName} drafts there and fills`
    : 'from the hydrant';
  const facts: Source[] = [
    {
      what: `Keeps up ${full(part.gpm, 'flow')}; the plan draws ${full(part.drawGpm, 'flow')} from ${clock(part.drawFromMin)} on`,
      from: `the ${part.limitedBy} ${part.limitedBy === 'tenders' ? 'are' : 'is'} what holds it`,
    },
    {
      what: `Filled at ${full(place.fillGpm, 'flow')}`,
      from: `${engine}${place.access ? `; access: ${place.access}` : ''}`,
    },
    {
      what: `Portable tank ${full(part.tankGal.value, 'volume')}`,
      from: originWords(part.tankGal.origin, units),
    },
    {
      what:
        part.runsDryAtMin === null
          ? 'The portable tank does not run dry'
          : `The portable tank is DRY at ${clock(part.runsDryAtMin)}`,
      from: inTens(part.text),
    },
  ];
  sources(sheet, facts, { size: 9, columns: 2 });
}
