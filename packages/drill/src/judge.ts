/** A drill held to its benchmarks. */
import { defaultBenchmarks } from './defaults.ts';
import { forerunnersOf } from './played-by.ts';
import type { Benchmarks, DrillScene } from './scene.ts';
import { type DrillState, TICKS_PER_S } from './state.ts';
import type { Moment, TallyKind } from './tally-shape.ts';

export type CriterionKey =
  | 'water interrupted'
  | 'intake'
  | 'main'
  | 'hose'
  | 'surge'
  | 'nozzle swing'
  | 'time to boost'
  | 'order'
  | 'connections'
  | 'messages';

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
  met: boolean;
  /** The worst of it, in its own unit: psi, or gpm at a nozzle. */
  worst?: { value: number; unit: 'psi' | 'gpm'; piece: string };
  /** When, by ticks; the first 100. */
  moments: { fromTick: number; toTick: number; piece: string; note?: string }[];
}

/** What of the benchmarks each criterion is held to. */
const benchmarksOf: Record<CriterionKey, readonly (keyof Benchmarks)[]> = {
  'water interrupted': ['interruptedS', 'nozzleSuppliedShare'],
  intake: ['intakePsi', 'intakeUnderS'],
  main: ['mainPsi', 'mainUnderS'],
  hose: ['hoseOverS'],
  surge: ['surgesOverLimit'],
  'nozzle swing': ['nozzleSwingPsi', 'swingWindowS'],
  'time to boost': ['boostWithinS'],
  order: ['stepsOutOfOrder'],
  connections: ['wrongConnections'],
  messages: ['messagesMissed'],
};

type Held = Omit<Judgement, 'benchmarkFrom'>;

/**
 * Judges a drill as it stands: each criterion with its value, the benchmark, whether it is met, and the
 * moments to look at again. Benchmarks are the department's own; where it gave none, ours, marked as such
 * beside them.
 */
export function judge(scene: DrillScene, state: DrillState): Judgement[] {
  return held(scene, state).map((one) => ({
    ...one,
    benchmarkFrom: benchmarksOf[one.key].every(
      (key) => (scene.benchmarks[key] ?? defaultBenchmarks[key]) === defaultBenchmarks[key],
    )
      ? 'default'
      : 'department',
  }));
}

function held(scene: DrillScene, state: DrillState): Held[] {
  const { benchmarks, expectedMessages } = scene;
  const { tally } = state;
  const timed = (
    key: CriterionKey,
    kind: TallyKind,
    label: string,
    benchmark: number,
    unit: 'psi' | 'gpm',
    worse: (a: number, b: number) => boolean,
  ): Held => {
    const line = tally.lines[kind];
    const value = line.ticks / TICKS_PER_S;
    const judged: Held = {
      key,
      label,
      value,
      unit: 's',
      benchmark,
      met: value <= benchmark,
      moments: line.moments.map(({ fromTick, toTick, piece }) => ({
        fromTick,
        toTick: toTick ?? state.tick,
        piece,
      })),
    };
    let worst: Moment | undefined;
    for (const one of line.moments) if (!worst || worse(one.worst, worst.worst)) worst = one;
    if (worst) judged.worst = { value: worst.worst, unit, piece: worst.piece };
    return judged;
  };
  const counted = (
    key: CriterionKey,
    label: string,
    benchmark: number,
    moments: Held['moments'],
  ): Held => ({
    key,
    label,
    value: moments.length,
    unit: 'count',
    benchmark,
    met: moments.length <= benchmark,
    moments,
  });
  const under = (a: number, b: number) => a < b;
  const over = (a: number, b: number) => a > b;
  const boostS = tally.boostTick < 0 ? undefined : tally.boostTick / TICKS_PER_S;
  const boostAt = tally.boostTick;
  const { boostWithinS } = benchmarks;
  const missed = expectedMessages.filter(
    ({ role, preset }) => !state.said.some((one) => one.role === role && one.preset === preset),
  );
  const surged = counted(
    'surge',
    'Valves shut so fast that a hose could pass its limit',
    benchmarks.surgesOverLimit ?? 0,
    (tally.surges ?? []).map(({ tick, hose, valve }) => ({
      fromTick: tick,
      toTick: tick,
      piece: hose,
      note: valve,
    })),
  );
  for (const { psi, hose } of tally.surges ?? []) {
    if (surged.worst && surged.worst.value >= psi) continue;
    surged.worst = { value: psi, unit: 'psi', piece: hose };
  }
  return [
    timed(
      'water interrupted',
      'nozzle interrupted',
      'Water interrupted at an open nozzle',
      benchmarks.interruptedS,
      'gpm',
      under,
    ),
    timed(
      'intake',
      'intake under',
      `An intake under ${benchmarks.intakePsi} psi`,
      benchmarks.intakeUnderS,
      'psi',
      under,
    ),
    timed(
      'main',
      'main under',
      `The main under ${benchmarks.mainPsi} psi`,
      benchmarks.mainUnderS,
      'psi',
      under,
    ),
    timed('hose', 'hose over', 'A hose over its limit', benchmarks.hoseOverS, 'psi', over),
    ...(scene.settings.waveFtS === undefined ? [] : [surged]),
    timed(
      'nozzle swing',
      'nozzle swing',
      `Pressure at a nozzle swinging by more than ${benchmarks.nozzleSwingPsi} psi`,
      0,
      'psi',
      over,
    ),
    {
      key: 'time to boost',
      label: 'Time to boost',
      value: boostS,
      unit: 's',
      benchmark: boostWithinS,
      met: boostWithinS === undefined || (boostS !== undefined && boostS <= boostWithinS),
      moments: boostAt < 0 ? [] : [{ fromTick: boostAt, toTick: boostAt, piece: scene.plan.scene }],
    },
    counted('order', 'Steps out of order', benchmarks.stepsOutOfOrder, outOfOrder(scene, state)),
    counted(
      'connections',
      'Wrong connections',
      benchmarks.wrongConnections,
      tally.wrongConnections.map(({ tick, hose, port }) => ({
        fromTick: tick,
        toTick: tick,
        piece: hose,
        note: port,
      })),
    ),
    counted(
      'messages',
      'Messages missed',
      benchmarks.messagesMissed,
      missed.map(({ role, preset }) => ({
        fromTick: state.tick,
        toTick: state.tick,
        piece: role,
        note: preset,
      })),
    ),
  ];
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
