/** The answer as one line: a figure, and the words after it. */
import { type LimitCheck, nameOf, pieceOf } from '@plugside/fireground';
import type { Units } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';

export interface AnswerWords {
  number: string;
  unit: string;
  /** After the number: "to the scene". */
  whereTo: string;
  parts: { text: string; tone: 'plain' | 'water' | 'warning' | 'soft' }[];
}

/** Names a limit as the one that stops the answer: "The supply hose is the limit (185 psi)." */
export function limitSentence(limits: readonly LimitCheck[], units: Units): string {
  const names = limits.map((one) => {
    const kind = { psi: 'pressure', gpm: 'flow', 'ft/s': 'velocity', inHg: 'vacuum' } as const;
    return `${one.label} (${units.text(one.limit, kind[one.unit])})`;
  });
  if (names.length === 0) return '';
  const list = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  return `${names.length === 1 ? 'The limit is' : 'The limits are'} ${list}.`;
}

/** Builds the line for whichever question was asked. */
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
  if (answer.question === 'most water') {
    const flow = units.of(answer.flowGpm, 'flow');
    if (answer.noneReason) {
      parts.push({ text: answer.noneReason, tone: 'warning' });
    } else {
      if (gainGpm !== null && gainGpm > 0.5) {
        parts.push({ text: `+${units.number(gainGpm, 'flow')}`, tone: 'water' });
        parts.push({ text: ' over hydrant pressure alone. ', tone: 'plain' });
      }
      parts.push({ text: limitSentence(answer.binding, units), tone: 'warning' });
    }
    if (best && best.gainGpm > 0.5) {
      parts.push({
        text: ` More: ${best.change}, +${units.text(best.gainGpm, 'flow')}.`,
        tone: 'soft',
      });
    }
    return { number: flow.number, unit: flow.unit, whereTo: 'to the scene', parts };
  }
  if (answer.question === 'settings') {
    const flow = units.of(answer.demandGpm, 'flow');
    if (answer.possible) {
      const pumps = answer.orders.map((order) => {
        const piece = pieceOf(plan, order.id);
        return `${piece ? nameOf(piece) : order.id} at ${units.text(order.pdpPsi, 'pressure')}`;
      });
      parts.push({ text: 'Yes. ', tone: 'water' });
      parts.push({ text: `${pumps.join(', ')}. `, tone: 'plain' });
      parts.push({
        text: `${units.text(state.sceneIntakePsi, 'pressure')} left at the intake of ${sceneName}.`,
        tone: 'soft',
      });
    } else {
      parts.push({
        text: `Not this way: ${units.text(answer.shortfallGpm, 'flow')} short. `,
        tone: 'warning',
      });
      parts.push({ text: limitSentence(answer.failing, units), tone: 'plain' });
    }
    return { number: flow.number, unit: flow.unit, whereTo: 'for the scene', parts };
  }
  const flow = units.of(state.sceneGpm, 'flow');
  const passed = answered.limits.filter((one) => one.passed);
  parts.push({
    text: `${units.text(state.sceneIntakePsi, 'pressure')} at the intake of ${sceneName}. `,
    tone: 'plain',
  });
  parts.push(
    passed.length > 0
      ? { text: `Passed: ${passed.map((one) => one.label).join('; ')}.`, tone: 'warning' }
      : { text: 'Within every limit.', tone: 'soft' },
  );
  return { number: flow.number, unit: flow.unit, whereTo: 'to the scene as set', parts };
}
