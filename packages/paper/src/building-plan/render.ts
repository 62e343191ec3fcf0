/** A building's water plan on one page: what to do first, then with what, then what if. */
import type { Readable } from 'node:stream';
import type { RigOrder, SupplyWay } from '@plugside/fireground';
import { cautions } from '../sheet/notes.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { documentOf, type Sheet, tightnessFor } from '../sheet/sheet.ts';
import { type Cell, type Column, table } from '../sheet/table.ts';
import { fitted, put, wrapped, wrappedTo } from '../sheet/text.ts';
import { capital } from '../words.ts';
import type { BuildingWaterPlan } from './data.ts';
import { drawMap } from './map.ts';
import { limits, nextWay, whatIf } from './risks.ts';
import { TIGHTEST, type Tightness, tightnessAt } from './tightness.ts';

/** What crews say and do stays readable on the fullest page. */
const LEAST_SPOKEN_PT = 9.5;

/**
 * A building's water plan as a PDF of one page. Where names are long the map and the small print
 * give way, never what crews read from afar.
 * @returns the PDF as it is made
 */
export function renderBuildingPlan(plan: BuildingWaterPlan, options: PaperOptions): Readable {
  const room = { pages: 1, tightest: TIGHTEST };
  const draw = (sheet: Sheet, tightness: number) => drawPlan(sheet, plan, tightnessAt(tightness));
  const tightness = tightnessFor(options, room, draw);
  return documentOf(`Water plan, ${plan.building.name}`, options, (sheet) =>
    draw(sheet, tightness),
  );
}

function drawPlan(sheet: Sheet, plan: BuildingWaterPlan, tight: Tightness): void {
  sheet.begin({
    kind: 'Building water plan',
    name: plan.building.name,
    from: 'records, solved',
    invented: plan.invented,
  });
  figures(sheet, plan);
  supplyTitle(sheet, plan, tight);
  sheet.y += 4;
  sheet.columns(
    [1.12, 1],
    [
      () => map(sheet, plan, tight),
      () => {
        settings(sheet, plan, tight);
        limits(sheet, plan, tight);
      },
    ],
    16,
  );
  duties(sheet, plan, tight);
  whatIf(sheet, plan, tight);
  nextWay(sheet, plan, tight);
  notes(sheet, plan, tight);
}

function figures(sheet: Sheet, { demand, way }: BuildingWaterPlan): void {
  const { bare, unit } = sheet.figures;
  const margin = way.meetsDemand ? way.marginGpm : -way.shortfallGpm;
  const sign = margin >= 0 ? '+' : '';
  const cells: [head: string, figure: string, unit: string][] = [
    [`Demand: ${demand.method}`, bare(demand.flowGpm, 'flow'), unit('flow')],
    ['This supply gives', bare(way.mostGpm, 'flow'), unit('flow')],
    [way.meetsDemand ? 'To spare' : 'SHORT', `${sign}${bare(margin, 'flow')}`, unit('flow')],
    ['Water at', `${Math.ceil(way.time.waterAtMin)}`, 'min after the call'],
    ['Rigs', `${way.rigsUsed}`, ''],
  ];
  const shares = [0.26, 0.2, 0.19, 0.25, 0.1];
  const { ink } = sheet;
  let x = sheet.left;
  for (const [index, [head, figure, shownUnit]] of cells.entries()) {
    const width = sheet.width * shares[index]!;
    const said = fitted(ink, head, width - 8, { size: 9.5, tone: 'soft' }, 6.5);
    put(ink, said.text, x, sheet.y + 16, said.style);
    const end = put(ink, figure, x, sheet.y + 38, { size: 21, bold: true });
    put(ink, shownUnit, end + 4, sheet.y + 38, { size: 10.5 });
    x += width;
  }
  sheet.y += 45;
  ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.5, tone: 'line' });
}

function supplyTitle(sheet: Sheet, { way, why }: BuildingWaterPlan, tight: Tightness): void {
  const { ink } = sheet;
  const title = wrappedTo(
    ink,
    capital(way.title),
    sheet.width,
    { size: tight.titlePt, bold: true },
    2,
    8,
  );
  sheet.y += 3;
  for (const line of title.lines) {
    sheet.y += title.style.size * 1.15;
    put(ink, line, sheet.left, sheet.y, title.style);
  }
  const said = wrappedTo(ink, why, sheet.width, { size: tight.textPt }, 2, 7);
  sheet.y += 1;
  for (const line of said.lines) {
    sheet.y += said.style.size * 1.25;
    put(ink, line, sheet.left, sheet.y, said.style);
  }
  sheet.y += 4;
}

function map(sheet: Sheet, plan: BuildingWaterPlan, tight: Tightness): void {
  const { ink } = sheet;
  drawMap(sheet, plan.map, { x: sheet.left, y: sheet.y, width: sheet.width, height: tight.mapPt });
  sheet.y += tight.mapPt + 10;
  const legend = plan.next
    ? 'thick: hose of this supply; dashed: of the next'
    : 'thick: hose of this supply';
  const said = fitted(
    ink,
    `${legend}; filled: hydrant in use`,
    sheet.width,
    { size: 8, tone: 'soft' },
    6,
  );
  put(ink, said.text, sheet.left, sheet.y, said.style);
  sheet.y += 2;
}

/** Each pump's setting in large figures, and what its operator says. */
function settings(sheet: Sheet, plan: BuildingWaterPlan, tight: Tightness): void {
  const { ink } = sheet;
  const { bare, unit } = sheet.figures;
  facts(sheet, plan, tight);
  const { way } = plan;
  for (const order of way.orders) {
    const name = way.plan?.rigs.find(({ id }) => id === order.id)?.name ?? order.id;
    const pumps = pumpsAt(way, order);
    const figure = pumps ? bare(order.pdpPsi, 'pressure') : pumps === undefined ? '' : 'no pumping';
    const shownUnit = pumps ? unit('pressure') : pumps === undefined ? 'by its lines' : '';
    const right = ink.widthOf(figure, 17, true) + 4 + ink.widthOf(shownUnit, 10, false);
    const said = fitted(ink, name, sheet.width - right - 8, { size: 12, bold: true }, 7);
    sheet.y += 17;
    put(ink, said.text, sheet.left, sheet.y, said.style);
    put(ink, shownUnit, sheet.right, sheet.y, { size: 10 }, 'right');
    const unitWidth = shownUnit === '' ? 0 : ink.widthOf(shownUnit, 10, false) + 4;
    put(ink, figure, sheet.right - unitWidth, sheet.y, { size: 17, bold: true }, 'right');
    const size = Math.max(LEAST_SPOKEN_PT, tight.textPt);
    for (const line of wrapped(ink, `“${order.radio}”`, sheet.width, { size })) {
      sheet.y += size * 1.25;
      put(ink, line, sheet.left, sheet.y, { size });
    }
    sheet.y += 4;
    ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.4, tone: 'hairline' });
  }
}

/** Whether a rig pumps in this supply; undefined for an attack engine, whose lines decide that. */
function pumpsAt({ plan }: SupplyWay, order: RigOrder): boolean | undefined {
  if (order.id === plan?.scene && plan.nozzles.length === 0) return undefined;
  return order.setting.mode === 'governed' && order.pdpPsi > 0;
}

function facts(sheet: Sheet, { building }: BuildingWaterPlan, tight: Tightness): void {
  const { full } = sheet.figures;
  const systems = [
    building.sprinklered === undefined
      ? ''
      : building.sprinklered
        ? 'sprinklered'
        : 'no sprinklers',
    building.standpipe === undefined ? '' : building.standpipe ? 'standpipe' : 'no standpipe',
  ].filter(Boolean);
  const size = [
    building.storeys === undefined
      ? ''
      : `${building.storeys} ${building.storeys === 1 ? 'storey' : 'storeys'}`,
    building.areaFt2 === undefined ? '' : `${full(building.areaFt2, 'area')} ground floor`,
    building.exposures === undefined
      ? ''
      : building.exposures === 0
        ? 'no exposures'
        : `${building.exposures} exposed`,
  ].filter(Boolean);
  const parts = [building.address, building.occupancy, building.construction, ...size, ...systems];
  const told = parts.filter((part): part is string => Boolean(part));
  const said = wrappedTo(
    sheet.ink,
    told.length > 0 ? `${told.join('; ')}.` : 'Nothing more on record of the building.',
    sheet.width,
    { size: tight.textPt },
    4,
    6.5,
  );
  for (const line of said.lines) {
    sheet.y += said.style.size * 1.25;
    put(sheet.ink, line, sheet.left, sheet.y, said.style);
  }
  sheet.y += 4;
  sheet.ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.9, tone: 'ink' });
}

function duties(sheet: Sheet, plan: BuildingWaterPlan, tight: Tightness): void {
  sheet.heading('Who does what, by arrival', { withPt: 40, abovePt: tight.gapPt });
  const arrives = new Map(plan.rigs.map(({ id, arrivesMin }) => [id, arrivesMin]));
  const rows = plan.way.duties.map(({ rigId, rigName, duty }): Cell[] => {
    const at = arrives.get(rigId);
    return [at === undefined ? '—' : `${Math.round(at)}`, rigName, capital(duty)];
  });
  const size = Math.max(LEAST_SPOKEN_PT, tight.textPt);
  const columns: Column[] = [
    { head: 'Arrives, min', share: 0.9, number: true, size: size },
    { head: 'Rig', share: 2.6, size, bold: true, oneLine: true },
    { head: 'Does', share: 6.5, size },
  ];
  table(sheet, columns, rows, { size });
}

function notes(sheet: Sheet, plan: BuildingWaterPlan, tight: Tightness): void {
  const told = [...plan.way.notices.filter(({ level }) => level === 'caution'), ...plan.notices];
  const texts = [...new Set(told.map(({ text }) => text))];
  sheet.y += 4;
  cautions(sheet, texts, tight.cautionPt);
  const from = plan.sources.map(({ what, from: where }) => `${what} (${where})`);
  sheet.y += 2;
  sheet.paragraph(`Numbers from: ${from.join('; ')}.`, {
    size: Math.max(6.5, tight.cautionPt - 1),
    tone: 'soft',
  });
}
