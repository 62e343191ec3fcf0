/** The answer as one line: a figure, and the words after it. */
import { limitSentence, limitWords, nameOf, pieceOf } from '@plugside/fireground';
import type { Units } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';

export interface AnswerWords {
  number: string;
  unit: string;
  /** After the number: "to the scene". */
  whereTo: string;
  parts: { text: string; tone: 'plain' | 'water' | 'warning' | 'soft' }[];
}

function list(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/**
 * Builds the line for whichever question was asked.
 * @param gainGpm over hydrant pressure alone; null where there is no booster to compare
 * @param best the one change that would bring most
 */
export function answerWords(
  answered: Answered,
  gainGpm: number | null,
  best: { change: string; gainGpm: number } | null,
  units: Units,
): AnswerWords {
  const { answer, state, plan } = answered;
  const scene = pieceOf(plan, plan.scene);
  const sceneName = scene ? nameOf(scene) : 'the scene';
  const parts: AnswerWords['parts'] = [];
  const say = (text: string, tone: AnswerWords['parts'][number]['tone'] = 'plain') => {
    if (text !== '') parts.push({ text, tone });
  };
  if (answer.question === 'most water') {
    if (answer.noneReason) {
      say(answer.noneReason, 'warning');
    } else {
      if (gainGpm !== null && gainGpm > 0.5) {
        say(`+${units.number(gainGpm, 'flow')}`, 'water');
        say(' over hydrant pressure alone. ');
      }
      say(limitSentence(plan, answer.binding, units.system), 'warning');
    }
    if (best && best.gainGpm > 0.5) {
      const { number } = units.of(best.gainGpm, 'flow');
      say(` ${best.change[0]?.toUpperCase()}${best.change.slice(1)} would add ${number}.`, 'soft');
    }
    return { ...units.of(answer.flowGpm, 'flow'), whereTo: 'to the scene', parts };
  }
  if (answer.question === 'settings') {
    if (answer.possible) {
      say('Yes. ', 'water');
      const pumps = answer.orders.map((order) => {
        const piece = pieceOf(plan, order.id);
        return `${piece ? nameOf(piece) : order.id} at ${units.text(order.pdpPsi, 'pressure')}`;
      });
      say(`${list(pumps)}. `);
      say(`${units.text(state.sceneIntakePsi, 'pressure')} left at ${sceneName}'s intake.`, 'soft');
    } else {
      say(`Not this way: ${units.text(answer.shortfallGpm, 'flow')} short. `, 'warning');
      say(limitSentence(plan, answer.failing, units.system));
    }
    return { ...units.of(answer.demandGpm, 'flow'), whereTo: 'for the scene', parts };
  }
  say(`${units.text(state.sceneIntakePsi, 'pressure')} at ${sceneName}'s intake. `);
  const passed = answered.limits.filter((one) => one.passed);
  const hard = passed.filter((one) => one.weight === 'hard');
  if (passed.length === 0) say('Within every limit.', 'soft');
  else if (hard.length === 0) say('Within every hard limit; see the cautions.', 'soft');
  else {
    const words = new Set(hard.map((one) => limitWords(plan, one, units.system)));
    say(`Passed: ${list([...words])}.`, 'warning');
  }
  return { ...units.of(state.sceneGpm, 'flow'), whereTo: 'to the scene, as set', parts };
}
