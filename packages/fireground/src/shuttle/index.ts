/** Tender shuttles: one tender's round, what a mix keeps up, and a run played out at the portable tank. */

export {
  type ShuttleValues,
  shuttleDefaultOrigins,
  shuttleDefaults,
} from './shuttle-defaults.ts';
export { type Shuttle, type ShuttleFlow, shuttleFlow, tendersNeeded } from './shuttle-flow.ts';
export type {
  ShuttleEvent,
  ShuttleEventKind,
  ShuttleQueue,
  ShuttleRun,
  ShuttleRunOptions,
} from './shuttle-run.ts';
export { simulateShuttle } from './simulate-shuttle.ts';
export { shuttleTravelMin, tenderRateGpm } from './tender-rate.ts';
export {
  type FillSite,
  type ShuttleRoad,
  type ShuttleSite,
  type Tender,
  type TenderTrip,
  tenderTrip,
} from './tender-trip.ts';
