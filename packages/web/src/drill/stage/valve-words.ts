import type { ValveKind, ValveView } from '@plugside/drill';

/** Seconds for a slow move from shut to open; ours, each slower than the hand can, and than is judged too fast. */
const opensSlowlyS: Readonly<Record<ValveKind, number>> = {
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

/**
 * Seconds in which a valve that hose hammers at is shut slowly, whatever it stood open: by the rule for slow
 * closing, ΔP = 0.070·Δv·L/t ("Water-hammer equations"), the flow that any shipped evolution comes to at such a
 * valve makes a surge of less than 50 psi, under which nothing is told. A bale: 150 gpm in 200 ft of 1¾ in,
 * 0.070 · 20.0 ft/s · 200 ft / 50 psi = 5.6 s.
 */
const shutsSlowlyS: Readonly<Partial<Record<ValveKind, number>>> = {
  intake: 19,
  discharge: 10,
  'nozzle bale': 6,
};

/** Kinds that are all open or all shut: a switch does. */
export function isSwitch(kind: ValveKind): boolean {
  return kind === 'bleeder';
}

/** How long a slow move takes [s]: opening by how far it goes, shutting by how much of the flow it stops. */
export function slowMoveS(kind: ValveKind, from: number, to: number): number {
  const shutsS = shutsSlowlyS[kind];
  const s =
    to < from && shutsS !== undefined
      ? (1 - to / from) * shutsS
      : Math.abs(to - from) * opensSlowlyS[kind];
  return Math.max(1, s);
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
