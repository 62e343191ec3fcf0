/** Water taken from a supply, from nursing tanks and from the attack engine's own, minute by minute. */
import type { FlowStep } from './timeline-input.ts';

export interface TankPlay {
  attackFlow: readonly FlowStep[];
  tankGal: number;
  /** In the order in which they give: the first gives all that it can. */
  nurses: readonly { fromMin: number; gallons: number; flowGpm: number }[];
  /** What all sources together give from a time on, in order of time; empty without a supply. */
  supply: readonly FlowStep[];
  untilMin: number;
}

export interface PlayedTanks {
  /** Corners of the attack tank's level: straight lines between. */
  tank: { atMin: number; gal: number }[];
  /** First time that the lines could not be given all they take; null where they always could. */
  runsDryAtMin: number | null;
  deliveredGal: number;
  /** Asked for but not there. */
  shortGal: number;
  fromSupplyGal: number;
  nurses: { usedGal: number; emptyAtMin: number | null }[];
}

/** Gallons that count as none. */
const NONE_GAL = 1e-9;
/** Lacking less than this is not lacking. */
const TRIFLE_GAL = 1e-6;

/**
 * Plays the tanks out. The supply goes first, then each nursing tank that is connected, then the
 * attack engine's own; nothing refills a tank. What none of them gives is short.
 */
export function playTanks(play: TankPlay): PlayedTanks {
  const { attackFlow, nurses, supply, untilMin } = play;
  const left = nurses.map(({ gallons }) => gallons);
  const emptyAt: (number | null)[] = nurses.map(() => null);
  let tankGal = play.tankGal;
  const tank = [{ atMin: 0, gal: tankGal }];
  let runsDryAtMin: number | null = null;
  let deliveredGal = 0;
  let shortGal = 0;
  let fromSupplyGal = 0;

  const corners = [
    ...attackFlow.map(({ atMin }) => atMin),
    ...nurses.map(({ fromMin }) => fromMin),
    ...supply.map(({ atMin }) => atMin),
    untilMin,
  ];
  let now = 0;
  while (now < untilMin) {
    const askedGpm = flowAt(attackFlow, now);
    const supplyGpm = Math.min(askedGpm, flowAt(supply, now));
    let missingGpm = askedGpm - supplyGpm;
    const nurseGpm = nurses.map((nurse, at) => {
      if (now < nurse.fromMin || left[at]! <= NONE_GAL) return 0;
      const gives = Math.min(missingGpm, nurse.flowGpm);
      missingGpm -= gives;
      return gives;
    });
    const tankGpm = tankGal > NONE_GAL ? missingGpm : 0;
    const shortGpm = missingGpm - tankGpm;

    let next = untilMin;
    for (const corner of corners) if (corner > now) next = Math.min(next, corner);
    if (tankGpm > 0) next = Math.min(next, now + tankGal / tankGpm);
    for (const [at, gpm] of nurseGpm.entries()) {
      if (gpm > 0) next = Math.min(next, now + left[at]! / gpm);
    }
    const minutes = next - now;
    tankGal -= tankGpm * minutes;
    if (tankGal <= 1e-7) tankGal = 0;
    for (const [at, gpm] of nurseGpm.entries()) {
      left[at]! -= gpm * minutes;
      if (gpm > 0 && left[at]! <= 1e-7) {
        left[at] = 0;
        emptyAt[at] = next;
      }
    }
    fromSupplyGal += supplyGpm * minutes;
    deliveredGal += (askedGpm - shortGpm) * minutes;
    // A tank that is empty as its relief comes is not dry for a rounding error's moment.
    const lackedGal = shortGpm * minutes;
    if (lackedGal > TRIFLE_GAL) {
      runsDryAtMin ??= now;
      shortGal += lackedGal;
    }
    now = next;
    tank.push({ atMin: now, gal: tankGal });
  }
  return {
    tank: withoutIdleCorners(tank),
    runsDryAtMin,
    deliveredGal,
    shortGal,
    fromSupplyGal,
    nurses: nurses.map(({ gallons }, at) => ({
      usedGal: gallons - left[at]!,
      emptyAtMin: emptyAt[at]!,
    })),
  };
}

/** What the lines take, or the supply gives, at a time [gpm]. */
export function flowAt(steps: readonly FlowStep[], atMin: number): number {
  let flowGpm = 0;
  for (const step of steps) if (step.atMin <= atMin) flowGpm = step.flowGpm;
  return flowGpm;
}

/** Leaves out corners on a straight level line. */
function withoutIdleCorners(corners: PlayedTanks['tank']): PlayedTanks['tank'] {
  return corners.filter(
    ({ gal }, at) =>
      at === 0 ||
      at === corners.length - 1 ||
      gal !== corners[at - 1]!.gal ||
      gal !== corners[at + 1]!.gal,
  );
}
