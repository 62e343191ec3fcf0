/** Choosing how water gets to a scene: the ways there are, solved and put in order. */
import { findingText } from '../field-tests/finding.ts';
import type { Notice } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { limitSentence } from '../words/answer.ts';
import { deferral } from '../words/notices.ts';
import type { CancelSignal } from './cancel.ts';
import { type Candidate, type CandidateContext, tellingOfShort, undominated } from './candidate.ts';
import { checkSituation } from './check-situation.ts';
import type { Choice, Criterion, RefusedWay, SupplyWay } from './choice.ts';
import { crewOf } from './crew.ts';
import { draftNotices, draftParts } from './draft-parts.ts';
import { dutiesOf } from './duties.ts';
import { combined, fromOneSource, fromTwoHydrants } from './enumerate.ts';
import { type Leg, sourceId } from './leg.ts';
import { sourceParts } from './parts.ts';
import { byRank, usualRanking } from './rank.ts';
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
  const solver = new LegSolver(situation, crew.attack, units, signal);
  const context: CandidateContext = {
    crew,
    demandGpm,
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
  if (!found.some(({ meetsDemand }) => meetsDemand)) found.push(...combined(context, one.sources));

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
  ways.sort(byRank(ranking));
  return { demandGpm, ways, refused, why: whyFirst(ways, demandGpm, ranking, units), notices };
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
  const timed = timeToWater(crew.attack, work, times, units);
  const { steps, waterAtMin, fullAtMin, atFireMin } = timed;
  const { plan, mostGpm } = answer;
  const { parts, asSet } = sourceParts(context, { plan, mostGpm, work, times: timed.legs });
  const drafts = draftParts(legs, parts, asSet, units);
  const standBy = standingBy(crew, rigs);
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
    orders: answer.orders,
    time: { steps, waterAtMin, fullAtMin, atFireMin },
    parts,
    ...(drafts.length > 0 && { drafts }),
    ...(standBy.length > 0 && { standBy }),
    ...(answer.mains && { mains: answer.mains }),
    notices: [...testDoubts(legs, units), ...draftNotices(drafts, parts, units), ...answer.notices],
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
