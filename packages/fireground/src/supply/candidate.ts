/** Arrangements on their way to being ways: solved only as far as their rank needs. */
import { availableFlowGpm } from '@plugside/hydraulics';
import { defaultLimits } from '../catalogue/limits.ts';
import type { DepartmentValues } from '../plan/plan.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { arrange, withEngines } from './arrange.ts';
import type { Arrangement } from './arrangement.ts';
import { enginesAtFire, mostEngines } from './at-the-fire.ts';
import { mayBring } from './bound.ts';
import type { Criterion } from './choice.ts';
import { covers } from './covers.ts';
import type { Crew } from './crew.ts';
import { type FireAsk, fireMostGpm } from './fire-pumps.ts';
import { type Leg, sourceId } from './leg.ts';
import { alike, byRank, meetsFully, type Ranked, rankKey } from './rank.ts';
import type { Situation } from './situation.ts';
import { type LegSolver, MET_WITHIN_GPM } from './solve-legs.ts';
import type { TaskTimes } from './task-times.ts';

export interface Candidate extends Ranked {
  arrangement: Arrangement;
  /** Of one that falls short: all variants of its way, in order of cost, and those that fell short with most of everything. */
  variants?: { all: readonly Candidate[]; greatest: readonly Candidate[] };
}

export interface CandidateContext {
  crew: Crew;
  demandGpm: number;
  /** What a way should have to spare [gpm]. */
  marginWantedGpm: number;
  /** What is asked of the pumps at the fire. */
  fire: FireAsk;
  department: DepartmentValues;
  ranking: readonly Criterion[];
  scene: Situation['scene'];
  solver: LegSolver;
  /** There are tests of several hydrants flowing together. */
  testedTogether: boolean;
  times: TaskTimes;
  units: UnitSystem;
}

/** An arrangement of some legs, not yet solved: ranked as if it just met the demand with what it should have to spare. */
export function candidateOf(
  context: CandidateContext,
  legs: readonly Leg[],
): Candidate | undefined {
  const arrangement = arrange(context.crew, legs, context.times, context.fire);
  if (!arrangement) return undefined;
  const { id, time, hoseFt, rigs } = arrangement;
  return {
    id,
    arrangement,
    meetsDemand: true,
    time,
    rigsUsed: rigs.length,
    hoseFt,
    marginGpm: 0,
    mostGpm: context.demandGpm,
  };
}

/** The candidate with its water solved, and no more engines at the fire than that water takes. */
export function solved(context: CandidateContext, candidate: Candidate): Candidate {
  const arrangement = asManned(context, candidate.arrangement);
  const { time, rigs } = arrangement;
  return {
    ...candidate,
    arrangement,
    time,
    rigsUsed: rigs.length,
    ...against(context, context.solver.mostGpm(arrangement)),
  };
}

/** The fewest engines at the fire that take what is wanted of the water, or as much of it as any number does. */
function asManned(context: CandidateContext, arrangement: Arrangement): Arrangement {
  const { crew, fire, solver, times } = context;
  const { work } = arrangement;
  const enoughGpm = Math.min(solver.broughtGpm(arrangement), fire.wantedGpm) - MET_WITHIN_GPM;
  const most = mostEngines(fire, work);
  let best: { arrangement: Arrangement; gpm: number } | undefined;
  for (let count = 1; count <= most; count++) {
    const atFire = enginesAtFire(fire, work, count);
    const one = { ...arrangement, atFire };
    const gpm = solver.mostGpm(one);
    if (!best || gpm > best.gpm + MET_WITHIN_GPM) best = { arrangement: one, gpm };
    if (best.gpm >= enoughGpm) break;
  }
  if (!best || best.arrangement.atFire.length === arrangement.atFire.length) return arrangement;
  return withEngines(crew, arrangement, best.arrangement.atFire, times);
}

/** A flow held against the demand and what should be left to spare. */
export function against(
  { demandGpm, marginWantedGpm }: Pick<CandidateContext, 'demandGpm' | 'marginWantedGpm'>,
  mostGpm: number,
): Pick<Ranked, 'mostGpm' | 'marginGpm' | 'meetsDemand' | 'littleToSpare'> {
  const marginGpm = mostGpm - demandGpm;
  const meetsDemand = marginGpm >= -MET_WITHIN_GPM;
  const littleToSpare = meetsDemand && marginGpm < marginWantedGpm - MET_WITHIN_GPM;
  return { mostGpm, marginGpm, meetsDemand, littleToSpare };
}

/**
 * The best of some candidates for each group, a group being the variants of one way. Where margin
 * weighs least, cost alone orders them, so that the first of a group that meets the demand with the
 * margin wanted ends it but for those that cost the same. Where the cheapest does not meet it, those with most of
 * everything are asked first: what they cannot do their lesser variants need not be asked.
 * @param enough groups that meet the demand with the margin wanted before no more are looked for
 */
export function bestOfGroups(
  context: CandidateContext,
  candidates: readonly Candidate[],
  groupOf: (candidate: Candidate) => string,
  enough = Number.POSITIVE_INFINITY,
): Candidate[] {
  const order = byRank(context.ranking);
  const groups = new Map<string, Candidate[]>();
  for (const candidate of [...candidates].sort(order)) {
    const group = groupOf(candidate);
    const others = groups.get(group);
    if (others) others.push(candidate);
    else groups.set(group, [candidate]);
  }
  const found: Candidate[] = [];
  let met = 0;
  for (const group of groups.values()) {
    if (met >= enough && marginLast(context)) break;
    const best = marginLast(context) ? cheapestThatDoes(context, group) : bestOf(context, group);
    if (meetsFully(best)) met += 1;
    found.push(best);
  }
  return found.sort(order);
}

/** Whether a way that meets the demand is judged by its cost before its margin. */
export function marginLast({ ranking }: CandidateContext): boolean {
  return ranking.at(-1) === 'margin' || !ranking.includes('margin');
}

function bestOf(context: CandidateContext, group: readonly Candidate[]): Candidate {
  return group.map((one) => solved(context, one)).sort(byRank(context.ranking))[0]!;
}

/** @param group in order of cost */
function cheapestThatDoes(context: CandidateContext, group: readonly Candidate[]): Candidate {
  const tried: Candidate[] = [];
  // Of no account beside those tried, by what it may bring.
  const passedOver: Candidate[] = [];
  const ask = (one: Candidate) => {
    if (mayRank(context, one, tried)) tried.push(solved(context, one));
    else passedOver.push(one);
  };
  const { demandGpm, marginWantedGpm } = context;
  const mayBringIt = (gpm: number) => group.find((one) => mayBringAll(context, one, gpm));
  const first = mayBringIt(demandGpm + marginWantedGpm) ?? mayBringIt(demandGpm);
  if (first) tried.push(solved(context, first));
  let rest = group.filter((one) => one !== first);
  if (!tried[0] || !meetsFully(tried[0])) {
    const greatest = rest.filter((one) => !rest.some((other) => hasMore(context, other, one)));
    greatest.forEach(ask);
    rest = rest.filter((one) => !greatest.includes(one));
  }
  for (const candidate of rest) {
    const found = tried.filter(meetsFully);
    if (found.some((one) => costsMore(context, candidate, one))) break;
    const short = [...tried.filter(({ meetsDemand }) => !meetsDemand), ...passedOver];
    if (short.some((one) => hasMore(context, one, candidate))) continue;
    // What has less than one with little to spare has no more: it is asked only where it costs less.
    const little = tried.filter(({ littleToSpare }) => littleToSpare);
    const noBetter =
      little.some((one) => hasMore(context, one, candidate)) &&
      (found.length > 0 || little.some((one) => costsMore(context, candidate, one)));
    if (!noBetter) ask(candidate);
  }
  const [best] = [...tried].sort(byRank(context.ranking)) as [Candidate];
  return best.meetsDemand ? best : { ...best, variants: { all: group, greatest: tried } };
}

/** Whether a candidate may rank before those tried: it must meet the demand as they do, else bring about as much. */
function mayRank(context: CandidateContext, one: Candidate, tried: readonly Candidate[]): boolean {
  if (tried.length === 0 || context.ranking[0] !== 'meets demand') return true;
  const mostGpm = Math.max(0, ...tried.map((other) => other.mostGpm));
  const metGpm = context.demandGpm + (tried.some(meetsFully) ? context.marginWantedGpm : 0);
  const neededGpm = tried.some(({ meetsDemand }) => meetsDemand)
    ? metGpm - MET_WITHIN_GPM
    : mostGpm - alike.shortGpm;
  return mayBringAll(context, one, Math.max(0, neededGpm));
}

/** Whether the legs of a candidate may bring a flow together, as far as that can be told without solving. */
function mayBringAll(
  { department, fire, scene, testedTogether }: CandidateContext,
  { arrangement: { legs } }: Candidate,
  flowGpm: number,
): boolean {
  if (fireMostGpm(fire, legs) < flowGpm - MET_WITHIN_GPM) return false;
  const [only, ...others] = legs;
  if (others.length === 0) return mayBring(only!, flowGpm, scene, department);
  const least = department.limits?.mainResidualPsi ?? defaultLimits.mainResidualPsi;
  if (legs.some(({ source }) => source.kind === 'water')) return true;
  // Of hydrants on one main the strongest alone gives all that they are counted to give together,
  // unless a test of them together says more.
  const byMain = new Map<string, number>();
  for (const { source } of legs) {
    if (source.kind === 'water') continue;
    const { hydrant } = source.at;
    const gpm = hydrant.staticPsi > least ? availableFlowGpm(hydrant, least) : 0;
    const own = hydrant.main === undefined || testedTogether;
    const main = own ? `of ${hydrant.id}` : `main ${hydrant.main}`;
    byMain.set(main, Math.max(byMain.get(main) ?? 0, gpm));
  }
  return [...byMain.values()].reduce((sum, gpm) => sum + gpm, 0) >= flowGpm;
}

/** Lesser variants asked of one that falls short: as much water for less is better. */
const SPARING_TRIED = 6;
/** The cheapest of them are asked first. */
const CHEAPEST_TRIED = 2;

/** A way that falls short with what brings nothing left out: at once, or step by step. */
export function spared(context: CandidateContext, short: Candidate): Candidate {
  if (!short.variants) return short;
  const { all, greatest } = short.variants;
  const order = byRank(context.ranking);
  const asGood = greatest.filter(({ mostGpm }) => mostGpm >= short.mostGpm - alike.shortGpm);
  return asGood.map((one) => descend(one)).sort(order)[0] ?? short;

  function descend(from: Candidate): Candidate {
    let at = from;
    let lesser = all.filter((one) => hasMore(context, at, one));
    for (let tries = 0; tries < SPARING_TRIED && lesser.length > 0; tries++) {
      const next =
        tries < CHEAPEST_TRIED
          ? lesser[0]!
          : lesser.find((one) => !lesser.some((other) => hasMore(context, other, one)))!;
      const one = solved(context, next);
      lesser = lesser.filter((other) => other.id !== one.id);
      if (order(one, at) > 0) continue;
      at = one;
      lesser = lesser.filter((other) => hasMore(context, at, other));
    }
    return at;
  }
}

/** Whether a candidate has more than another in something and less in nothing. */
function hasMore({ department }: CandidateContext, one: Candidate, two: Candidate): boolean {
  const [ones, twos] = [one.arrangement.legs, two.arrangement.legs];
  return (
    one.id !== two.id &&
    ones.length === twos.length &&
    ones.every((leg, at) => covers(leg, twos[at]!, department))
  );
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

/**
 * Leaves out what another candidate of the same sources beats or equals in everything; where margin
 * weighs least, also what costs more and brings little more than is asked already. The one that
 * ranks first of all stays.
 */
export function undominated(
  context: CandidateContext,
  candidates: readonly Candidate[],
): Candidate[] {
  const [first] = [...candidates].sort(byRank(context.ranking));
  return candidates.filter(
    (one, at) =>
      one === first ||
      !candidates.some(
        (other, index) =>
          index !== at &&
          sourcesOf(other) === sourcesOf(one) &&
          noWorse(context, other, one) &&
          (index < at || !noWorse(context, one, other)),
      ),
  );
}

/** More water than this is worth another way for [gpm]; where both meet the demand, this share of it. */
const WORTH = { gpm: 5, share: 0.2 };

function noWorse(context: CandidateContext, one: Candidate, two: Candidate): boolean {
  const bothMeet = one.meetsDemand && two.meetsDemand;
  const worthGpm =
    bothMeet && marginLast(context) ? Math.max(WORTH.gpm, WORTH.share * one.mostGpm) : WORTH.gpm;
  return (
    one.mostGpm >= two.mostGpm - worthGpm &&
    (one.meetsDemand || !two.meetsDemand) &&
    (meetsFully(one) || !meetsFully(two)) &&
    one.time.fullAtMin <= two.time.fullAtMin + 1e-9 &&
    one.time.waterAtMin <= two.time.waterAtMin + 1e-9 &&
    one.rigsUsed <= two.rigsUsed &&
    one.hoseFt <= two.hoseFt + 1e-9
  );
}

/**
 * Of the ways that fall short the ones that say something: what a source gives without a pump, and
 * the best that it gives where nothing from it meets the demand. Where nothing meets it at all they
 * are worth asking for less: what brings nothing is left out of them.
 */
export function tellingOfShort(
  context: CandidateContext,
  candidates: readonly Candidate[],
): Candidate[] {
  const noneMeets = !candidates.some(({ meetsDemand }) => meetsDemand);
  const best = (short: readonly Candidate[]) => bestShort(context, short, noneMeets);
  const groups = new Map<string, Candidate[]>();
  for (const one of candidates) {
    const sources = sourcesOf(one);
    groups.set(sources, [...(groups.get(sources) ?? []), one]);
  }
  return [...groups.values()].flatMap((group) => {
    const meets = group.filter(({ meetsDemand }) => meetsDemand);
    const short = group.filter(({ meetsDemand }) => !meetsDemand);
    const told = [...best(short.filter(isUnpumped))];
    if (meets.length === 0) told.push(...best(short));
    return [...meets, ...new Map(told.map((one) => [one.id, one])).values()];
  });
}

function isUnpumped({ arrangement }: Candidate): boolean {
  return arrangement.legs.every(({ pumps }) => pumps.length === 0);
}

/** The best of those that bring about as much as the one that brings most; none of none. */
function bestShort(
  context: CandidateContext,
  short: readonly Candidate[],
  spare: boolean,
): Candidate[] {
  const most = Math.max(...short.map(({ mostGpm }) => mostGpm));
  return short
    .filter(({ mostGpm }) => mostGpm >= most - alike.shortGpm)
    .map((one) => (spare ? spared(context, one) : one))
    .sort(byRank(context.ranking))
    .slice(0, 1);
}

function sourcesOf({ arrangement }: Candidate): string {
  return arrangement.legs.map(sourceId).sort().join('|');
}
