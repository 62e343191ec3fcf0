import { fogK, smoothBoreK } from '@plugside/hydraulics';
import type { Nozzle, Origin } from '../plan/plan.ts';
import { practice } from './origins.ts';

/**
 * K of `Q = K·√P` [gpm/√psi]: a smooth bore by its tip, a fog nozzle by its rating, a
 * selectable one by its setting, an automatic one at its greatest flow (past that flow it
 * is a fixed opening). Throws QuantityError for a tip, flow or pressure that is not above 0.
 */
export function nozzleK(nozzle: Nozzle): number {
  if (nozzle.kind === 'smooth-bore') return smoothBoreK(nozzle.tipIn);
  return fogK(nozzleRatedGpm(nozzle), nozzle.ratedPsi);
}

/**
 * Flow at the rated pressure [gpm]. An automatic nozzle takes anything up to its greatest
 * flow there, so that one counts.
 */
export function nozzleRatedGpm(nozzle: Nozzle): number {
  switch (nozzle.kind) {
    case 'smooth-bore':
      return nozzleK(nozzle) * Math.sqrt(nozzle.ratedPsi);
    case 'fog':
      return nozzle.ratedGpm;
    case 'selectable':
      return nozzle.selectedGpm;
    case 'automatic':
      return nozzle.greatestGpm;
  }
}

/** What makes a nozzle the nozzle it is, without its place in a plan. */
export type NozzleMake =
  | { kind: 'smooth-bore'; tipIn: number; ratedPsi: number }
  | { kind: 'fog'; ratedGpm: number; ratedPsi: number }
  | { kind: 'selectable'; settingsGpm: readonly number[]; selectedGpm: number; ratedPsi: number }
  | { kind: 'automatic'; ratedPsi: number; leastGpm: number; greatestGpm: number };

export interface NozzleEntry {
  id: string;
  label: string;
  use: Nozzle['use'];
  make: NozzleMake;
  origin: Origin;
}

const pressures = practice(
  'Usual nozzle pressures: 50 psi smooth-bore hand line, 80 master stream, 100 fog ("Pump Ops ch 7" study cards)',
);
const lowPressure = practice(
  'Low-pressure fog at 50 or 75 psi ("Hose, Nozzles and Flow Rates" study cards)',
);
const typical = practice('Typical settings of the kind; use the rating on the nozzle');

/** Smooth-bore tips [in] in use, hand lines first. */
export const handLineTipsIn: readonly number[] = [7 / 8, 15 / 16, 1, 1.125, 1.25];
export const masterStreamTipsIn: readonly number[] = [1.25, 1.375, 1.5, 1.75, 1.875, 2];

const tipNames: Readonly<Record<number, string>> = {
  0.875: '⅞',
  0.9375: '15/16',
  1: '1',
  1.125: '1⅛',
  1.25: '1¼',
  1.375: '1⅜',
  1.5: '1½',
  1.75: '1¾',
  1.875: '1⅞',
  2: '2',
};

function smoothBore(tipIn: number, use: Nozzle['use']): NozzleEntry {
  const ratedPsi = use === 'hand line' ? 50 : 80;
  return {
    id: `${use === 'hand line' ? 'hand' : 'master'}-tip-${tipIn}`,
    label: `${tipNames[tipIn]} in smooth bore at ${ratedPsi} psi`,
    use,
    make: { kind: 'smooth-bore', tipIn, ratedPsi },
    origin: pressures,
  };
}

function fog(ratedGpm: number, ratedPsi: number, use: Nozzle['use'] = 'hand line'): NozzleEntry {
  return {
    id: `fog-${ratedGpm}-${ratedPsi}`,
    label: `${ratedGpm} gpm fog at ${ratedPsi} psi`,
    use,
    make: { kind: 'fog', ratedGpm, ratedPsi },
    origin: ratedPsi === 100 ? pressures : lowPressure,
  };
}

/** Nozzles to pick from; each can be changed after. */
export const nozzleCatalogue: readonly NozzleEntry[] = [
  ...handLineTipsIn.map((tip) => smoothBore(tip, 'hand line')),
  fog(95, 100),
  fog(125, 100),
  fog(150, 100),
  fog(150, 75),
  fog(150, 50),
  fog(250, 100),
  {
    id: 'selectable-30-125',
    label: '30 to 125 gpm selectable at 100 psi',
    use: 'hand line',
    make: { kind: 'selectable', settingsGpm: [30, 60, 95, 125], selectedGpm: 125, ratedPsi: 100 },
    origin: typical,
  },
  {
    id: 'automatic-70-200',
    label: '70 to 200 gpm automatic at 100 psi',
    use: 'hand line',
    make: { kind: 'automatic', ratedPsi: 100, leastGpm: 70, greatestGpm: 200 },
    origin: typical,
  },
  ...masterStreamTipsIn.map((tip) => smoothBore(tip, 'master stream')),
  fog(500, 100, 'master stream'),
  fog(1000, 100, 'master stream'),
  {
    id: 'automatic-250-1000',
    label: '250 to 1,000 gpm automatic master stream at 100 psi',
    use: 'master stream',
    make: { kind: 'automatic', ratedPsi: 100, leastGpm: 250, greatestGpm: 1000 },
    origin: typical,
  },
];
