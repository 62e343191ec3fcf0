/** Mishaps as rows of a plan, each with its own verdict. */
import { type Mishap, mishapVerdict, type SupplyWay, type UnitSystem } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import type { PlanMishap } from './data.ts';

export function whatIfRows(
  way: SupplyWay,
  mishaps: readonly Mishap[],
  units: UnitSystem,
): PlanMishap[] {
  return mishaps.map((mishap) => rowOf(mishap, way, units));
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
