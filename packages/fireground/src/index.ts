/** The trade: units, equipment, plans, patterns, and the questions asked of a plan. */

// Questions asked of a plan
export {
  NetworkError,
  type NetworkErrorCode,
  QuantityError,
  type QuantityProblem,
} from '@plugside/hydraulics';
// Catalogue: equipment, its defaults and where they come from
export type { LossChoice, LossEntry } from './catalogue/appliances.ts';
export {
  applianceLosses,
  assistValveLosses,
  hydrantLosses,
  rigLosses,
  usualSideOutlets,
} from './catalogue/appliances.ts';
export type { CoefficientChoice, HoseEntry } from './catalogue/hose.ts';
export { coefficientFor, hoseCatalogue, hoseVolumeGal } from './catalogue/hose.ts';
export { type HoseSections, sectionsOf, wholeSectionsFt } from './catalogue/hose-sections.ts';
export type { PlanLimits } from './catalogue/limits.ts';
export {
  defaultLimitOrigins,
  defaultLimits,
  hosePressureLimit,
  limitsFor,
} from './catalogue/limits.ts';
export type { NozzleEntry, NozzleMake } from './catalogue/nozzles.ts';
export {
  handLineTipsIn,
  masterStreamTipsIn,
  nozzleCatalogue,
  nozzleK,
  nozzleRatedGpm,
} from './catalogue/nozzles.ts';
export {
  capabilityFor,
  pumpRatingsGpm,
  usualDischarges,
  usualIntakes,
  usualRating,
} from './catalogue/pumps.ts';
// Demand: needed fire flow by the public methods, and the lines in use
export * from './demand/index.ts';
// Draft: a pump at the water, how long a pond lasts, what a stream carries
export * from './draft/index.ts';
// Field tests: hydrant flow tests, pump tests, hose tests, the quick estimate at the panel
export * from './field-tests/index.ts';
export { checkLimits } from './limits/check-limits.ts';
// The network behind a plan, for those who want to solve it themselves
export {
  addAppliance,
  addDraftSource,
  addHydrant,
  addNode,
  addSharedMain,
  type Draft,
  pumpLinkOf,
  tankLoss,
} from './network/pieces-to-links.ts';
export { type Part, type PlanNetwork, planNetwork } from './network/plan-network.ts';
export { type SharedMain, sharedMains } from './network/shared-mains.ts';
// Patterns: whole plans from a few options, and lines to add to one
export type { AttackLineOptions } from './patterns/attack-lines.ts';
export { addAttackLines } from './patterns/attack-lines.ts';
export type { BoostedAtHydrantOptions, BoosterOptions } from './patterns/boosted-at-hydrant.ts';
export { boostedAtHydrant } from './patterns/boosted-at-hydrant.ts';
export type { BranchedLinesOptions } from './patterns/branched-lines.ts';
export { addManifoldLines, addWyedLines } from './patterns/branched-lines.ts';
export type { DraftSupplyOptions } from './patterns/draft-supply.ts';
export { draftSupply } from './patterns/draft-supply.ts';
export type { DualLinesOptions } from './patterns/dual-lines.ts';
export { dualLines } from './patterns/dual-lines.ts';
export type { SprinklerOptions, StandpipeOptions } from './patterns/fixed-systems.ts';
export { sprinklerSupply, standpipeSupply } from './patterns/fixed-systems.ts';
export type { ForwardLayOptions } from './patterns/forward-lay.ts';
export { forwardLay } from './patterns/forward-lay.ts';
export type { LayOptions } from './patterns/lay.ts';
export type { MasterStreamOptions } from './patterns/master-stream.ts';
export { addMasterStream } from './patterns/master-stream.ts';
export type { Pattern, PatternOptions } from './patterns/pattern-list.ts';
export { patternList } from './patterns/pattern-list.ts';
export * from './patterns/pieces.ts';
export type { RelayOptions } from './patterns/relay.ts';
export { relay } from './patterns/relay.ts';
export type { ReverseLayOptions } from './patterns/reverse-lay.ts';
export { reverseLay } from './patterns/reverse-lay.ts';
export type { SideSuctionLine } from './patterns/side-suction-lines.ts';
export { sideSuctionLines } from './patterns/side-suction-lines.ts';
export type { HydrantLay, TwoHydrantsOptions } from './patterns/two-hydrants.ts';
export { twoHydrants } from './patterns/two-hydrants.ts';
// Plan: the model, its ports, its checks, its written form
export { checkPlan } from './plan/check.ts';
export type { PlanIssue, ReadIssue } from './plan/issue.ts';
export type * from './plan/plan.ts';
export type { Piece, PieceKind, Port, PortDirection } from './plan/ports.ts';
export {
  describeLine,
  freePortsOf,
  kindNames,
  kindOf,
  nameOf,
  occupantsOf,
  pieceOf,
  piecesOf,
  portOf,
  portsOf,
  splitPortRef,
} from './plan/ports.ts';
export type { ReadNotice, ReadOptions, ReadPlan } from './plan/read-plan.ts';
export { readPlan } from './plan/read-plan.ts';
export type { PlanFormat } from './plan/write-plan.ts';
export { writePlan } from './plan/write-plan.ts';
export { planJsonSchema } from './plan/written/json-schema.ts';
export { type FieldRange, ranges as fieldRanges } from './plan/written/ranges.ts';
export { formatVersion } from './plan/written/schema.ts';
// Profile: pressure against distance, and its drawing
export type {
  PressureProfile,
  ProfilePath,
  ProfileSpan,
  ProfileStation,
} from './profile/profile.ts';
export { profileOf } from './profile/profile-of.ts';
export type { ProfileSvgOptions } from './profile/svg/options.ts';
export { profileSvg } from './profile/svg/profile-svg.ts';
export type * from './questions/answers.ts';
export { attackSettings, demandOf } from './questions/attack-settings.ts';
export { coefficientBand, fiveInchSpread } from './questions/coefficient-band.ts';
export { compareBoost } from './questions/compare-boost.ts';
export { improvements } from './questions/improvements.ts';
export { mainLay } from './questions/main-lay.ts';
export { apartPlan, mainRange, mainRangeNow, withMainRange } from './questions/main-range.ts';
export { type MostWaterOptions, mostWater } from './questions/most-water.ts';
export { settingsFor } from './questions/settings-for.ts';
export { supplyCurves } from './questions/supply-curves.ts';
export { type SweepOptions, type SweepRow, type SweptValue, sweep } from './questions/sweep.ts';
export { isBoosted, unassistedPlan } from './questions/unassisted.ts';
export { solveNow, whatNow } from './questions/what-now.ts';
// Shuttle: tenders between fill site and portable tank
export * from './shuttle/index.ts';
// Choosing the supply
export * from './supply/index.ts';
// Timeline: tank water against supply
export * from './timeline/index.ts';

// Units and sizes
export type { FormatOptions, FormattedQuantity } from './units/format-quantity.ts';
export { formatNumber, formatQuantity } from './units/format-quantity.ts';
export { formatFraction, parseFraction } from './units/fractions.ts';
export { formatHoseSize, hoseSizes, parseHoseSize } from './units/hose-size.ts';
export type { ParsedQuantity } from './units/parse-quantity.ts';
export { parseQuantity } from './units/parse-quantity.ts';
export type { Quantity, UnitSystem } from './units/quantities.ts';
export { fromInside, quantities, toInside } from './units/quantities.ts';
// Words: answers as sentences, cautions, and the line that ends them
export { improvementSentence, limitSentence, limitWords } from './words/answer.ts';
export { clock } from './words/clock.ts';
export { laidText, sectionsText } from './words/laid.ts';
export { type MishapVerdict, mishapVerdict } from './words/mishap-verdict.ts';
export { deferral } from './words/notices.ts';
