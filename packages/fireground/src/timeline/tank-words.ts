/** What becomes of the tank, in words that follow from what was played. */
import { clock } from '../words/clock.ts';
import type { Say } from '../words/say.ts';
import { flowAt } from './play-tanks.ts';
import type { TimelineAnswer } from './timeline-answer.ts';
import type { TimelineInput } from './timeline-input.ts';

/** As short as a clock tells [min]. */
const A_SECOND = 1 / 60;

type Played = Omit<TimelineAnswer, 'events' | 'text' | 'notices'>;

/**
 * A sentence or two for people: whether the lines ever lack water, from when to when, what came in
 * time, and what flow would have been held up.
 */
export function tankWords(input: TimelineInput, played: Played, say: Say): string {
  const { supplyAtMin, runsDryAtMin, tanksDryAtMin } = played;
  const many = (input.nurseTanks ?? []).length > 0;
  const tanks = many ? 'the tanks' : 'the tank';
  if (supplyAtMin === null) {
    return tanksDryAtMin === null
      ? `${capital(tanks)} ${many ? 'hold' : 'holds'}: no supply is planned.`
      : `No supply is planned: ${tanks} ${many ? 'are' : 'is'} dry at ${clock(tanksDryAtMin)}.`;
  }
  const there = thereWords(input, played, say);
  if (runsDryAtMin === null) {
    const spare =
      tanksDryAtMin === null
        ? ''
        : `, ${minutes(tanksDryAtMin - supplyAtMin)} before ${tanks} would be dry`;
    return `No line lacks water: ${there}${spare}.`;
  }
  const allGpm = flowAt(played.supply, Number.POSITIVE_INFINITY);
  const takenGpm = Math.max(0, ...input.attackFlow.map(({ flowGpm }) => flowGpm));
  const after =
    allGpm < takenGpm - 0.5 ? ` After that the lines have ${say.full(allGpm, 'flow')}.` : '';
  if (runsDryAtMin < supplyAtMin) {
    const bridge =
      played.bridgeGpm === null
        ? ''
        : ` ${say.full(played.bridgeGpm, 'flow')} would last until then.`;
    return `The lines lack water from ${clock(runsDryAtMin)}: ${there}, ${minutes(supplyAtMin - runsDryAtMin)} later.${bridge}${after}`;
  }
  if (runsDryAtMin < supplyAtMin + A_SECOND) {
    return `${capital(there)}; ${tanks} ${many ? 'are' : 'is'} dry by then.${after}`;
  }
  return `${capital(there)}; ${tanks} ${many ? 'make' : 'makes'} up what it lacks until ${clock(runsDryAtMin)}.${after}`;
}

/** "the supply's 1,200 gpm are there at 8:12", with what came before. */
function thereWords({ attackFlow }: TimelineInput, { supply, supplyAtMin }: Played, say: Say) {
  const gpm = flowAt(supply, supplyAtMin!);
  const takenGpm = Math.max(0, ...attackFlow.map(({ flowGpm }) => flowGpm));
  const from = supply.find(({ atMin }) => atMin === supplyAtMin)?.what;
  const named = from ? `with ${from} the supply gives` : 'the supply gives';
  const only = gpm < takenGpm - 0.5 ? 'only ' : '';
  return `${named} ${only}${say.full(gpm, 'flow')} from ${clock(supplyAtMin!)}`;
}

function minutes(value: number): string {
  return `${clock(Math.abs(value))} min`;
}

function capital(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}`;
}
