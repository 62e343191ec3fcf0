/** The answer as one line: a figure, and the words after it. */
import {
  hoseCatalogue,
  type LimitCheck,
  nameOf,
  type Plan,
  pieceOf,
  type Quantity,
} from '@plugside/fireground';
import type { Units } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';

export interface AnswerWords {
  number: string;
  unit: string;
  /** After the number: "to the scene". */
  whereTo: string;
  parts: { text: string; tone: 'plain' | 'water' | 'warning' | 'soft' }[];
}

const QUANTITIES: Record<LimitCheck['unit'], Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  'ft/s': 'velocity',
  inHg: 'vacuum',
};

/** A limit in the middle of a sentence: "the supply hose (185 psi)". */
export function limitWords(check: LimitCheck, plan: Plan, units: Units): string {
  const at = ` (${units.text(check.limit, QUANTITIES[check.unit])})`;
  if (check.kind === 'hose pressure') {
    const line = plan.lines.find((one) => one.id === check.piece);
    const supply = line && hoseCatalogue[line.hose].limitClass === 'supply';
    return `${supply ? 'the supply hose' : 'the hose'}${at}`;
  }
  if (check.kind === 'main residual') return `the ${check.label.replace(/^Main/, 'main')}${at}`;
  if (check.kind === 'pump capability') return `${check.label.replace(/capability$/, 'pump')}${at}`;
  return `${check.label}${at}`;
}

function list(words: readonly string[]): string {
  return words.length < 2
    ? (words[0] ?? '')
    : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** Names what stops the answer from being greater; empty where nothing does. */
export function limitSentence(limits: readonly LimitCheck[], plan: Plan, units: Units): string {
  if (limits.length === 0) return '';
  const words = [...new Set(limits.map((one) => limitWords(one, plan, units)))];
  const start = list(words);
  const verb = words.length === 1 ? 'is the limit' : 'are the limits';
  return `${start[0]?.toUpperCase()}${start.slice(1)} ${verb}.`;
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
      say(limitSentence(answer.binding, plan, units), 'warning');
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
      say(limitSentence(answer.failing, plan, units));
    }
    return { ...units.of(answer.demandGpm, 'flow'), whereTo: 'for the scene', parts };
  }
  say(`${units.text(state.sceneIntakePsi, 'pressure')} at ${sceneName}'s intake. `);
  const passed = answered.limits.filter((one) => one.passed);
  const hard = passed.filter((one) => one.weight === 'hard');
  if (passed.length === 0) say('Within every limit.', 'soft');
  else if (hard.length === 0) say('Within every hard limit; see the cautions.', 'soft');
  else {
    const words = new Set(hard.map((one) => limitWords(one, plan, units)));
    say(`Passed: ${list([...words])}.`, 'warning');
  }
  return { ...units.of(state.sceneGpm, 'flow'), whereTo: 'to the scene, as set', parts };
}
