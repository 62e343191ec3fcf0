/** A live drill: pump operators, a nozzle crew and an instructor on one evolution over time. */
// biome-ignore-all assist/source/organizeImports: a table of contents, by topic

// Evolutions to drill, and their steps
export type { Condition, DrillStep } from './drill-step.ts';
export type { Evolution } from './evolutions/evolution.ts';
export { largeHoseCautions } from './evolutions/evolution.ts';
export { evolutionOf, evolutions } from './evolutions/index.ts';
export { areEqualPorts } from './equal-ports.ts';
export { holds } from './holds.ts';

// Scene: what a drill begins from
export { defaultBenchmarks, defaultSettings } from './defaults.ts';
export type { Fault, FaultKind } from './fault.ts';
export type * from './names.ts';
export type * from './scene.ts';
export { withLinesAtScene } from './lines-at-scene.ts';
export { type SceneOptions, sceneFromPlan } from './scene-from-plan.ts';
export { sceneWithHydrant } from './scene-with-hydrant.ts';
export { withSpareAttackLine } from './spare-attack-line.ts';

// Roles and actions: who may do what
export type { DrillAction, Problem, Submitted } from './action.ts';
export { mayDo } from './may-do.ts';
export { isPlainText } from './plain-text.ts';
export {
  hasSaid,
  mostRadioCharacters,
  type RadioEntry,
  type RadioMessage,
  type RadioPreset,
  type RadioPresetKey,
  radioPresets,
  radioText,
} from './radio.ts';
export { readAction } from './read-action.ts';
export {
  isRole,
  type PlayedRole,
  type Posts,
  playedRoles,
  type Role,
  relayRoles,
  roles,
} from './role.ts';
export { postOf, rolesIn } from './scene-posts.ts';

// Running: step, state, log, going back
export { createDrill, restoreDrill } from './drill.ts';
export type { DrillEvent, EventKind } from './event.ts';
export type { DrillLog, LogEntry } from './log.ts';
export { planNow } from './plan-now.ts';
export { type Keyframe, keyframeOf, replayThrough, replayTo } from './replay.ts';
export type { Drill } from './running-drill.ts';
export type * from './state.ts';
export { TICKS_PER_S } from './state.ts';
export { step } from './step.ts';

// What each role sees
export { notices, viewFor } from './view.ts';
export type * from './view-shape.ts';

// The computer as a crew, and the guide
export { type Policy, playedBy } from './played-by.ts';
export {
  allStepsDone,
  forerunnersOf,
  nextStep,
  stepStands,
  stepsStanding,
} from './steps-standing.ts';

// Judging
export { type CriterionKey, criteria } from './criteria.ts';
export { isJudged, type Judgement, judge } from './judge.ts';
export type {
  FaultSpan,
  Mark,
  Moment,
  Occasion,
  Tally,
  TallyKind,
  TallyLine,
  UnsafeAct,
  UnsafeActKind,
} from './tally-shape.ts';

// In words, the same on a screen and in print
export { actionWords, faultWords } from './words/action-words.ts';
export {
  compoundShare,
  fullVacuumInHg,
  fullVacuumKpa,
  isVacuum,
  pressureWords,
  vacuumInHg,
  zeroShare,
} from './words/compound-gauge.ts';
export { criterionWords } from './words/criterion-words.ts';
export { clockText, inUnits, type WordUnits } from './words/in-units.ts';
export { amountWords, judgedName, momentWords } from './words/judgement-words.ts';
export {
  hoseName,
  hoseWords,
  pieceName,
  portName,
  roleWords,
  valveName,
} from './words/piece-words.ts';
// A shared drill: what devices and server say to each other
export * from './room-protocol.ts';
