/** The ways worth looking at: one source, two hydrants, and more together where no less will do. */
import {
  bestOfGroups,
  type Candidate,
  type CandidateContext,
  candidateOf,
  kindAndSources,
  solved,
} from './candidate.ts';
import type { Leg, LegSource } from './leg.ts';
import { directLegs, pumpedLegs, relayLegs } from './legs-of-source.ts';
import { byRank } from './rank.ts';
import type { Situation } from './situation.ts';

/** Pairs of hydrants that are shown. */
const PAIRS_SHOWN = 5;
/** Combinations that are shown. */
const COMBINED_SHOWN = 3;
/** Sources, and legs of each, that combinations are made of. */
const SOURCES_COMBINED = 6;
const LEGS_COMBINED = 4;
/** Arrangements that are solved where none can meet the demand. */
const SHORT_TRIED = 12;

/** A source's legs that could be arranged, each with what it brings alone. */
export interface SourceLegs {
  source: LegSource;
  legs: { leg: Leg; mostGpm: number }[];
  /** A leg on hydrant pressure alone meets the demand. */
  aloneMeets: boolean;
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
    const near = [...directLegs(source, context.crew), ...pumpedLegs(source, context.crew)];
    const ways = bestOfGroups(context, made(context, near), kindAndSources);
    const pumpMeets = ways.some((way) => way.meetsDemand && way.arrangement.rigs.length > 1);
    const anyMeets = pumpMeets || ways.some((way) => way.meetsDemand);
    const relays = anyMeets ? [] : relayLegs(source, context.crew, situation);
    const relayed = bestOfGroups(context, made(context, relays), kindAndSources);
    candidates.push(...ways, ...relayed);
    const legs = [...ways, ...relayed].map(({ arrangement, mostGpm }) => ({
      leg: arrangement.legs[0]!,
      mostGpm,
    }));
    const aloneMeets = ways.some(
      (way) => way.meetsDemand && way.arrangement.legs[0]!.pumps.length === 0,
    );
    found.push({ source, legs, aloneMeets });
  }
  return { candidates, sources: found };
}

function made(context: CandidateContext, legs: readonly Leg[]): Candidate[] {
  return legs.flatMap((leg) => candidateOf(context, [leg]) ?? []);
}

/**
 * Two hydrants at once, one of them boosted or none. A hydrant that meets the demand on its own
 * pressure alone needs no second.
 */
export function fromTwoHydrants(
  context: CandidateContext,
  sources: readonly SourceLegs[],
): Candidate[] {
  const hydrants = sources
    .filter(({ source, aloneMeets }) => source.kind === 'hydrant' && !aloneMeets)
    .map(({ source }) => ({
      direct: lean(context, directLegs(source, context.crew)),
      pumped: lean(
        context,
        pumpedLegs(source, context.crew).filter((leg) => leg.suctionLines === 0),
      ),
    }));
  const pairs: { legs: Leg[]; boundGpm: number }[] = [];
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

/** Legs with one line each and what each brings alone. */
function lean(context: CandidateContext, legs: readonly Leg[]): Bounded[] {
  return legs
    .filter(({ stretches }) => stretches.every(({ lines }) => lines.length === 1))
    .flatMap((leg) => {
      const candidate = candidateOf(context, [leg]);
      return candidate ? [{ leg, mostGpm: solved(context, candidate).mostGpm }] : [];
    });
}

function crossed(ones: readonly Bounded[], twos: readonly Bounded[]) {
  return ones.flatMap((one) =>
    twos.map((two) => ({ legs: [one.leg, two.leg], boundGpm: one.mostGpm + two.mostGpm })),
  );
}

/** Any two or three sources together, for a demand that nothing less meets. */
export function combined(context: CandidateContext, sources: readonly SourceLegs[]): Candidate[] {
  const strongest = sources
    .map((one) => ({
      ...one,
      legs: [...one.legs]
        .filter(({ mostGpm }) => mostGpm > 0)
        .sort((first, second) => second.mostGpm - first.mostGpm)
        .slice(0, LEGS_COMBINED),
    }))
    .filter(({ legs }) => legs.length > 0)
    .sort((one, two) => two.legs[0]!.mostGpm - one.legs[0]!.mostGpm)
    .slice(0, SOURCES_COMBINED);
  const sets: { legs: Leg[]; boundGpm: number }[] = [];
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

/** The best of some sets of legs, solved only where the sum of their legs says that they may do. */
function tried(
  context: CandidateContext,
  sets: readonly { legs: Leg[]; boundGpm: number }[],
  shown: number,
): Candidate[] {
  const { demandGpm } = context;
  const arranged = ({ legs, boundGpm }: { legs: Leg[]; boundGpm: number }) =>
    candidateOf(context, legs, boundGpm) ?? [];
  const may = sets.filter(({ boundGpm }) => boundGpm >= demandGpm).flatMap(arranged);
  const best = bestOfGroups(context, may, kindAndSources, shown);
  if (best.some(({ meetsDemand }) => meetsDemand)) {
    return best.filter(({ meetsDemand }) => meetsDemand).slice(0, shown);
  }
  const short: Candidate[] = [];
  for (const set of [...sets].sort((one, two) => two.boundGpm - one.boundGpm)) {
    if (short.length >= SHORT_TRIED) break;
    short.push(...[arranged(set)].flat());
  }
  const order = byRank(context.ranking);
  return [...best, ...bestOfGroups(context, short, kindAndSources)]
    .sort(order)
    .filter((one, at, all) => all.findIndex((other) => other.id === one.id) === at)
    .slice(0, shown);
}
