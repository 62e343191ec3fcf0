/** What binds, what can go wrong, and what is done then. */
import type { LimitCheck, Quantity } from '@plugside/fireground';
import type { Sheet } from '../sheet/sheet.ts';
import { type Cell, type Column, table } from '../sheet/table.ts';
import { capital } from '../words.ts';
import type { BuildingWaterPlan } from './data.ts';
import type { Tightness } from './tightness.ts';

export function whatIf(sheet: Sheet, plan: BuildingWaterPlan, tight: Tightness): void {
  if (plan.mishaps.length === 0) return;
  const { bare, unit } = sheet.figures;
  sheet.heading('What if', { withPt: 40, abovePt: tight.gapPt });
  const columns: Column[] = [
    { head: 'What happens', share: 3.9, size: tight.textPt, bold: true },
    { head: `As set, ${unit('flow')}`, share: 1.15, number: true, size: tight.textPt + 1 },
    {
      head: `Set anew, ${unit('flow')}`,
      share: 1.3,
      number: true,
      size: tight.textPt + 1,
      bold: true,
    },
    { head: 'Demand', share: 1.5, size: tight.textPt },
    { head: 'Then', share: 4, size: tight.textPt - 1 },
  ];
  const rows = plan.mishaps.map(({ what, flowGpm, resetGpm, stillMeets, text }): Cell[] => {
    const short = plan.demand.flowGpm - Math.max(flowGpm, resetGpm);
    return [
      what,
      bare(flowGpm, 'flow'),
      bare(resetGpm, 'flow'),
      stillMeets || short < 0.5 ? 'met' : `${bare(short, 'flow')} SHORT`,
      toDo(text),
    ];
  });
  table(sheet, columns, rows, { size: tight.textPt, rowPt: tight.textPt * 1.35 });
  if (plan.mishaps.some(({ stillMeets }) => !stillMeets)) {
    sheet.paragraph('Short: shut lines to match, and bring another supply.', {
      size: tight.textPt - 1,
    });
    sheet.y += 3;
  }
}

/** A mishap's sentences without those that its row tells by its figures. */
function toDo(text: string): string {
  const sentences = text.split(/(?<=\.) (?=[\d\p{Lu}])/u).slice(1);
  return sentences.filter((sentence) => !/^The demand is met|\bshort:/.test(sentence)).join(' ');
}

const QUANTITIES: Record<LimitCheck['unit'], Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  'ft/s': 'velocity',
  inHg: 'vacuum',
};

export function limits(
  sheet: Sheet,
  { way, limits: all }: BuildingWaterPlan,
  tight: Tightness,
): void {
  const { full, bare } = sheet.figures;
  sheet.heading('Limits as set, the tightest first', { abovePt: tight.gapPt });
  if (all.length === 0) {
    sheet.paragraph(capital(way.bindingText), { size: tight.textPt });
    return;
  }
  const columns: Column[] = [
    { head: 'Limit', share: 3.9, size: tight.textPt - 0.5 },
    { head: 'is', share: 1.1, number: true, size: tight.textPt },
    { head: 'allowed', share: 1.6, number: true, size: tight.textPt },
    { head: 'room', share: 1.1, number: true, size: tight.textPt, bold: true },
  ];
  const rows = all.slice(0, tight.limits).map((limit): Cell[] => {
    const quantity = QUANTITIES[limit.unit];
    const allowed = full(limit.limit, quantity);
    return [
      limit.label,
      bare(limit.value, quantity),
      `${limit.sense === 'min' ? '≥' : '≤'} ${allowed}`,
      bare(limit.margin, quantity),
    ];
  });
  table(sheet, columns, rows, { size: tight.textPt, rowPt: tight.textPt * 1.35 });
}

export function nextWay(sheet: Sheet, { next }: BuildingWaterPlan, tight: Tightness): void {
  const { full } = sheet.figures;
  sheet.heading('If that water is lost', { withPt: 24, abovePt: tight.gapPt });
  if (!next) {
    sheet.paragraph('No other supply is known here: ask for tenders early.', {
      size: tight.textPt,
    });
    return;
  }
  sheet.paragraph(capital(next.title), { size: tight.textPt + 1.5, bold: true });
  const short = next.meetsDemand ? '' : ` (${full(next.shortfallGpm, 'flow')} short)`;
  sheet.paragraph(
    `${full(next.mostGpm, 'flow')}${short}, water ${Math.ceil(next.time.waterAtMin)} min after the call, ${next.rigsUsed} ${next.rigsUsed === 1 ? 'rig' : 'rigs'}. ${next.bindingText}`,
    { size: tight.textPt },
  );
}
