import { byDefault, practice, standard } from '../catalogue/origins.ts';
import type { Origin } from '../plan/plan.ts';

/** What a shuttle is reckoned with where nothing of its own is given. */
export interface ShuttleValues {
  /** Share of a tank that reaches the portable tank [-]. */
  usableShare: number;
  /** Lost to starting and stopping on each leg [min]. */
  startMin: number;
  /** On the road [min/mi]. */
  minPerMi: number;
  /** Into a tender [gpm]. */
  fillGpm: number;
  /** Out of a tender [gpm]. */
  dumpGpm: number;
  /** At the fill site besides filling: into place, connect, break [min]. */
  fillHandlingMin: number;
  /** At the dump site besides dumping [min]. */
  dumpHandlingMin: number;
}

export const shuttleDefaults: Readonly<ShuttleValues> = {
  usableShare: 0.9,
  startMin: 0.65,
  minPerMi: 1.7,
  fillGpm: 1000,
  dumpGpm: 1000,
  fillHandlingMin: 2,
  dumpHandlingMin: 1,
};

export const shuttleDefaultOrigins: Readonly<Record<keyof ShuttleValues, Origin>> = {
  usableShare: practice(
    '"Water Shuttle Operations" lesson, Firehouse; water shuttle exam answers: a tenth spills or stays in the tank',
  ),
  startMin: practice('"Water Shuttle Operations" lesson, Firehouse'),
  minPerMi: practice('"Water Shuttle Operations" lesson, Firehouse: 35 mph'),
  fillGpm: practice('Driver/operator ch. 14 "by the numbers": fill at 1,000 gpm'),
  dumpGpm: standard('Tenders dump at 1,000 gpm or more on average (NFPA 1901, from memory)'),
  fillHandlingMin: byDefault('Common practice, no source: time your own'),
  dumpHandlingMin: byDefault('Common practice, no source: time your own'),
};
