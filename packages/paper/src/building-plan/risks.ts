/** What binds, what can go wrong, and what is done then. */
import {
  askedText,
  clock,
  formatNumber,
  type LimitCheck,
  type Quantity,
  type SupplyWay,
} from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { type Cell, type Column, table } from '../sheet/table.ts';
import { capital, limitName } from '../words.ts';
import type { BuildingWaterPlan } from './data.ts';
import { GAP } from './settings.ts';

export function whatIf(sheet: Sheet, plan: BuildingWaterPlan): void {
  if (plan.whatIf.length === 0) return;
  const { bare, unit } = sheet.figures;
  sheet.heading('What if', { withPt: 60, abovePt: GAP });
  const columns: Column[] = [
    { head: 'What happens', share: 3.1, size: 9.5, bold: true },
    { head: 'Wanted', unit: unit('flow'), share: 0.95, number: true, size: 10.5 },
    { head: 'As set', unit: unit('flow'), share: 0.95, number: true, size: 10.5 },
    { head: 'Set anew', unit: unit('flow'), share: 1.05, number: true, size: 10.5 },
    { head: 'The demand is', share: 2.05, size: 10, bold: true },
    { head: 'Then', share: 3.9, size: 9 },
  ];
  const rows = plan.whatIf.map((one): Cell[] => [
    one.what,
    bare(one.wantedGpm, 'flow'),
    bare(one.flowGpm, 'flow'),
    bare(one.resetGpm, 'flow'),
    one.met ? one.verdict : one.verdict.replace(/short$/, 'SHORT'),
    one.remedy,
  ]);
  table(sheet, columns, rows, { size: 9.5, rowPt: 14 });
  if (plan.whatIf.some(({ met }) => !met)) {
    sheet.paragraph('Short: shut lines to match, and bring another supply.', { size: 9.5 });
    sheet.y += 3;
  }
}

const QUANTITIES: Record<LimitCheck['unit'], Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  'ft/s': 'velocity',
  inHg: 'vacuum',
};

/** Every limit: none is left out for room. */
export function limits(sheet: Sheet, plan: BuildingWaterPlan): void {
  const { way, limits: all, asked } = plan;
  sheet.heading('Limits as set, the tightest first', { withPt: 76, abovePt: GAP });
  if (all.length === 0) sheet.paragraph(capital(inTens(way.bindingText)), { size: 10 });
  else limitTable(sheet, plan);
  sheet.paragraph(`Chosen with: ${inTens(askedText(asked, sheet.figures.units))}`, { size: 9.5 });
  sheet.y += 3;
}

function limitTable(sheet: Sheet, { way, limits: all }: BuildingWaterPlan): void {
  const { full, bare, units } = sheet.figures;
  const columns: Column[] = [
    { head: 'Limit', share: 5, size: 9.5 },
    { head: 'is', share: 1.1, number: true, size: 10 },
    { head: 'allowed', share: 1.6, number: true, size: 10 },
    { head: 'room', share: 1.1, number: true, size: 10, bold: true },
  ];
  const rows = all.map((limit): Cell[] => {
    const quantity = QUANTITIES[limit.unit];
    const allowed = full(limit.limit, quantity);
    return [
      limitName(way.plan, limit, units),
      bare(limit.value, quantity),
      `${limit.sense === 'min' ? '≥' : '≤'} ${allowed}`,
      roomWords(sheet, limit, quantity),
    ];
  });
  table(sheet, columns, rows, { size: 9.5, rowPt: 13.5 });
}

/** What is left between the two figures as they are printed beside it. */
function roomWords({ figures: { bare } }: Sheet, limit: LimitCheck, quantity: Quantity): string {
  const [is, allowed] = [limit.value, limit.limit].map((value) =>
    Number(bare(value, quantity).replaceAll(',', '').replace('−', '-')),
  );
  const printed = bare(limit.margin, quantity);
  const digits = printed.split('.')[1]?.length ?? 0;
  const room = limit.sense === 'min' ? is! - allowed! : allowed! - is!;
  return Number.isFinite(room) ? formatNumber(room, digits) : printed;
}

/** The best of the others, and what needs none of the same water. */
export function otherWays(sheet: Sheet, { nextInRank, next }: BuildingWaterPlan): void {
  sheet.heading('Other supplies', { withPt: 40, abovePt: GAP });
  if (!next && !nextInRank) {
    sheet.paragraph('No other supply is known here: ask for tenders early.', { size: 10 });
    return;
  }
  if (nextInRank && nextInRank !== next) told(sheet, 'Next in rank', nextInRank);
  if (next) {
    const both = nextInRank === next ? 'Next in rank, and if that water is lost' : '';
    told(sheet, both || 'If that water is lost', next);
  } else {
    sheet.paragraph(
      'If that water is lost: no supply without it is known; ask for tenders early.',
      {
        size: 10,
        bold: true,
      },
    );
  }
}

function told(sheet: Sheet, head: string, way: SupplyWay): void {
  const { full } = sheet.figures;
  const short = way.meetsDemand ? '' : ` (${full(way.shortfallGpm, 'flow')} SHORT)`;
  const rigs = `${way.rigsUsed} ${way.rigsUsed === 1 ? 'rig' : 'rigs'}`;
  sheet.need(40);
  sheet.paragraph(`${head}: ${way.title}`, { size: 11, bold: true });
  sheet.paragraph(
    `${full(way.mostGpm, 'flow')}${short}, first water ${clock(way.time.waterAtMin)} min after the call, all of it at ${clock(way.time.fullAtMin)}, ${rigs}. ${inTens(way.bindingText)}`,
    { size: 10 },
  );
}
