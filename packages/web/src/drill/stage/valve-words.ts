import type { ValveKind, ValveView } from '@plugside/drill';

/** Seconds for a slow move from one end to the other; ours, each slower than the hand can. */
const slowS: Readonly<Record<ValveKind, number>> = {
  'hydrant stem': 25,
  'hydrant gate': 12,
  'assist handle': 15,
  intake: 8,
  bleeder: 1,
  discharge: 8,
  'tank to pump': 3,
  'tank fill': 4,
  'appliance gate': 6,
  'nozzle bale': 3,
};

/** Kinds that are all open or all shut: a switch does. */
export function isSwitch(kind: ValveKind): boolean {
  return kind === 'bleeder';
}

/** How long a slow move takes [s], by how far it goes. */
export function slowMoveS(kind: ValveKind, from: number, to: number): number {
  return Math.max(1, Math.abs(to - from) * slowS[kind]);
}

/** How far open, in a word: "shut", "¼", "open". */
export function openingWord(opening: number, kind: ValveKind): string {
  if (opening < 0.01) return kind === 'assist handle' ? 'hydrant' : 'shut';
  if (opening > 0.99) return kind === 'assist handle' ? 'boost' : 'open';
  for (const [value, word] of [
    [0.25, '¼'],
    [0.5, '½'],
    [0.75, '¾'],
  ] as const)
    if (Math.abs(opening - value) < 0.03) return word;
  return `${Math.round(opening * 100)} %`;
}

/** The name of a valve with its piece's, so that it stands alone. */
export function valveName(
  { label, kind }: Pick<ValveView, 'label' | 'kind'>,
  piece: string,
): string {
  if (kind === 'nozzle bale') return `${piece}, bale`;
  return `${piece}, ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
}
