/** How far each number may be set here, in inside units; the plan's own checks decide in the end. */
import { fieldRanges, fireLinePdpRange, marginShareRange } from '@plugside/fireground';
import type { EntryRange } from './quantity-entry.ts';

export const LAY_LENGTH: EntryRange = { min: 0, max: 20_000, step: { us: 25, si: 10 } };
export const HOSE_LENGTH: EntryRange = { min: 0, max: 5000, step: { us: 25, si: 5 } };
export const RISE: EntryRange = { min: -500, max: 500, step: { us: 1, si: 0.5 } };
export const STATIC: EntryRange = { min: 5, max: 250 };
export const RESIDUAL: EntryRange = { min: 0, max: 245 };
export const TEST_FLOW: EntryRange = { min: 50, max: 10_000 };
export const DEMAND: EntryRange = {
  min: fieldRanges.demand.least,
  max: fieldRanges.demand.greatest,
  step: { us: 50, si: 100 },
};
export const PDP: EntryRange = { min: 0, max: 400, step: { us: 1, si: 0.1 } };
export const RATING: EntryRange = { min: 250, max: 3000, step: { us: 250, si: 1000 } };
export const LINE_COUNT: EntryRange = { min: 1, max: 6 };
export const LIMIT_VALUE: EntryRange = { min: 0, max: 400 };
export const LOSS: EntryRange = { min: 0, max: 60 };
export const NOZZLE_RISE: EntryRange = { min: -200, max: 500, step: { us: 1, si: 0.5 } };
export const COEFFICIENT: EntryRange = { min: 0.001, max: 2000 };
export const NOZZLE_FLOW: EntryRange = { min: 5, max: 3000, step: { us: 5, si: 25 } };
export const NOZZLE_PRESSURE: EntryRange = { min: 20, max: 200, step: { us: 5, si: 0.5 } };
export const SPEED_PERCENT: EntryRange = { min: 30, max: 110 };
export const MARGIN_SHARE: EntryRange = {
  min: marginShareRange.least,
  max: marginShareRange.greatest,
};
export const FIRE_LINE_PDP: EntryRange = {
  min: fireLinePdpRange.least,
  max: fireLinePdpRange.greatest,
  step: { us: 5, si: 0.5 },
};
