/** The ways worth looking at: one source, two hydrants, and more together where no less will do. */

import type { HoseSize } from '../plan/plan.ts';
import type { LimitKind } from '../questions/answers.ts';
import {
  bestOfGroups,
  type Candidate,
  type CandidateContext,
  candidateOf,
  kindAndSources,
  marginLast,
  solved,
} from './candidate.ts';
import { pumpsWorthTrying } from './crew.ts';
import { fireMostGpm } from './fire-pumps.ts';
import { idOfLegs, type Leg, type LegSource } from './leg.ts';
import { directLegs, pumpedLegs, relayLegs } from './legs-of-source.ts';
import { byRank, meetsFully, settled } from './rank.ts';
import type { Situation } from './situation.ts';

/** Pairs of hydrants that are shown. */
const PAIRS_SHOWN = 5;
/** Combinations that are shown. */
const COMBINED_SHOWN = 3;
/** Sources, and legs of each, that combinations are made of. */
const SOURCES_COMBINED = 6;
const LEGS_COMBINED = 6;
/** A pump in the line brings at most so much more than one on a valve: for bounds. Ours. */
const VALVE_COSTS = 1.25;
/** Arrangements that are solved where none can meet the demand. */
const SHORT_TRIED = 12;

/** A source's legs that could be arranged, each with what it brings alone. */
export interface SourceLegs {
  source: LegSource;
  legs: Bounded[];
}

export interface Enumerated {
  candidates: Candidate[];
  sources: SourceLegs[];
}

/** Every way from one source, the best of each kind. */
export function fromOneSource(
  context: CandidateContext,
  sources: readonly LegSource[],
  situation: Situation,
): Enumerated {
  const candidates: Candidate[] = [];
  const found: SourceLegs[] = [];
  for (const source of sources) {
    const ways = bestOfGroups(context, nearCandidates(context, source), kindAndSources);
    const relays = relayMayHelp(context, ways) ? relayLegs(source, context.crew, situation) : [];
    const relayed = bestOfGroups(context, made(context, relays), kindAndSources);
    candidates.push(...ways, ...relayed);
    const legs = [...ways, ...relayed].map(({ arrangement }) => ({
      leg: arrangement.legs[0]!,
      mostGpm: context.solver.broughtGpm(arrangement),
    }));
    found.push({ source, legs });
  }
  return { candidates, sources: found };
}

/** On the source's own pressure, or with one pump at it; those that lay for it may pump for it. */
function nearCandidates(context: CandidateContext, source: LegSource): Candidate[] {
  const { crew } = context;
  const direct = made(context, directLegs(source, crew));
  const pumped = made(context, pumpedLegs(source, crew));
  const pumps = new Set(pumped.flatMap(({ arrangement }) => arrangement.legs[0]!.pumps));
  const layers = new Set(
    pumped
      .flatMap(({ arrangement }) => arrangement.rigs)
      .filter((rig) => crew.pumpers.includes(rig) && !pumps.has(rig)),
  );
  return [...direct, ...pumped, ...made(context, pumpedLegs(source, crew, [...layers]))];
}

/** What stops a source however many pumps follow. */
const SOURCE_LIMITS: readonly LimitKind[] = ['main residual', 'booster intake', 'draft vacuum'];

/** A relay is for a lay that one pump cannot push the demand through, not for a source that has no more. */
function relayMayHelp(
  { demandGpm, marginWantedGpm, solver }: CandidateContext,
  ways: readonly Candidate[],
): boolean {
  if (ways.some(meetsFully)) return false;
  // What the pumps at the fire cannot put out no pump on the way there mends.
  const wantedGpm = demandGpm + marginWantedGpm;
  if (ways.some(({ arrangement }) => solver.broughtGpm(arrangement) >= wantedGpm)) return false;
  const pumped = ways.filter(({ arrangement }) => arrangement.legs[0]!.pumps.length > 0);
  return !pumped.some(({ arrangement }) =>
    solver.tight(arrangement).some((kind) => SOURCE_LIMITS.includes(kind)),
  );
}

function made(context: CandidateContext, legs: readonly Leg[]): Candidate[] {
  return legs.flatMap((leg) => candidateOf(context, [leg]) ?? []);
}

/** Two hydrants at once, one of them boosted or none; where either would do alone with enough to spare it is not a pair. */
export function fromTwoHydrants(
  context: CandidateContext,
  sources: readonly SourceLegs[],
): Candidate[] {
  const hydrants = sources
    .filter(({ source }) => source.kind === 'hydrant')
    .map(({ source }) => ({
      direct: bounded(context, source, false),
      pumped: bounded(context, source, true),
    }));
  const pairs: LegSet[] = [];
  hydrants.forEach((one, at) => {
    for (const two of hydrants.slice(at + 1)) {
      pairs.push(...crossed(one.direct, two.direct), ...crossed(one.direct, two.pumped));
      pairs.push(...crossed(one.pumped, two.direct));
    }
  });
  return tried(context, pairs, PAIRS_SHOWN);
}

interface Bounded {
  leg: Leg;
  mostGpm: number;
}

interface LegSet {
  legs: Leg[];
  boundGpm: number;
}

/**
 * Legs of one line and no further suction, the two largest sizes, and what each brings alone. With a
 * pump that another beats, at most what the other brings: it may lay what the other cannot.
 */
function bounded(context: CandidateContext, source: LegSource, pumped: boolean): Bounded[] {
  const { crew } = context;
  const worth = pumpsWorthTrying(crew);
  const legs = pumped ? pumpedLegs(source, crew, crew.pumpers) : directLegs(source, crew);
  const lean = legs.filter(
    ({ stretches, suction }) =>
      suction.length === 0 && stretches.every(({ lines }) => lines.length === 1),
  );
  const sizeOf = ({ stretches }: Leg) => stretches[0]!.lines[0]!;
  const sizes = [...new Set(lean.map(sizeOf))].slice(0, 2);
  const most = new Map<HoseSize, number>();
  const found: Bounded[] = [];
  const beaten: Leg[] = [];
  for (const leg of lean) {
    if (!sizes.includes(sizeOf(leg))) continue;
    const candidate = candidateOf(context, [leg]);
    if (pumped && (!candidate || !worth.includes(leg.pumps[0]!))) {
      beaten.push(leg);
      continue;
    }
    if (!candidate) continue;
    const alone = solved(context, candidate);
    const broughtGpm = context.solver.broughtGpm(alone.arrangement);
    const mostGpm = broughtGpm * (mayLoseValve(alone) ? VALVE_COSTS : 1);
    most.set(sizeOf(leg), Math.max(most.get(sizeOf(leg)) ?? 0, mostGpm));
    // A leg that does alone is worse with another beside it in all but margin.
    if (!meetsFully(alone) || !marginLast(context)) found.push({ leg, mostGpm });
  }
  return [...found, ...beaten.map((leg) => ({ leg, mostGpm: most.get(sizeOf(leg)) ?? 0 }))];
}

/** Whether the rig with a leg's valve may lay elsewhere beside another leg, and its pump stand in the line. */
function mayLoseValve({ arrangement }: Candidate): boolean {
  const [leg] = arrangement.legs as [Leg];
  return leg.valve && !leg.pumps[0]!.assistValve;
}

function crossed(ones: readonly Bounded[], twos: readonly Bounded[]): LegSet[] {
  return ones.flatMap((one) =>
    twos.map((two) => ({ legs: [one.leg, two.leg], boundGpm: one.mostGpm + two.mostGpm })),
  );
}

/** Any two or three sources together, for a demand that nothing less meets. */
export function combined(context: CandidateContext, sources: readonly SourceLegs[]): Candidate[] {
  const strongest = sources
    .map((one) => ({ ...one, legs: legsToCombine(context, one) }))
    .filter(({ legs }) => legs.length > 0)
    .sort((one, two) => strongerFirst(one.legs[0]!, two.legs[0]!))
    .slice(0, SOURCES_COMBINED);
  const sets: LegSet[] = [];
  const grow = (from: number, legs: Leg[], boundGpm: number) => {
    if (legs.length > 1) sets.push({ legs, boundGpm });
    if (legs.length === 3) return;
    strongest.slice(from).forEach((source, at) => {
      for (const { leg, mostGpm } of source.legs)
        grow(from + at + 1, [...legs, leg], boundGpm + mostGpm);
    });
  };
  grow(0, [], 0);
  return tried(context, sets, COMBINED_SHOWN);
}

/** A source's best of each kind and its plainest legs, the strongest first; of those alike the leaner. */
function legsToCombine(context: CandidateContext, { source, legs }: SourceLegs): Bounded[] {
  const plain = [false, true].flatMap((pumped) => bounded(context, source, pumped));
  // A valve is given to a leg when it is arranged: with and without it is the same leg.
  const key = ({ leg }: Bounded) => idOfLegs([{ ...leg, valve: false }]);
  const all = new Map([...legs, ...plain].map((one) => [key(one), one]));
  return [...all.values()]
    .filter(({ mostGpm }) => mostGpm > 0)
    .sort(strongerFirst)
    .slice(0, LEGS_COMBINED);
}

/** The greater flow in whole gpm first, then the fewer lines, then the shorter lay; else as they stand. */
function strongerFirst(one: Bounded, two: Bounded): number {
  return (
    Math.round(settled(two.mostGpm)) - Math.round(settled(one.mostGpm)) ||
    linesOf(one.leg) - linesOf(two.leg) ||
    one.leg.source.at.lengthFt - two.leg.source.at.lengthFt
  );
}

/** Lines and suction lines of a leg, each counted once. */
function linesOf({ stretches, suction }: Leg): number {
  return suction.length + Math.max(...stretches.map(({ lines }) => lines.length));
}

/** The best of some sets of legs, solved only where the sum of their legs says that they may do. */
function tried(context: CandidateContext, all: readonly LegSet[], shown: number): Candidate[] {
  const { demandGpm, fire } = context;
  const arranged = ({ legs }: LegSet) => candidateOf(context, legs) ?? [];
  const sets = all.map(({ legs, boundGpm }) => ({
    legs,
    boundGpm: Math.min(settled(boundGpm), fireMostGpm(fire, legs)),
  }));
  const between = (leastGpm: number, belowGpm: number) =>
    sets.filter(({ boundGpm }) => boundGpm >= leastGpm && boundGpm < belowGpm).flatMap(arranged);
  const amply = between(fire.wantedGpm, Number.POSITIVE_INFINITY);
  const best = bestOfGroups(context, amply, kindAndSources, shown);
  if (best.filter(meetsFully).length < shown) {
    best.push(...bestOfGroups(context, between(demandGpm, fire.wantedGpm), kindAndSources, shown));
  }
  if (best.some(({ meetsDemand }) => meetsDemand)) {
    return best
      .filter(({ meetsDemand }) => meetsDemand)
      .sort(byRank(context.ranking))
      .slice(0, shown);
  }
  const short: Candidate[] = [];
  const most = ({ boundGpm }: LegSet) => Math.round(settled(boundGpm));
  for (const set of [...sets].sort((one, two) => most(two) - most(one) || leaner(one, two))) {
    if (short.length >= SHORT_TRIED) break;
    short.push(...[arranged(set)].flat());
  }
  const order = byRank(context.ranking);
  return [...best, ...bestOfGroups(context, short, kindAndSources)]
    .sort(order)
    .filter((one, at, all) => all.findIndex((other) => other.id === one.id) === at)
    .slice(0, shown);
}

/** Of sets that may bring as much the one of fewer pumps first, then of shorter lays. */
function leaner(one: LegSet, two: LegSet): number {
  const pumps = ({ legs }: LegSet) => legs.reduce((sum, leg) => sum + leg.pumps.length, 0);
  const layFt = ({ legs }: LegSet) => legs.reduce((sum, { source }) => sum + source.at.lengthFt, 0);
  return pumps(one) - pumps(two) || layFt(one) - layFt(two);
}
