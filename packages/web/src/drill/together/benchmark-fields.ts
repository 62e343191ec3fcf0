/** Benchmarks that a department sets for its drills, in the order judged. */
import { type Benchmarks, defaultBenchmarks } from '@plugside/drill';
import { keep, kept } from '../../plan-store/device-memory.ts';

export interface BenchmarkField {
  key: keyof Benchmarks;
  label: string;
  kind: 'seconds' | 'pressure' | 'count' | 'percent';
  min: number;
  max: number;
}

export const benchmarkFields: readonly BenchmarkField[] = [
  {
    key: 'interruptedS',
    label: 'Water interrupted at most',
    kind: 'seconds',
    min: 0,
    max: 3600,
  },
  { key: 'boostWithinS', label: 'Boosted within', kind: 'seconds', min: 1, max: 7200 },
  { key: 'intakePsi', label: 'An intake should keep', kind: 'pressure', min: 0, max: 100 },
  { key: 'intakeUnderS', label: 'and may be under it for', kind: 'seconds', min: 0, max: 3600 },
  { key: 'mainPsi', label: 'The main should keep', kind: 'pressure', min: 0, max: 100 },
  { key: 'mainUnderS', label: 'and may be under it for', kind: 'seconds', min: 0, max: 3600 },
  { key: 'hoseOverS', label: 'A hose over its limit for', kind: 'seconds', min: 0, max: 3600 },
  { key: 'surgesOverLimit', label: 'Valves shut too fast', kind: 'count', min: 0, max: 100 },
  { key: 'openedFast', label: 'Valves opened too fast', kind: 'count', min: 0, max: 100 },
  { key: 'hydrantOpenS', label: 'A hydrant is opened in', kind: 'seconds', min: 1, max: 120 },
  { key: 'handleOpenS', label: 'An assist valve’s handle in', kind: 'seconds', min: 1, max: 120 },
  { key: 'largeOpenS', label: 'An intake or large valve in', kind: 'seconds', min: 1, max: 120 },
  { key: 'lineOpenS', label: 'A line’s discharge in', kind: 'seconds', min: 1, max: 120 },
  { key: 'nozzleSwingPsi', label: 'Swing at a nozzle', kind: 'pressure', min: 1, max: 200 },
  { key: 'swingWindowS', label: 'counted within', kind: 'seconds', min: 0.1, max: 60 },
  { key: 'stepsOutOfOrder', label: 'Steps out of order', kind: 'count', min: 0, max: 100 },
  { key: 'wrongConnections', label: 'Wrong connections', kind: 'count', min: 0, max: 100 },
  { key: 'messagesMissed', label: 'Messages missed', kind: 'count', min: 0, max: 100 },
  { key: 'stepsUndone', label: 'Steps left undone', kind: 'count', min: 0, max: 100 },
  { key: 'unsafeActs', label: 'Unsafe acts', kind: 'count', min: 0, max: 100 },
  { key: 'extraLineS', label: 'An extra line flows within', kind: 'seconds', min: 1, max: 3600 },
];

const MEMORY = 'plugside.drill-benchmarks';

/** Those that the department has set on this device; the others are ours. */
export function keptBenchmarks(): Partial<Benchmarks> {
  try {
    const read: unknown = JSON.parse(kept(MEMORY) ?? '{}');
    if (typeof read !== 'object' || read === null) return {};
    const given = read as Record<string, unknown>;
    return Object.fromEntries(
      benchmarkFields.flatMap(({ key, min, max }) => {
        const value = given[key];
        const sound = typeof value === 'number' && value >= min && value <= max;
        return sound ? [[key, value]] : [];
      }),
    );
  } catch {
    return {};
  }
}

export function keepBenchmarks(own: Partial<Benchmarks>): void {
  keep(MEMORY, JSON.stringify(own));
}

/** The department's value, taken out where it is the same as ours or was cleared. */
export function withOwn(
  own: Partial<Benchmarks>,
  key: keyof Benchmarks,
  value: number | undefined,
): Partial<Benchmarks> {
  const { [key]: _, ...others } = own;
  if (value === undefined || value === defaultBenchmarks[key]) return others;
  return { ...others, [key]: value };
}
