/** A building's water plan: what to do first, then with what, then what if. */
import type { Readable } from 'node:stream';
import { clock } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import { cautions } from '../sheet/notes.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { documentOf, type Sheet } from '../sheet/sheet.ts';
import { fitted, put, wrapped } from '../sheet/text.ts';
import { capital } from '../words.ts';
import type { BuildingWaterPlan } from './data.ts';
import { drawMap } from './map.ts';
import { openWater } from './open-water.ts';
import { limits, otherWays, whatIf } from './risks.ts';
import { atFire, duties, parts, settings } from './settings.ts';
import { drawTank } from './tank.ts';

const MAP_PT = 224;
/** Of the units beside the large figures. */
const UNIT_PT = 10;

/**
 * A building's water plan as a PDF: on the first page what crews do, behind it what holds it and
 * what can go wrong. It takes as many pages as it needs; nothing is shrunk or left out for room.
 * @returns the PDF as it is made
 */
export function renderBuildingPlan(plan: BuildingWaterPlan, options: PaperOptions): Readable {
  return documentOf(`Water plan, ${plan.building.name}`, options, (sheet) => {
    sheet.begin({
      kind: 'Building water plan',
      name: plan.building.name,
      from: 'records, solved',
      invented: plan.invented,
    });
    figures(sheet, plan);
    supplyTitle(sheet, plan);
    sheet.columns(
      [1.35, 1],
      [
        () => map(sheet, plan),
        () => {
          facts(sheet, plan);
          drawTank(sheet, plan);
        },
      ],
      16,
    );
    settings(sheet, plan);
    duties(sheet, plan);
    parts(sheet, plan);
    atFire(sheet, plan);
    openWater(sheet, plan);
    limits(sheet, plan);
    whatIf(sheet, plan);
    otherWays(sheet, plan);
    notes(sheet, plan);
  });
}

function figures(sheet: Sheet, { demand, way }: BuildingWaterPlan): void {
  const { bare, unit } = sheet.figures;
  const margin = way.meetsDemand ? way.marginGpm : -way.shortfallGpm;
  const sign = margin >= 0 ? '+' : '';
  const cells: [head: string, figure: string, unit: string][] = [
    [`Demand: ${demand.method}`, bare(demand.flowGpm, 'flow'), unit('flow')],
    ['This supply gives', bare(way.mostGpm, 'flow'), unit('flow')],
    [way.meetsDemand ? 'To spare' : 'SHORT', `${sign}${bare(margin, 'flow')}`, unit('flow')],
    ['First water, after the call', clock(way.time.waterAtMin), 'min'],
    ['All of it', clock(way.time.fullAtMin), 'min'],
    ['Rigs', `${way.rigsUsed}`, ''],
  ];
  const shares = [0.24, 0.18, 0.16, 0.21, 0.15, 0.06];
  const { ink } = sheet;
  let x = sheet.left;
  for (const [index, [head, figure, shownUnit]] of cells.entries()) {
    const width = sheet.width * shares[index]!;
    const said = fitted(ink, head, width - 8, { size: 9.5, tone: 'soft' });
    put(ink, said.text, x, sheet.y + 16, said.style);
    const tail = shownUnit === '' ? 0 : ink.widthOf(shownUnit, UNIT_PT, false) + 4;
    const large = fitted(ink, figure, width - tail - 8, { size: 21, bold: true }, 12);
    const end = put(ink, large.text, x, sheet.y + 38, large.style);
    put(ink, shownUnit, end + 4, sheet.y + 38, { size: UNIT_PT });
    x += width;
  }
  sheet.y += 45;
  ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.5, tone: 'line' });
}

function supplyTitle(sheet: Sheet, { way, why }: BuildingWaterPlan): void {
  sheet.y += 2;
  sheet.paragraph(capital(way.title), { size: 14, bold: true });
  sheet.paragraph(inTens(why), { size: 10 });
  sheet.y += 8;
}

function map(sheet: Sheet, plan: BuildingWaterPlan): void {
  const { ink } = sheet;
  const frame = { x: sheet.left, y: sheet.y, width: sheet.width, height: MAP_PT };
  const { unwritten, crossed } = drawMap(sheet, plan.map, frame);
  sheet.y += MAP_PT + 1;
  const marks = [
    plan.map.lays.some(({ kind, next }) => kind === 'hose' && !next) && 'thick: hose',
    plan.map.lays.some(({ kind, next }) => kind === 'road' && !next) &&
      'long dashes: road that tenders drive',
    plan.map.lays.some(({ next }) => next) && 'short dashes: supply that stands by',
    'filled: water in use',
    crossed && 'crossed: out of service',
    plan.map.pumps.length > 0 && 'boxes: engines',
  ].filter(Boolean);
  const told = [
    marks.join('; '),
    unwritten.length > 0 && `Not on the map: ${unwritten.join('; ')}.`,
  ];
  for (const text of told) {
    if (!text) continue;
    for (const line of wrapped(ink, text, sheet.width, { size: 8 })) {
      sheet.y += 10;
      put(ink, line, sheet.left, sheet.y, { size: 8, tone: 'soft' });
    }
  }
  sheet.y += 2;
}

function facts(sheet: Sheet, { building }: BuildingWaterPlan): void {
  const { full } = sheet.figures;
  const known = (value: boolean | undefined, yes: string, no: string) =>
    value === undefined ? undefined : value ? yes : no;
  const { storeys, areaFt2, exposures } = building;
  const parts = [
    building.address,
    building.occupancy,
    building.construction,
    storeys === undefined ? undefined : `${storeys} ${storeys === 1 ? 'storey' : 'storeys'}`,
    areaFt2 === undefined ? undefined : `${full(areaFt2, 'area')} ground floor`,
    exposures === undefined
      ? undefined
      : exposures === 0
        ? 'no exposures'
        : `${exposures} exposed ${exposures === 1 ? 'side' : 'sides'}`,
    known(building.sprinklered, 'SPRINKLERED', 'no sprinklers'),
    known(building.standpipe, 'STANDPIPE', 'no standpipe'),
  ];
  const told = parts.filter((part): part is string => Boolean(part));
  const text = told.length > 0 ? `${told.join('; ')}.` : 'Nothing more on record of the building.';
  // A page has no end of room beside its map.
  const lines = wrapped(sheet.ink, text, sheet.width, { size: 10 });
  const most = 9;
  for (const line of lines.slice(0, most)) {
    sheet.y += 12.5;
    put(sheet.ink, line, sheet.left, sheet.y, { size: 10 });
  }
  if (lines.length > most) {
    sheet.y += 12.5;
    put(sheet.ink, '… the rest is in the records.', sheet.left, sheet.y, { size: 10 });
  }
  sheet.y += 3;
}

function notes(sheet: Sheet, plan: BuildingWaterPlan): void {
  const told = [...plan.way.notices.filter(({ level }) => level === 'caution'), ...plan.notices];
  const texts = [...new Set(told.map(({ text }) => inTens(text)))];
  if (texts.length > 0) {
    sheet.heading('Beware', { withPt: 40, abovePt: 16 });
    cautions(sheet, texts, 9.5);
  }
  const from = plan.sources.map(({ what, from: where }) => `${what} (${where})`);
  sheet.y += 4;
  sheet.paragraph(`Numbers from: ${from.join('; ')}.`, { size: 8.5, tone: 'soft' });
}
