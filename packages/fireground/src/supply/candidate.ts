/** Arrangements on their way to being ways: solved only as far as their rank needs. */
import type { UnitSystem } from '../units/quantities.ts';
import { arrange } from './arrange.ts';
import type { Arrangement } from './arrangement.ts';
import type { Criterion } from './choice.ts';
import type { Crew } from './crew.ts';
import { type Leg, sourceId } from './leg.ts';
import { byRank, type Ranked, rankKey } from './rank.ts';
import { type LegSolver, MET_WITHIN_GPM } from './solve-legs.ts';
import type { TaskTimes } from './task-times.ts';
import { wayTitle } from './title.ts';

export interface Candidate extends Ranked {
  arrangement: Arrangement;
  title: string;
  /** Greatest flow that its legs could bring if nothing stood in another's way [gpm]. */
  boundGpm: number;
}

export interface CandidateContext {
  crew: Crew;
  demandGpm: number;
  ranking: readonly Criterion[];
  solver: LegSolver;
  times: TaskTimes;
  units: UnitSystem;
}

/** An arrangement of some legs, not yet solved: ranked as if it just met the demand. */
export function candidateOf(
  context: CandidateContext,
  legs: readonly Leg[],
  boundGpm = Number.POSITIVE_INFINITY,
): Candidate | undefined {
  const arrangement = arrange(context.crew, legs, context.times);
  if (!arrangement) return undefined;
  const { id, time, hoseFt, rigs } = arrangement;
  const title = wayTitle(
    legs,
    arrangement.work.map(({ suction }) => suction),
    context.units,
  );
  return {
    id,
    arrangement,
    title,
    boundGpm,
    meetsDemand: true,
    time,
    rigsUsed: rigs.length,
    hoseFt,
    marginGpm: 0,
    mostGpm: context.demandGpm,
  };
}

/** The candidate with its water solved. */
export function solved(context: CandidateContext, candidate: Candidate): Candidate {
  const mostGpm = context.solver.mostGpm(candidate.arrangement, candidate.title);
  const marginGpm = mostGpm - context.demandGpm;
  return { ...candidate, mostGpm, marginGpm, meetsDemand: marginGpm >= -MET_WITHIN_GPM };
}

/**
 * The best of some candidates for each group. Where margin weighs least, cost alone orders them,
 * so that the first of a group that meets the demand ends it but for those that cost the same.
 * @param groupOf candidates of one group are variants of one way
 * @param enough groups that meet the demand before no more are looked for
 */
export function bestOfGroups(
  context: CandidateContext,
  candidates: readonly Candidate[],
  groupOf: (candidate: Candidate) => string,
  enough = Number.POSITIVE_INFINITY,
): Candidate[] {
  const order = byRank(context.ranking);
  const cheapest = [...candidates].sort(order);
  const best = new Map<string, Candidate>();
  const marginLast = context.ranking.at(-1) === 'margin' || !context.ranking.includes('margin');
  let met = 0;
  for (const candidate of cheapest) {
    const group = groupOf(candidate);
    const known = best.get(group);
    if (marginLast && known?.meetsDemand && costsMore(context, candidate, known)) continue;
    if (marginLast && !known && met >= enough) continue;
    const one = solved(context, candidate);
    if (known && order(known, one) <= 0) continue;
    if (one.meetsDemand && !known?.meetsDemand) met += 1;
    best.set(group, one);
  }
  return [...best.values()].sort(order);
}

/** Whether what a candidate costs, water left aside, ranks after another. */
function costsMore({ ranking }: CandidateContext, one: Candidate, than: Candidate): boolean {
  const cost = ranking.filter(
    (criterion) => criterion !== 'margin' && criterion !== 'meets demand',
  );
  const [first, second] = [rankKey(one, cost), rankKey(than, cost)];
  const at = first.findIndex((value, index) => value !== second[index]);
  return at >= 0 && first[at]! > second[at]!;
}

/** Kind and sources: the variants of one way differ in hose and rigs alone. */
export function kindAndSources({ arrangement }: Candidate): string {
  return [arrangement.kind, ...arrangement.legs.map(sourceId).sort()].join('|');
}

/** Leaves out what another candidate of the same sources beats or equals in everything. */
export function undominated(candidates: readonly Candidate[]): Candidate[] {
  const sourcesOf = ({ arrangement }: Candidate) => arrangement.legs.map(sourceId).sort().join('|');
  return candidates.filter(
    (one, at) =>
      !candidates.some(
        (other, index) =>
          index !== at &&
          sourcesOf(other) === sourcesOf(one) &&
          noWorse(other, one) &&
          (index < at || !noWorse(one, other)),
      ),
  );
}

/** More water than this is worth naming another way for [gpm]. */
const WORTH_GPM = 5;

function noWorse(one: Candidate, two: Candidate): boolean {
  return (
    one.mostGpm >= two.mostGpm - WORTH_GPM &&
    (one.meetsDemand || !two.meetsDemand) &&
    one.time.fullAtMin <= two.time.fullAtMin + 1e-9 &&
    one.time.waterAtMin <= two.time.waterAtMin + 1e-9 &&
    one.rigsUsed <= two.rigsUsed &&
    one.hoseFt <= two.hoseFt + 1e-9
  );
}
