/** From a drill that has ended to its report. */
import {
  amountWords,
  type DrillLog,
  type DrillScene,
  evolutionOf,
  inUnits,
  isJudged,
  type Judgement,
  judge,
  judgedName,
  largeHoseCautions,
  momentWords,
  pressureWords,
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
  const { label, value, unit, benchmark, benchmarkFrom, met, notJudged, moments } = judged;
  const detail = detailOf(scene, judged, units);
  return {
    label: inUnits(label, units),
    value,
    unit,
    benchmark,
    benchmarkFrom,
    stands: !isJudged(judged) ? 'not judged' : met ? 'met' : 'missed',
    ...(detail !== '' && { detail }),
    ...(notJudged !== undefined && { notJudged }),
    moments: moments.map(({ fromTick, toTick, piece, note, during }) => ({
      // What was never said has no moment.
      ...(judged.key !== 'messages' && {
        fromS: fromTick / TICKS_PER_S,
        toS: toTick / TICKS_PER_S,
      }),
      what: whatOf(
        judged.key === 'time to boost' ? '' : momentWords(scene, judged, piece, note, units),
        during === undefined ? undefined : inUnits(during, units),
      ),
    })),
  };
}

function whatOf(words: string, during: string | undefined): string {
  return during === undefined ? words : `${words} (during: ${during})`.trim();
}

/** The worst of it, how much of it was the instructor's doing, and the instructor's own judgement. */
function detailOf(
  scene: DrillScene,
  { worst, duringFaultsS, overruled }: Judgement,
  units: WordUnits,
): string {
  const parts: string[] = [];
  if (overruled) {
    const counted = overruled.counted ? 'met' : 'missed';
    parts.push(`by the instructor (counted: ${counted}): ${inUnits(overruled.reason, units)}`);
  }
  if (worst) {
    const read =
      worst.unit === 'psi' ? pressureWords(worst.value, units) : units.text(worst.value, 'flow');
    parts.push(`worst ${read}, ${judgedName(scene, worst.piece)}`);
  }
  if (duringFaultsS !== undefined)
    parts.push(`${amountWords(duringFaultsS, 's')} of it during what was made to go wrong`);
  return parts.join('; ');
}
