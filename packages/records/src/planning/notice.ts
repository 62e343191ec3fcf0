import {
  findingText,
  type Quantity,
  type SpokenValue,
  type TestFinding,
} from '@plugside/fireground';

/** What a plan took for granted, or cannot have: said beside it. Read it with `findingText`. */
export type PlanningNotice = TestFinding;

const value =
  (quantity: Quantity) =>
  (number: number): SpokenValue => ({ value: number, quantity });
export const ft = value('length');
export const gpm = value('flow');
export const psi = value('pressure');

/** A notice from a template: values in `${ft(…)}`, `${gpm(…)}` and `${psi(…)}` keep their quantity. */
export function notice(level: PlanningNotice['level'], code: string) {
  return (strings: TemplateStringsArray, ...values: (string | SpokenValue)[]): PlanningNotice => {
    const parts = strings.flatMap((text, index) => [text, values[index] ?? '']);
    return { level, code, parts, text: findingText({ level, code, parts, text: '' }, 'us') };
  };
}
