import { formatQuantity } from '../units/format-quantity.ts';
import type { Quantity, UnitSystem } from '../units/quantities.ts';

/** A value inside a sentence, in its inside unit, so that it can be said in either system. */
export interface SpokenValue {
  value: number;
  quantity: Quantity;
}

/** What a test shows besides its numbers. */
export interface TestFinding {
  /** `error`: the test gives no curve. `caution`: it does, with a doubt. `fact`: worth knowing. */
  level: 'error' | 'caution' | 'fact';
  /** Stable name of the finding, for instance `small-drop`. */
  code: string;
  /** The sentence in US units; `findingText` says it in either system. */
  text: string;
  parts: readonly (string | SpokenValue)[];
}

export const psi = (value: number): SpokenValue => ({ value, quantity: 'pressure' });
export const gpm = (value: number): SpokenValue => ({ value, quantity: 'flow' });

function spoken(parts: TestFinding['parts'], system: UnitSystem): string {
  return parts
    .map((part) => {
      if (typeof part === 'string') return part;
      const { number, unit } = formatQuantity(part.value, part.quantity, system);
      return `${number} ${unit}`;
    })
    .join('');
}

/** A finding from a template: values in `${psi(…)}` and `${gpm(…)}` keep their quantity. */
export function finding(level: TestFinding['level'], code: string) {
  return (strings: TemplateStringsArray, ...values: (string | SpokenValue)[]): TestFinding => {
    const parts = strings.flatMap((text, index) => [text, values[index] ?? '']);
    return { level, code, parts, text: spoken(parts, 'us') };
  };
}

/** A finding as a sentence in the reader's units. */
export function findingText({ parts }: TestFinding, system: UnitSystem): string {
  return spoken(parts, system);
}

/** True where a finding keeps a test from being used. */
export function refused(findings: readonly TestFinding[]): boolean {
  return findings.some(({ level }) => level === 'error');
}
