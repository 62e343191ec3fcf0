/** Mishaps as rows of a plan: each mishap's own verdict, and what a shuttle comes to without a tender. */
import {
  type Mishap,
  mishapVerdict,
  type ShuttlePart,
  type SupplyWay,
  type UnitSystem,
} from '@plugside/fireground';
import { figuresIn, inTens } from '../sheet/figures.ts';
import { capital } from '../words.ts';
import type { PlanMishap } from './data.ts';

export function whatIfRows(
  way: SupplyWay,
  mishaps: readonly Mishap[],
  demandGpm: number,
  units: UnitSystem,
): PlanMishap[] {
  return [
    ...mishaps.map((mishap) => rowOf(mishap, way, units)),
    ...(way.shuttle && mishaps.every(({ what }) => !/tender/i.test(what))
      ? tenderOut(way, way.shuttle, demandGpm, units)
      : []),
  ];
}

function rowOf(mishap: Mishap, way: SupplyWay, units: UnitSystem): PlanMishap {
  const { what, flowGpm, resetGpm, wantedGpm, text } = mishap;
  const { met, words, past } = mishapVerdict(mishap, way.plan, units);
  const remedy = [past && `As set: past ${past}.`, toDo(text)].filter(Boolean).join(' ');
  return {
    what: inTens(what),
    flowGpm,
    resetGpm,
    wantedGpm,
    met,
    verdict: inTens(words),
    remedy: inTens(remedy),
  };
}

/** A mishap's sentences without those that its row tells by its figures. */
function toDo(text: string): string {
  const sentences = text.split(/(?<=\.) (?=[\d\p{Lu}])/u).slice(1);
  return sentences.filter((sentence) => !/^The demand is met|\bshort:/.test(sentence)).join(' ');
}

/** Of a shuttle the tender that brings most: what the others keep up. */
function tenderOut(
  way: SupplyWay,
  { tenders, gpm, limitedBy }: ShuttlePart,
  demandGpm: number,
  units: UnitSystem,
): PlanMishap[] {
  const [most] = [...tenders].sort((a, b) => b.gpm - a.gpm);
  if (!most) return [];
  const others = tenders.reduce((sum, one) => sum + one.gpm, 0) - most.gpm;
  // A site that holds them up holds up fewer no less than it did.
  const left = limitedBy === 'tenders' ? others : Math.min(gpm, others);
  const flowGpm = Math.max(0, way.mostGpm - gpm + left);
  const shortGpm = Math.max(0, demandGpm - flowGpm);
  const met = shortGpm < 0.5;
  return [
    {
      what: `${most.rigName} drops out of the shuttle`,
      flowGpm,
      resetGpm: flowGpm,
      wantedGpm: demandGpm,
      met,
      verdict: met ? 'met' : `${figuresIn(units).full(shortGpm, 'flow')} short`,
      remedy: capital('ask for another tender; ease the draw before the portable tank is dry.'),
    },
  ];
}
