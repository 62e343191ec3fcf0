/** In one sentence why the first way is first. */
import type { MainRange } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { Criterion, SupplyWay, WayKind } from './choice.ts';
import { marginWantedGpm, rankKey } from './rank.ts';
import type { Situation } from './situation.ts';
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
  asked: Pick<Situation, 'demandGpm' | 'marginShare'>,
  ranking: readonly Criterion[],
  units: UnitSystem,
): string {
  const say = sayIn(units);
  const [first, ...others] = ways;
  const demand = say.full(asked.demandGpm, 'flow');
  if (!first) return `Nothing here brings water: ${demand} is wanted.`;
  if (!first.meetsDemand) {
    const short = say.full(first.shortfallGpm, 'flow');
    return `No way brings ${demand}: ${first.title} brings most and is ${short} short. ${first.bindingText}`.trim();
  }
  const byMains = littleByMains(first, marginWantedGpm(asked));
  const only = first.littleToSpare && !byMains ? 'only ' : '';
  const gpm = `${only}${say.full(first.marginGpm, 'flow')} to spare`;
  const spare = byMains ? `${gpm} where its hydrants do not share a main` : gpm;
  const runnerUp = others.find((way) => way.meetsDemand && way.kind !== first.kind) ?? others[0];
  if (!runnerUp) return `The only way found; it leaves ${spare}.`;
  if (!runnerUp.meetsDemand) return `The only way that brings ${demand}; it leaves ${spare}.`;
  const other = runnerUp.kind === first.kind ? runnerUp.title : KIND_WORDS[runnerUp.kind];
  const advantage = advantageOver(first, runnerUp, other, ranking, units, asked);
  if (!advantage) return `As good as ${other}, and leaves ${spare}.`;
  if (advantage.by === 'margin' || advantage.by === 'meets demand') return `${advantage.text}.`;
  if (first.littleToSpare) return `${advantage.text}, but leaves ${spare}.`;
  const still = first.marginGpm < runnerUp.marginGpm ? 'still leaves' : 'leaves';
  return `${advantage.text} and ${still} ${spare}.`;
}

/** Has enough to spare as it is counted; not so, should its hydrants share a main. */
function littleByMains(
  { littleToSpare, mains, marginGpm }: SupplyWay,
  wantedGpm: number,
): MainRange | undefined {
  return littleToSpare && mains?.basis === 'not known' && marginGpm >= wantedGpm
    ? mains
    : undefined;
}

/** "would leave only 40 gpm", of a way with little to spare. */
function littleWords(
  way: SupplyWay,
  asked: Pick<Situation, 'demandGpm' | 'marginShare'>,
  units: UnitSystem,
): string {
  const say = sayIn(units);
  const mains = littleByMains(way, marginWantedGpm(asked));
  if (!mains) return `would leave only ${say.full(way.marginGpm, 'flow')}`;
  const leftGpm = mains.shared - asked.demandGpm;
  if (leftGpm < 0) return 'would fall short, should the hydrants share a main';
  return `would leave only ${say.full(leftGpm, 'flow')}, should the hydrants share a main`;
}

function advantageOver(
  first: SupplyWay,
  second: SupplyWay,
  other: string,
  ranking: readonly Criterion[],
  units: UnitSystem,
  asked: Pick<Situation, 'demandGpm' | 'marginShare'>,
): { by: Criterion; text: string } | undefined {
  const say = sayIn(units);
  const by = ranking.find(
    (criterion) => rankKey(first, [criterion])[0]! < rankKey(second, [criterion])[0]!,
  );
  switch (by) {
    case 'meets demand': {
      const spare = say.full(first.marginGpm, 'flow');
      const little = littleWords(second, asked, units);
      return { by, text: `Leaves ${spare} to spare, where ${other} ${little}` };
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
