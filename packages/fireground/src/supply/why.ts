/** In one sentence why the first way is first. */
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { Criterion, SupplyWay, WayKind } from './choice.ts';
import { rankKey } from './rank.ts';
import { numberWord } from './title.ts';

const KIND_WORDS: Record<WayKind, string> = {
  'direct lay': 'a direct lay',
  'dual lines': 'two lines',
  'boosted at the hydrant': 'boosting',
  'boosted with suction lines': 'boosting with suction lines',
  'reverse lay': 'a pump in line at the hydrant',
  relay: 'a relay',
  'two hydrants': 'two hydrants',
  draft: 'drafting',
  'tender shuttle': 'a tender shuttle',
  combined: 'several sources together',
};

/** The sentence for ways already in order; that there is none where there is none. */
export function whyFirst(
  ways: readonly SupplyWay[],
  demandGpm: number,
  ranking: readonly Criterion[],
  units: UnitSystem,
): string {
  const say = sayIn(units);
  const [first, ...others] = ways;
  const demand = say.full(demandGpm, 'flow');
  if (!first) return `Nothing here brings water: ${demand} is wanted.`;
  if (!first.meetsDemand) {
    const short = say.full(first.shortfallGpm, 'flow');
    return `No way brings ${demand}: ${first.title} brings most and is ${short} short. ${first.bindingText}`.trim();
  }
  const spare = say.full(first.marginGpm, 'flow');
  const runnerUp = others.find((way) => way.meetsDemand && way.kind !== first.kind) ?? others[0];
  const only = first.littleToSpare ? 'only ' : '';
  if (!runnerUp) return `The only way found; it leaves ${only}${spare} to spare.`;
  if (!runnerUp.meetsDemand)
    return `The only way that brings ${demand}; it leaves ${only}${spare} to spare.`;
  const other = runnerUp.kind === first.kind ? runnerUp.title : KIND_WORDS[runnerUp.kind];
  const advantage = advantageOver(first, runnerUp, other, ranking, units);
  if (!advantage) return `As good as ${other}, and leaves ${only}${spare} to spare.`;
  if (advantage.by === 'margin' || advantage.by === 'meets demand') return `${advantage.text}.`;
  if (only) return `${advantage.text}, but leaves only ${spare} to spare.`;
  const still = first.marginGpm < runnerUp.marginGpm ? 'still leaves' : 'leaves';
  return `${advantage.text} and ${still} ${spare} to spare.`;
}

function advantageOver(
  first: SupplyWay,
  second: SupplyWay,
  other: string,
  ranking: readonly Criterion[],
  units: UnitSystem,
): { by: Criterion; text: string } | undefined {
  const say = sayIn(units);
  const by = ranking.find(
    (criterion) => rankKey(first, [criterion])[0]! < rankKey(second, [criterion])[0]!,
  );
  switch (by) {
    case 'meets demand': {
      const [spare, little] = [first, second].map((way) => say.full(way.marginGpm, 'flow'));
      return { by, text: `Leaves ${spare} to spare, where ${other} leaves only ${little}` };
    }
    case 'time to water': {
      const sooner = Math.max(1, Math.round(second.time.fullAtMin - first.time.fullAtMin));
      return { by, text: `Brings its water ${sooner} min sooner than ${other}` };
    }
    case 'rigs used': {
      const fewer = second.rigsUsed - first.rigsUsed;
      return {
        by,
        text: `Needs ${numberWord(fewer)} rig${fewer > 1 ? 's' : ''} fewer than ${other}`,
      };
    }
    case 'hose':
      return {
        by,
        text: `Takes ${say.full(second.hoseFt - first.hoseFt, 'length')} less hose than ${other}`,
      };
    case 'margin':
      return {
        by,
        text: `Leaves ${say.full(first.marginGpm, 'flow')} to spare, more than ${other}`,
      };
    default:
      return undefined;
  }
}
