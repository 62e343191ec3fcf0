/** From a drill that has ended to its report. */
import {
  type DrillLog,
  type DrillScene,
  evolutionOf,
  inUnits,
  type Judgement,
  judge,
  judgedName,
  largeHoseCautions,
  momentWords,
  TICKS_PER_S,
  type WordUnits,
} from '@plugside/drill';
import { deferral, type UnitSystem } from '@plugside/fireground';
import { figuresIn } from '../sheet/figures.ts';
import type { DrillReport, ReportCriterion } from './data.ts';
import { entriesOf, faultsOf } from './entries.ts';
import { readingsOf } from './readings.ts';

/** A drill as it is kept. */
export interface DrillReportRequest {
  title: string;
  /** As typed: "B shift". */
  crew?: string;
  /** ISO 8601, UTC. */
  startedAt: string;
  scene: DrillScene;
  /** [whole number 0 … 2³²−1] */
  seed: number;
  log: DrillLog;
  /** Where it ended [ticks]. */
  tick: number;
  /** As it was judged when it ended; judged from the log where left out or empty. */
  result?: readonly Judgement[];
  units?: UnitSystem;
}

/**
 * A drill's report: played again from its log as the replay on a screen is, and judged by the same
 * judge. Takes about a second for half an hour of drill, others having their turn meanwhile.
 * @throws RangeError for a seed out of range; the signal's reason where it aborts
 */
export async function drillReportFor(
  request: DrillReportRequest,
  signal?: AbortSignal,
): Promise<DrillReport> {
  const { title, crew, startedAt, scene, seed, log, tick, result } = request;
  const { units: system, full: text } = figuresIn(request.units);
  const units: WordUnits = { system, text };
  const { state, timesS, panels } = await readingsOf({ scene, seed, log, tick }, signal);
  const judged = result && result.length > 0 ? result : judge(scene, state);
  const evolution = scene.evolution === undefined ? undefined : evolutionOf(scene.evolution);
  const cautions = evolution?.cautions ?? largeHoseCautions;
  return {
    title,
    drilled: evolution
      ? { as: 'evolution', name: evolution.title }
      : { as: 'plan', name: scene.plan.title },
    // An evolution that ships has hydrants and engines of nobody.
    invented: scene.plan.invented || evolution !== undefined,
    ...(crew !== undefined && { crew }),
    startedAt,
    lastedS: tick / TICKS_PER_S,
    beganWith: scene.start,
    seed,
    score: judged.map((one) => criterionOf(scene, one, units)),
    timesS,
    panels,
    entries: entriesOf(scene, log, units),
    faults: faultsOf(scene, log, tick),
    // Every page ends with the deferral.
    cautions: cautions.filter((one) => one !== deferral).map((one) => inUnits(one, units)),
  };
}

function criterionOf(scene: DrillScene, judged: Judgement, units: WordUnits): ReportCriterion {
  const { label, value, unit, benchmark, benchmarkFrom, met, worst, moments } = judged;
  return {
    label: inUnits(label, units),
    value,
    unit,
    benchmark,
    benchmarkFrom,
    stands: benchmark === undefined ? 'not judged' : met ? 'met' : 'missed',
    ...(worst && {
      worst: `${units.text(worst.value, worst.unit === 'psi' ? 'pressure' : 'flow')}, ${judgedName(scene, worst.piece)}`,
    }),
    moments: moments.map(({ fromTick, toTick, piece, note }) => ({
      // What was never said has no moment.
      ...(judged.key !== 'messages' && {
        fromS: fromTick / TICKS_PER_S,
        toS: toTick / TICKS_PER_S,
      }),
      what: judged.key === 'time to boost' ? '' : momentWords(scene, judged, piece, note, units),
    })),
  };
}
