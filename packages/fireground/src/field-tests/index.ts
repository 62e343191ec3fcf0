/** Field tests become curves: hydrants, pumps, hose, and the quick look at the panel. */
export {
  HYDRANT_CLASSES,
  type HydrantClass,
  hydrantClass,
  OUTLET_COEFFICIENTS,
  RATING_RESIDUAL_PSI,
} from '@plugside/hydraulics';
export { type ExponentPaper, exponentPaper } from './exponent-paper.ts';
export { findingText, type SpokenValue, type TestFinding } from './finding.ts';
export { type FlowTestResult, flowTestResult, planSupply, RETEST_YEARS } from './flow-test.ts';
export type { FlowingOutlet, FlowTestEntry } from './flow-test-entry.ts';
export {
  type FlowTestHistory,
  type FlowTrend,
  flowTestHistory,
  type HistoryEntry,
  type StepDay,
  type TestedFlow,
} from './flow-test-history.ts';
export {
  type FittedReading,
  fitCoefficient,
  type HoseFit,
  type HoseReading,
  shownC,
} from './hose-coefficient.ts';
export { BEST_PITOT_PSI, type OutletFlow, USUAL_OUTLET } from './outlet-flow.ts';
export {
  LEAST_SHARE_OF_RATING,
  type PumpCurve,
  type PumpTestEntry,
  type PumpTrendRow,
  pumpCurve,
  RATING_POINTS,
  type RatingPoint,
} from './pump-curve.ts';
export type { PumpReading, ReadingAtSpeed } from './pump-speed.ts';
export {
  type LineEstimate,
  type PanelReading,
  type QuickEstimate,
  quickEstimate,
} from './quick-estimate.ts';
export { isDatedAhead, latestTestDay } from './test-day.ts';
