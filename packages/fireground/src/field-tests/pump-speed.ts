import { waterHorsepower } from '@plugside/hydraulics';

/** One reading of a pump test. */
export interface PumpReading {
  flowGpm: number;
  /** Net pump pressure [psi]. */
  netPsi: number;
  speedRpm?: number | undefined;
}

/** A reading brought to another speed. */
export interface ReadingAtSpeed extends PumpReading {
  /** As measured. */
  measured: PumpReading;
  /** What holds it: the speed asked for, or the power that the test proved. */
  heldBy: 'speed' | 'power' | 'measured';
}

/**
 * Readings brought to one speed by the affinity laws, as far as the engine's power is proven:
 * a reading goes up no further than the greatest water horsepower of the test, since a faster
 * pump takes the cube of the speed from its engine. Readings without a speed stay as measured.
 *   Q ∝ n, P ∝ n², power ∝ n³
 * @param readings of one test [gpm], [psi], [rpm]
 * @param fullSpeedRpm speed to bring them to [rpm]
 * Valid: centrifugal pumps, away from cavitation.
 * Source: affinity laws, in any pump text (from memory); the cap by power is ours.
 */
export function atFullSpeed(
  readings: readonly PumpReading[],
  fullSpeedRpm: number,
): ReadingAtSpeed[] {
  const power = (one: PumpReading) => waterHorsepower(one.flowGpm, one.netPsi);
  const provenHp = Math.max(0, ...readings.map(power));
  return readings.map((measured) => {
    const { speedRpm } = measured;
    if (!speedRpm) return { ...measured, measured, heldBy: 'measured' };
    const wanted = fullSpeedRpm / speedRpm;
    const hp = power(measured);
    const allowed = hp > 0 ? Math.cbrt(provenHp / hp) : Number.POSITIVE_INFINITY;
    const ratio = Math.min(wanted, allowed);
    return {
      flowGpm: measured.flowGpm * ratio,
      netPsi: measured.netPsi * ratio ** 2,
      speedRpm: speedRpm * ratio,
      measured,
      heldBy: ratio < wanted ? 'power' : 'speed',
    };
  });
}

/**
 * The outline of what a pump has shown: readings that no other beats in both flow and pressure,
 * by rising flow, as a capability takes them. Left of the least flow the pressure is held at
 * the greatest that was measured, because nothing more was proven. Null where nothing flowed.
 */
export function provenOutline(
  readings: readonly PumpReading[],
): [flowGpm: number, netPsi: number][] | null {
  const byFlow = [...readings].sort((a, b) => b.flowGpm - a.flowGpm || b.netPsi - a.netPsi);
  const outline: [number, number][] = [];
  let bestPsi = 0;
  for (const { flowGpm, netPsi } of byFlow) {
    if (netPsi <= bestPsi) continue;
    outline.unshift([flowGpm, netPsi]);
    bestPsi = netPsi;
  }
  const first = outline[0];
  if (!first) return null;
  if (first[0] > 0) outline.unshift([0, first[1]]);
  return outline.length > 1 ? outline : null;
}

/**
 * Pressure of a later test as a share of an earlier one's at the same flow for the speed:
 * mean over the readings whose flow per speed lies within the earlier test's. 1 is no wear.
 * Null where speeds are missing or the two do not overlap.
 *   Q/n and P/n² do not change with speed
 * Source: affinity laws, in any pump text (from memory).
 */
export function headShare(
  earlier: readonly PumpReading[],
  later: readonly PumpReading[],
): number | null {
  const bare = (readings: readonly PumpReading[]) =>
    readings.flatMap(({ flowGpm, netPsi, speedRpm }): [number, number][] =>
      speedRpm ? [[flowGpm / speedRpm, netPsi / speedRpm ** 2]] : [],
    );
  const from = bare(earlier).sort((a, b) => a[0] - b[0]);
  const shares = bare(later).flatMap(([flow, head]) => {
    const above = from.findIndex(([at]) => at >= flow - 1e-12);
    if (above < 0) return [];
    const high = from[above]!;
    const low = from[above - 1] ?? high;
    if (above === 0 && flow < high[0] - 1e-12) return [];
    const along = high[0] === low[0] ? 0 : (flow - low[0]) / (high[0] - low[0]);
    const then = low[1] + along * (high[1] - low[1]);
    return then > 0 ? [head / then] : [];
  });
  return shares.length > 0 ? shares.reduce((a, b) => a + b, 0) / shares.length : null;
}
