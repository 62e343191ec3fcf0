/** A drill held to its benchmarks. */
import type { CriterionKey } from './criteria.ts';
import { defaultBenchmarks } from './defaults.ts';
import type { DrillStep } from './drill-step.ts';
import { duringWords, ticksInFaults, unionTicks } from './during-faults.ts';
import { hasSaid } from './radio.ts';
import { hasRules } from './rules.ts';
import type { Benchmarks, DrillScene } from './scene.ts';
import { type DrillState, TICKS_PER_S } from './state.ts';
import { forerunnersOf, stepStands, wasDone } from './steps-standing.ts';
import type { Moment, Occasion, TallyKind } from './tally-shape.ts';

export type { CriterionKey } from './criteria.ts';

export interface Judgement {
  key: CriterionKey;
  /** For people. */
  label: string;
  /** What came of it; undefined: it never came about. */
  value: number | undefined;
  unit: 's' | 'count';
  /** What it may be at most; undefined: not judged. */
  benchmark: number | undefined;
  /** Whose benchmark: the department's own, or the one that stands where it has none (ours). */
  benchmarkFrom: 'department' | 'default';
  /** Where it was not judged, true. */
  met: boolean;
  /** Why it could not be judged: there was no occasion. Left out: it was. */
  notJudged?: string;
  /** The instructor's own judgement, which `met` is then, with the reason; and what was counted. */
  overruled?: { reason: string; counted: boolean };
  /** The worst of it, in its own unit: psi, or gpm at a nozzle. */
  worst?: { value: number; unit: 'psi' | 'gpm'; piece: string };
  /** Time by piece where more than one stood wrong [s]: together they may be more than the value. */
  pieces?: { piece: string; s: number }[];
  /** Of the value, the time during which something was wrong by the instructor's hand [s]. */
  duringFaultsS?: number;
  /** When, by ticks; the first 100. `during`: what was wrong then by the instructor's hand. */
  moments: { fromTick: number; toTick: number; piece: string; note?: string; during?: string }[];
}

/** What of the benchmarks each criterion is held to. */
const benchmarksOf: Record<CriterionKey, readonly (keyof Benchmarks)[]> = {
  'water interrupted': ['interruptedS', 'nozzleSuppliedShare'],
  intake: ['intakePsi', 'intakeUnderS'],
  main: ['mainPsi', 'mainUnderS'],
  hose: ['hoseOverS'],
  surge: ['surgesOverLimit'],
  opening: ['openedFast', 'hydrantOpenS', 'handleOpenS', 'largeOpenS', 'lineOpenS'],
  'nozzle swing': ['nozzleSwingPsi', 'swingWindowS'],
  'time to boost': ['boostWithinS'],
  'extra line': ['extraLineS', 'nozzleSuppliedShare'],
  steps: ['stepsUndone'],
  order: ['stepsOutOfOrder'],
  connections: ['wrongConnections'],
  messages: ['messagesMissed'],
  'unsafe acts': ['unsafeActs'],
  marks: [],
};

type Held = Omit<Judgement, 'benchmarkFrom'>;

/**
 * Judges a drill as it stands: each criterion with its value, the benchmark, whether it is met, and the
 * moments to look at again. Benchmarks are the department's own; where it gave none, ours, marked as such
 * beside them. One that there was no occasion for says so; one that the instructor judged stands as judged.
 */
export function judge(scene: DrillScene, state: DrillState): Judgement[] {
  const { overrules = [] } = state.tally;
  return held(scene, state).map((one): Judgement => {
    const judged: Judgement = {
      ...one,
      benchmarkFrom: benchmarksOf[one.key].every(
        (key) => (scene.benchmarks[key] ?? defaultBenchmarks[key]) === defaultBenchmarks[key],
      )
        ? 'default'
        : 'department',
    };
    const overruled = overrules.find(({ criterion }) => criterion === one.key);
    if (!overruled) return judged;
    const { notJudged: _, ...rest } = judged;
    const { met, reason } = overruled;
    return { ...rest, met, overruled: { reason, counted: judged.met } };
  });
}

/** Whether a criterion counts in a score: there was a benchmark, and occasion to hold it to that. */
export function isJudged(judged: Judgement): boolean {
  if (judged.overruled) return true;
  return judged.benchmark !== undefined && judged.notJudged === undefined;
}

const under = (a: number, b: number) => a < b;
const over = (a: number, b: number) => a > b;

function held(scene: DrillScene, state: DrillState): Held[] {
  const { benchmarks } = scene;
  const { tally } = state;
  const today = hasRules(scene, 2);
  const isMissing = (what: Occasion) =>
    tally.occasions !== undefined && !tally.occasions.includes(what);
  const spans = tally.faults ?? [];
  const isOmission = (key: CriterionKey) =>
    hasRules(scene, 3) && (key === 'steps' || key === 'messages');
  const during = (moment: Held['moments'][number]): Held['moments'][number] => {
    const words = duringWords(scene, spans, moment);
    return words === undefined ? moment : { ...moment, during: words };
  };
  const timed = (
    key: CriterionKey,
    kind: TallyKind,
    label: string,
    benchmark: number,
    unit: 'psi' | 'gpm',
    worse: (a: number, b: number) => boolean,
    notJudged: string,
  ): Held => {
    const line = tally.lines[kind];
    const moments = line.moments.map(({ fromTick, toTick, piece }) => ({
      fromTick,
      toTick: toTick ?? state.tick,
      piece,
    }));
    // Of before it was counted: as far as the moments tell.
    const ticks = line.anyTicks ?? Math.min(line.ticks, unionTicks(moments));
    const value = ticks / TICKS_PER_S;
    const judged: Held = {
      key,
      label,
      value,
      unit: 's',
      benchmark,
      met: value <= benchmark,
      moments: moments.map(during),
    };
    if (ticks === 0 && isMissing(kind)) judged.notJudged = notJudged;
    let worst: Moment | undefined;
    for (const one of line.moments) if (!worst || worse(one.worst, worst.worst)) worst = one;
    if (worst) judged.worst = { value: worst.worst, unit, piece: worst.piece };
    const pieces = Object.entries(line.byPiece ?? {});
    if (pieces.length > 1)
      judged.pieces = pieces.map(([piece, its]) => ({ piece, s: its / TICKS_PER_S }));
    const inFaults = Math.min(ticks, ticksInFaults(moments, spans, state.tick));
    if (inFaults > 0) judged.duringFaultsS = inFaults / TICKS_PER_S;
    return judged;
  };
  const counted = (
    key: CriterionKey,
    label: string,
    benchmark: number,
    moments: Held['moments'],
    notJudged?: string | false,
  ): Held => ({
    key,
    label,
    value: moments.length,
    unit: 'count',
    benchmark,
    met: moments.length <= benchmark,
    // What was left out was left out all along: no fault that there is at the end excuses it.
    moments: isOmission(key) ? moments : moments.map(during),
    ...(moments.length === 0 && notJudged && { notJudged }),
  });
  const at = (tick: number, piece: string, note?: string): Held['moments'][number] => ({
    fromTick: tick,
    toTick: tick,
    piece,
    ...(note !== undefined && { note }),
  });
  const surged = counted(
    'surge',
    'Valves shut so fast that a hose could pass its limit',
    benchmarks.surgesOverLimit ?? 0,
    (tally.surges ?? []).map(({ tick, hose, valve }) => at(tick, hose, valve)),
    hasRules(scene, 3)
      ? isMissing('shutting') && 'No valve was shut on moving water.'
      : isMissing('flow') && 'No water flowed.',
  );
  for (const { psi, hose } of tally.surges ?? []) {
    if (surged.worst && surged.worst.value >= psi) continue;
    surged.worst = { value: psi, unit: 'psi', piece: hose };
  }
  const openedFast = counted(
    'opening',
    'Valves opened so fast that hose fills with a rush',
    benchmarks.openedFast ?? 0,
    (tally.openedFast ?? []).map(({ tick, valve, hose }) => at(tick, hose, valve)),
    isMissing('opening') && 'No valve was opened onto empty hose or a pump.',
  );
  const noNozzle = 'No nozzle had water.';
  const judged = [
    timed(
      'water interrupted',
      'nozzle interrupted',
      'Water interrupted at an open nozzle',
      benchmarks.interruptedS,
      'gpm',
      under,
      noNozzle,
    ),
    timed(
      'intake',
      'intake under',
      `An intake under ${benchmarks.intakePsi} psi`,
      benchmarks.intakeUnderS,
      'psi',
      under,
      'No pump flowed on hose.',
    ),
    timed(
      'main',
      'main under',
      `The main under ${benchmarks.mainPsi} psi`,
      benchmarks.mainUnderS,
      'psi',
      under,
      'No hydrant flowed.',
    ),
    timed(
      'hose',
      'hose over',
      'A hose over its limit',
      benchmarks.hoseOverS,
      'psi',
      over,
      'No hose had pressure.',
    ),
    ...(scene.settings.waveFtS === undefined ? [] : [surged]),
    ...(hasRules(scene, 3) ? [openedFast] : []),
    timed(
      'nozzle swing',
      'nozzle swing',
      `Pressure at a nozzle swinging by more than ${benchmarks.nozzleSwingPsi} psi`,
      0,
      'psi',
      over,
      noNozzle,
    ),
    timeToBoost(scene, state),
    ...extraLine(scene, state),
    steps(scene, state, counted, at),
    counted(
      'order',
      'Steps out of order',
      benchmarks.stepsOutOfOrder,
      outOfOrder(scene, state),
      today && tally.stepTicks.length === 0 && 'No step was done.',
    ),
    counted(
      'connections',
      'Wrong connections',
      benchmarks.wrongConnections,
      tally.wrongConnections.map(({ tick, hose, port }) => at(tick, hose, port)),
      isMissing('coupling') && 'Nothing was coupled.',
    ),
    counted(
      'messages',
      'Messages missed',
      benchmarks.messagesMissed,
      missed(scene, state).map(({ role, preset }) => at(state.tick, role, preset)),
      today && scene.expectedMessages.length === 0 && 'No message was due.',
    ),
  ];
  if (today) {
    const isIdle = isMissing(hasRules(scene, 3) ? 'worked' : 'flow');
    const nothing = isIdle && isMissing('coupling') && 'Nothing was done.';
    const acts = (tally.unsafe ?? []).map(({ tick, piece, act }) => at(tick, piece, act));
    judged.push(counted('unsafe acts', 'Unsafe acts', benchmarks.unsafeActs ?? 0, acts, nothing));
  }
  const { marks = [] } = tally;
  if (marks.length > 0) judged.push(marked(marks, at));
  return judged;
}

type At = (tick: number, piece: string, note?: string) => Held['moments'][number];

/** Good marks stand among the moments; faults alone are counted. */
function marked(marks: NonNullable<DrillState['tally']['marks']>, at: At): Held {
  const value = marks.filter(({ verdict }) => verdict === 'fault').length;
  return {
    key: 'marks',
    label: 'Faults marked by the instructor',
    value,
    unit: 'count',
    benchmark: 0,
    met: value === 0,
    moments: marks.map(({ tick, verdict, text, about }) =>
      at(tick, about ?? '', `${verdict === 'good' ? 'Good' : 'Fault'}: ${text}`),
    ),
  };
}

function timeToBoost(scene: DrillScene, { tally }: DrillState): Held {
  const { boostTick } = tally;
  const benchmark = scene.benchmarks.boostWithinS;
  const fromTick = tally.boost?.fromTick ?? 0;
  const value = boostTick < 0 ? undefined : (boostTick - fromTick) / TICKS_PER_S;
  const isDrilled = !hasRules(scene, 2) || scene.boost !== undefined;
  return {
    key: 'time to boost',
    label: 'Time to boost',
    value,
    unit: 's',
    benchmark,
    met: !isDrilled || benchmark === undefined || (value !== undefined && value <= benchmark),
    moments:
      boostTick < 0
        ? []
        : [{ fromTick: boostTick, toTick: boostTick, piece: scene.boost?.rig ?? scene.plan.scene }],
    ...(!isDrilled && { notJudged: 'No boost is drilled here.' }),
  };
}

/** From the order for an extra line to its water: the slowest of them. */
function extraLine(scene: DrillScene, { tally, tick }: DrillState): Held[] {
  const { called = [] } = tally;
  if (called.length === 0) return [];
  const benchmark = scene.benchmarks.extraLineS ?? defaultBenchmarks.extraLineS!;
  const waits = called.filter(({ flowedTick }) => flowedTick === undefined);
  const times = called.map((one) => ((one.flowedTick ?? tick) - one.tick) / TICKS_PER_S);
  const slowest = Math.max(...times);
  const isOpen = waits.length > 0 && slowest <= benchmark;
  return [
    {
      key: 'extra line',
      label: 'From the order for an extra line to its water',
      value: waits.length > 0 ? undefined : slowest,
      unit: 's',
      benchmark,
      met: isOpen || (waits.length === 0 && slowest <= benchmark),
      moments: called.map((one) => ({
        fromTick: one.tick,
        toTick: one.flowedTick ?? tick,
        piece: one.nozzle,
      })),
      ...(isOpen && { notJudged: 'The drill ended before its time was up.' }),
    },
  ];
}

function steps(
  scene: DrillScene,
  state: DrillState,
  counted: (
    key: CriterionKey,
    label: string,
    benchmark: number,
    moments: Held['moments'],
    notJudged?: string | false,
  ) => Held,
  at: At,
): Held {
  // An orderly shutdown undoes what was done, and was ordered: what stood then is done.
  const stood = state.tally.shutDown?.stood ?? [];
  const open = scene.steps.filter(
    (step) => !stood.includes(step.id) && !stepStands(scene, state, step),
  );
  const all = scene.steps.length;
  return counted(
    'steps',
    all === 0 ? 'Steps left undone' : `Steps left undone, of ${all}`,
    scene.benchmarks.stepsUndone ?? 0,
    open.map((step) => at(state.tick, step.id, wasDone(state, step) ? 'undone again' : undefined)),
    all === 0 && 'There was no script.',
  );
}

/** Whether a message tells of a step that has been done, and was given before it alone. */
function isTooEarly(
  scene: DrillScene,
  state: DrillState,
  role: DrillStep['role'],
  preset: string,
): boolean {
  if (!hasRules(scene, 3)) return false;
  return scene.steps.some((step) => {
    const { done } = step;
    if (done.is !== 'said' || done.since === undefined) return false;
    if (done.role !== role || done.preset !== preset || wasDone(state, step)) return false;
    return state.tally.stepTicks.some((one) => one.step === done.since);
  });
}

function missed(scene: DrillScene, state: DrillState): DrillScene['expectedMessages'] {
  const { said } = state;
  const today = hasRules(scene, 2);
  return scene.expectedMessages.filter(({ role, preset }) =>
    isTooEarly(scene, state, role, preset)
      ? true
      : today
        ? !hasSaid(said, role, preset)
        : !said.some((one) => one.role === role && one.preset === preset),
  );
}

/** Steps that were done before one that should come first. */
function outOfOrder(scene: DrillScene, state: DrillState): Judgement['moments'] {
  const tickOf = (id: string) =>
    state.tally.stepTicks.find((one) => one.step === id)?.tick ?? Number.POSITIVE_INFINITY;
  return scene.steps.flatMap((step) => {
    const tick = tickOf(step.id);
    if (tick === Number.POSITIVE_INFINITY) return [];
    const before = forerunnersOf(scene, step).find((id) => tickOf(id) > tick);
    if (before === undefined) return [];
    return [{ fromTick: tick, toTick: tick, piece: step.id, note: before }];
  });
}
