/** Choosing the supply: the ways to bring a demand to a scene, in order, and what can befall them. */

export { type Adjustments, adjusted, asTheyCome, rankingOf } from './adjustments.ts';
export {
  type Asked,
  askedOf,
  askedText,
  fireLinePdpRange,
  marginShareRange,
  shareText,
} from './asked.ts';
export { boostOfWay } from './boost-of-way.ts';
export type { CancelSignal } from './cancel.ts';
export type * from './choice.ts';
export { type ChooseOptions, chooseSupply } from './choose-supply.ts';
export { fireLineOrigin, firePumpGpm, usualFireLinePdpPsi } from './fire-pumps.ts';
export type { GroundLine } from './ground.ts';
export { laidTexts } from './laid-texts.ts';
export { mishaps } from './mishaps.ts';
export { marginWantedGpm, usualMarginShare, usualRanking } from './rank.ts';
export { alikeText, otherMainsText, rankingText } from './ranking-text.ts';
export {
  type RelayHose,
  type RelayPlan,
  type RelayQuestion,
  type RelayStation,
  relayPlan,
} from './relay-plan.ts';
export type * from './situation.ts';
export { type TaskTimes, usualTaskTimes } from './task-times.ts';
export { type BoostQuestion, whenToBoost } from './when-to-boost.ts';
