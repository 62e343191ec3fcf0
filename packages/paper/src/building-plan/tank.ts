/** The attack engine's tank against the supply: what is played, and how it is drawn. */
import {
  clock,
  QuantityError,
  type Situation,
  type SupplyWay,
  tanksOfWay,
  type UnitSystem,
} from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import type { Sheet } from '../sheet/sheet.ts';
import { put, wrapped } from '../sheet/text.ts';
import type { BuildingWaterPlan, TankAgainstSupply } from './data.ts';

/** Two lines of an initial attack: NFPA 1410, as told in "Engine Evolutions", Fire Engineering [gpm]. */
const INITIAL_ATTACK_GPM = 300;
/** From arrival to water from the first line [min]. Common practice, no source. */
const FIRST_WATER_MIN = 1.5;

/** Undefined where no tank is on record, or its times lie outside of what can be played. */
export function tankOf(
  way: SupplyWay,
  situation: Situation,
  units: UnitSystem,
): TankAgainstSupply | undefined {
  const { rigs, demandGpm } = situation;
  const flowGpm = Math.min(INITIAL_ATTACK_GPM, demandGpm);
  try {
    const answer = tanksOfWay(
      way,
      situation,
      { flowGpm, firstWaterMin: FIRST_WATER_MIN },
      { units },
    );
    const first = answer?.events.find(({ kind }) => kind === 'flow');
    const attack = rigs.find(({ rig }) => rig.id === first?.rigId);
    const tankGal = attack?.rig.tankGal;
    if (!answer || !first || !attack || !tankGal) return undefined;
    const rigName = attack.rig.name ?? attack.rig.id;
    return { rigName, tankGal, flowGpm, fromMin: first.atMin, answer };
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

const AXIS = { size: 8, tone: 'soft' } as const;
const CHART_PT = 66;

/** Draws the tank's level over the minutes, when the supply's water comes, and when all of it is there. */
export function drawTank(sheet: Sheet, plan: BuildingWaterPlan): void {
  const { tank, way, rigs } = plan;
  if (!tank) return;
  const { ink, figures } = sheet;
  const { answer, tankGal } = tank;
  const { waterAtMin, fullAtMin } = way.time;
  const endMin = Math.max(
    waterAtMin,
    fullAtMin,
    ...rigs.map(({ arrivesMin }) => arrivesMin),
    ...answer.tank.map(({ atMin }) => atMin),
  );
  sheet.y += 13;
  put(ink, `${tank.rigName}’s tank against the supply`, sheet.left, sheet.y, {
    size: 10.5,
    bold: true,
  });
  const x0 = sheet.left + 30;
  const x1 = sheet.right - 4;
  const y1 = sheet.y + 20;
  const y0 = y1 + CHART_PT - 20;
  const x = (minutes: number) => x0 + ((x1 - x0) * minutes) / endMin;
  const y = (gallons: number) => y0 - ((y0 - y1) * gallons) / tankGal;
  put(ink, figures.bare(tankGal, 'volume'), x0 - 4, y1 + 3, AXIS, 'right');
  put(ink, '0', x0 - 4, y0 + 3, AXIS, 'right');
  put(ink, figures.unit('volume'), sheet.left, (y0 + y1) / 2 + 3, AXIS);
  ink.path(
    [
      [x0, y1],
      [x0, y0],
      [x1, y0],
    ],
    { widthPt: 0.8, tone: 'ink' },
  );
  const levels = answer.tank.map(({ atMin, gal }) => [x(atMin), y(gal)] as const);
  if (levels[0]) ink.path([[x0, y(tankGal)], ...levels], { widthPt: 1.8, tone: 'water' });
  const marks: [text: string, atMin: number][] =
    fullAtMin - waterAtMin < 0.05
      ? [['all of it', waterAtMin]]
      : [
          ['first water', waterAtMin],
          ['all of it', fullAtMin],
        ];
  // From the last one on, each ends before the one that follows it.
  let free = x1 + 6;
  for (const [text, atMin] of marks.reverse()) {
    const at = x(atMin);
    ink.line([at, y1 - 4], [at, y0], { widthPt: 0.9, tone: 'ink', dash: [3, 2] });
    const width = ink.widthOf(text, 8, true);
    const left = Math.min(free - 6 - width, at - width / 2);
    put(ink, text, left, y1 - 6, { size: 8, bold: true });
    free = left;
  }
  const step = [1, 2, 5, 10, 20, 60].find((one) => ((x1 - x0) * one) / endMin >= 18) ?? 120;
  for (let minute = 0; minute <= endMin + 1e-6; minute += step) {
    ink.line([x(minute), y0], [x(minute), y0 + 2.5], { widthPt: 0.5, tone: 'ink' });
    put(ink, `${minute}`, x(minute), y0 + 11, AXIS, 'center');
  }
  for (const { arrivesMin } of rigs) {
    const at = x(arrivesMin);
    ink.fill(
      [
        [at, y0],
        [at - 2.6, y0 - 5],
        [at + 2.6, y0 - 5],
        [at, y0],
      ],
      'ink',
    );
  }
  sheet.y = y0 + 12;
  for (const text of [arrivals(rigs), tankWords(sheet, plan)]) {
    for (const line of wrapped(ink, text, sheet.width, { size: 8.5 })) {
      sheet.y += 10.5;
      put(ink, line, sheet.left, sheet.y, { size: 8.5 });
    }
  }
  sheet.y += 2;
}

/** "Minutes from the call; arrive (▾): 3 Engine 1, Engine 2; 7 Engine 3." */
function arrivals(rigs: BuildingWaterPlan['rigs']): string {
  const at = new Map<number, string[]>();
  for (const { name, arrivesMin } of [...rigs].sort((a, b) => a.arrivesMin - b.arrivesMin)) {
    const minute = Math.round(arrivesMin);
    at.set(minute, [...(at.get(minute) ?? []), name]);
  }
  const told = [...at].map(([minute, names]) => `${minute} ${names.join(', ')}`);
  return `Minutes from the call. Arriving (triangles): ${told.join('; ')}.`;
}

function tankWords({ figures }: Sheet, { tank }: BuildingWaterPlan): string {
  const { answer, fromMin, flowGpm } = tank!;
  return `First lines take ${figures.full(flowGpm, 'flow')} from ${clock(fromMin)}. ${inTens(answer.text)}`;
}
