/** What stood wrong while something was made to go wrong. */
import type { DrillScene } from './scene.ts';
import type { FaultSpan } from './tally-shape.ts';
import { faultWords } from './words/action-words.ts';

interface Span {
  fromTick: number;
  toTick: number;
}

/** Ticks in any of some spans, each counted once. */
export function unionTicks(spans: readonly Span[]): number {
  const sorted = [...spans].sort((a, b) => a.fromTick - b.fromTick);
  let ticks = 0;
  let end = Number.NEGATIVE_INFINITY;
  for (const { fromTick, toTick } of sorted) {
    ticks += Math.max(0, toTick - Math.max(end, fromTick));
    end = Math.max(end, toTick);
  }
  return ticks;
}

/** The faults of the instructor's that do harm: an extra line that is called is none. */
function harms({ fault }: FaultSpan): boolean {
  return fault.kind !== 'line called';
}

/** What was wrong by the instructor's hand at any time of a moment, in words; undefined: nothing. */
export function duringWords(
  scene: DrillScene,
  spans: readonly FaultSpan[],
  moment: Span,
): string | undefined {
  const words = spans
    .filter(harms)
    .filter(
      ({ fromTick, toTick }) =>
        fromTick <= moment.toTick && (toTick ?? Number.POSITIVE_INFINITY) >= moment.fromTick,
    )
    .map(({ fault }) => faultWords(scene, fault));
  return words.length === 0 ? undefined : [...new Set(words)].join('; ');
}

/** Ticks of some moments while any fault was in effect, each counted once. */
export function ticksInFaults(
  moments: readonly Span[],
  spans: readonly FaultSpan[],
  now: number,
): number {
  const cut = spans
    .filter(harms)
    .flatMap((span) =>
      moments.map(({ fromTick, toTick }) => ({
        fromTick: Math.max(fromTick, span.fromTick),
        toTick: Math.min(toTick, span.toTick ?? now),
      })),
    )
    .filter(({ fromTick, toTick }) => toTick > fromTick);
  return unionTicks(cut);
}
