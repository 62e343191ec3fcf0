/** Water in a portable tank between two events: what runs in, what is drawn, when it is full or dry. */

/** A tender emptying into the tank. */
export interface Dumping {
  /** Still aboard of its load [gal]. */
  leftGal: number;
  /** What its dump valve gives [gpm]. */
  dumpGpm: number;
}

/** Rates that hold until the next event [gpm]. */
export interface TankRates {
  /** Share of each dump valve that the tank has room for, 0 to 1. */
  dumpShare: number;
  inGpm: number;
  outGpm: number;
}

/** Gallons within which a tank is full or dry; far below a cupful. */
export const TANK_SLACK_GAL = 1e-7;

/**
 * What runs in and out just now. A full tank takes no more than is drawn from it: the tenders wait
 * with their valves half shut, and nothing is spilled. A dry one gives no more than runs in.
 */
export function tankRates(
  levelGal: number,
  capacityGal: number,
  dumping: readonly Dumping[],
  drawGpm: number,
): TankRates {
  const offeredGpm = dumping.reduce((total, { dumpGpm }) => total + dumpGpm, 0);
  const full = levelGal >= capacityGal - TANK_SLACK_GAL;
  const dry = levelGal <= TANK_SLACK_GAL;
  const inGpm = full ? Math.min(offeredGpm, drawGpm) : offeredGpm;
  const outGpm = dry ? Math.min(drawGpm, inGpm) : drawGpm;
  return { inGpm, outGpm, dumpShare: offeredGpm > 0 ? inGpm / offeredGpm : 0 };
}

/** Minutes until the tank fills, runs dry or a tender is empty at these rates; Infinity where none will. */
export function minutesToTankEvent(
  levelGal: number,
  capacityGal: number,
  dumping: readonly Dumping[],
  { inGpm, outGpm, dumpShare }: TankRates,
): number {
  let minutes = Number.POSITIVE_INFINITY;
  const netGpm = inGpm - outGpm;
  if (netGpm > 0) minutes = (capacityGal - levelGal) / netGpm;
  else if (netGpm < 0) minutes = levelGal / -netGpm;
  for (const { leftGal, dumpGpm } of dumping) {
    if (dumpShare > 0) minutes = Math.min(minutes, leftGal / (dumpGpm * dumpShare));
  }
  return Math.max(0, minutes);
}
