/** Choosing how water gets to a scene: the ways there are, solved and put in order. */
import { findingText } from '../field-tests/finding.ts';
import type { Notice } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { limitSentence } from '../words/answer.ts';
import { deferral } from '../words/notices.ts';
import { sayIn } from '../words/say.ts';
import type { CancelSignal } from './cancel.ts';
import {
  against,
  type Candidate,
  type CandidateContext,
  tellingOfShort,
  undominated,
} from './candidate.ts';
import { checkSituation } from './check-situation.ts';
import type { Choice, Criterion, RefusedWay, SupplyWay } from './choice.ts';
import { crewOf } from './crew.ts';
import { draftNotices, draftParts } from './draft-parts.ts';
import { dutiesOf } from './duties.ts';
import { combined, fromOneSource, fromTwoHydrants } from './enumerate.ts';
import { attackPumpCheck, fireEngines, fireNotices, fireOrders } from './fire-part.ts';
import { fireAskOf } from './fire-pumps.ts';
import { type Leg, sourceId } from './leg.ts';
import { littleToSpareNotice } from './little-to-spare.ts';
import { sourceParts } from './parts.ts';
import { byRank, marginWantedGpm, meetsFully, usualRanking } from './rank.ts';
import { refusals, usableSources } from './refusals.ts';
import { shuttleBeside, shuttleRefusals, shuttleWays } from './shuttle-ways.ts';
import type { Situation } from './situation.ts';
import { LegSolver } from './solve-legs.ts';
import { standingBy } from './stand-by.ts';
import { type TaskTimes, usualTaskTimes } from './task-times.ts';
import { timeToWater } from './time-to-water.ts';
import { wayTitle } from './title.ts';
import { whyFirst } from './why.ts';

export interface ChooseOptions {
  /** For the sentences; figures are always in inside units. */
  units?: UnitSystem;
  /** What is weighed, the weightiest first; `usualRanking` where left out. */
  ranking?: readonly Criterion[];
  /** How long tasks take; common practice where left out. */
  times?: Readonly<TaskTimes>;
  /** Looked at between solves. */
  signal?: CancelSignal;
}

/**
 * The ways to bring a demand to a scene with the water and rigs at hand, the best first.
 *
 * From each source every kind of way is tried with the hose aboard and each engine that could
 * pump; the best of each kind is kept, and left out only where another from the same source is no
 * worse in anything. Two hydrants are tried where neither meets the demand on its own pressure,
 * two or three sources of any kind where nothing less meets it, then a tender shuttle beside.
 *
 * Pure and deterministic: the same situation gives the same ways with the same ids.
 * @throws RangeError for a situation that cannot be: no demand, a lay of no length, twice the same id
 * @throws the signal's reason where it is aborted
 */
export function chooseSupply(situation: Situation, options: ChooseOptions = {}): Choice {
  const { units = 'us', ranking = usualRanking, times = usualTaskTimes, signal } = options;
  checkSituation(situation);
  signal?.throwIfAborted();
  const { demandGpm, department } = situation;
  const notices = [{ level: 'caution' as const, text: deferral }];
  const crew = crewOf(situation);
  if (!crew) {
    const why = 'No engine comes: there is nothing to bring water to.';
    return { demandGpm, ways: [], refused: [], why, notices };
  }
  const wantedMarginGpm = marginWantedGpm(situation);
  const fire = fireAskOf(situation, crew, demandGpm + wantedMarginGpm);
  const solver = new LegSolver(situation, crew.attack, fire, units, signal);
  const context: CandidateContext = {
    crew,
    demandGpm,
    marginWantedGpm: wantedMarginGpm,
    fire,
    department,
    ranking,
    scene: situation.scene,
    solver,
    testedTogether: (situation.groupTests ?? []).length > 0,
    times,
    units,
  };
  const one = fromOneSource(context, usableSources(situation), situation);
  const found = [...one.candidates, ...fromTwoHydrants(context, one.sources)];
  if (!found.some(meetsFully)) {
    const some = found.some(({ meetsDemand }) => meetsDemand);
    const more = combined(context, one.sources);
    found.push(...(some ? more.filter(({ meetsDemand }) => meetsDemand) : more));
  }

  const refused: RefusedWay[] = [
    ...refusals(situation, crew, units),
    ...shuttleRefusals(situation),
  ];
  const kept = tellingOfShort(context, undominated(context, unique(found)));
  const ways: SupplyWay[] = [];
  for (const candidate of kept.sort(byRank(ranking))) {
    const way = wayOf(context, candidate);
    if ('reason' in way) refused.push(way);
    else ways.push(way);
  }
  ways.push(...shuttleWays(context, situation));
  if (!ways.some(({ meetsDemand }) => meetsDemand))
    ways.push(...shuttleBeside(context, situation, ways));
  const told = ways.map((way) => heldAgainst(context, way)).sort(byRank(ranking));
  return {
    demandGpm,
    ways: told,
    refused,
    why: whyFirst(told, situation, ranking, units),
    notices,
  };
}

/**
 * The way with what it has to spare, and told of where that is little. A shuttle's water goes
 * through the pumps at the fire like any other.
 */
function heldAgainst(context: CandidateContext, whole: SupplyWay): SupplyWay {
  const way = withinPumps(context, whole);
  const { littleToSpare } = against(context, way.mostGpm);
  if (littleToSpare) {
    const notice = littleToSpareNotice(way.marginGpm, context.marginWantedGpm, context.units);
    return { ...way, littleToSpare, notices: [notice, ...way.notices] };
  }
  // Hydrants that may share a main: what they then have to spare counts, and their notice tells it.
  const careful = against(
    context,
    way.mains?.basis === 'not known' ? way.mains.shared : way.mostGpm,
  );
  return { ...way, littleToSpare: way.meetsDemand && !meetsFully(careful) };
}

function withinPumps(context: CandidateContext, way: SupplyWay): SupplyWay {
  const { atFire = [], binding: _, ...rest } = way;
  const others = atFire.slice(1).reduce((sum, { pumpMostGpm }) => sum + pumpMostGpm, 0);
  const limit = attackPumpCheck(context, way.mostGpm - others);
  if (!limit) return way;
  const mostGpm = limit.limit + others;
  const { meetsDemand, marginGpm } = against(context, mostGpm);
  return {
    ...rest,
    atFire,
    mostGpm,
    meetsDemand,
    marginGpm,
    shortfallGpm: meetsDemand ? 0 : -marginGpm,
    binding: [limit],
    bindingText: `${limit.label} (${sayIn(context.units).full(limit.limit, 'flow')}) is the limit.`,
  };
}

function unique(candidates: readonly Candidate[]): Candidate[] {
  return [...new Map(candidates.map((one) => [one.id, one])).values()];
}

function wayOf(
  context: CandidateContext,
  { arrangement, meetsDemand, marginGpm }: Candidate,
): SupplyWay | RefusedWay {
  const { crew, demandGpm, solver, times, units } = context;
  const { id, kind, legs, work, rigs, hoseFt, hoseSections } = arrangement;
  const title = wayTitle(arrangement, units);
  const answer = solver.answer(arrangement);
  if (answer.none) return { kind, title, ...answer.none };
  const standBy = standingBy(crew, rigs);
  const notPumping = new Set(
    answer.plan.rigs.filter(({ setting }) => setting.mode === 'idle').map(({ id }) => id),
  );
  const timed = timeToWater(crew.attack, work, times, units, notPumping);
  const { steps, waterAtMin, fullAtMin, atFireMin } = timed;
  const { plan, mostGpm } = answer;
  const { parts, asSet } = sourceParts(context, { plan, mostGpm, work, times: timed.legs });
  const drafts = draftParts(legs, parts, asSet, units);
  return {
    id,
    kind,
    title,
    sources: legs.map(sourceId),
    duties: dutiesOf(arrangement, crew.attack, timed.tasks),
    rigsUsed: rigs.length,
    hoseFt,
    hoseSections,
    plan: answer.plan,
    mostGpm: answer.mostGpm,
    meetsDemand,
    shortfallGpm: meetsDemand ? 0 : demandGpm - answer.mostGpm,
    marginGpm,
    binding: answer.binding,
    bindingText: limitSentence(answer.plan, answer.binding, units),
    orders: fireOrders(context, arrangement, answer),
    time: { steps, waterAtMin, fullAtMin, atFireMin },
    atFire: fireEngines(context, arrangement),
    parts,
    ...(drafts.length > 0 && { drafts }),
    ...(standBy.length > 0 && { standBy }),
    ...(answer.mains && { mains: answer.mains }),
    notices: [
      ...fireNotices(context, arrangement, mostGpm),
      ...testDoubts(legs, units),
      ...draftNotices(drafts, parts, units),
      ...answer.notices,
    ],
  };
}

/** What is weak in the flow tests that a way rests on. */
function testDoubts(legs: readonly Leg[], units: UnitSystem): Notice[] {
  return legs.flatMap(({ source }) =>
    source.kind === 'hydrant'
      ? (source.at.doubts ?? []).map((doubt) => ({
          level: 'caution' as const,
          text: findingText(doubt, units),
        }))
      : [],
  );
}
