/**
 * The slow, sure way. Every element is given a small straight resistance at its ends. With it each
 * element's flow is a function of the heads, rising with its inlet's and falling with its outlet's,
 * and no faster than the resistance allows; the network has one answer, which moves steadily as the
 * resistance is taken away. It is taken away by steps, each starting from the last one's answer,
 * until the quick method settles what is left, or until no gauge would show what is left.
 */
import type { Core } from './core.ts';
import { newton } from './newton.ts';
import { march } from './time-steps.ts';

/** Resistances [psi/gpm]: the first outweighs most hose; under the next the quick method is tried; the last is worth 1e-5 psi at 1,000 gpm. */
const FIRST_RESISTANCE = 1;
const TRIED_UNDER = 0.02;
const LAST_RESISTANCE = 1e-8;

/** What is left of the resistance from one level to the next, as a rule. */
const USUAL_CUT = 0.25;
const MOST_LEVELS = 40;

/** Passes after which to give up [-]: some tenths of a second. */
const MOST_PASSES = 20_000;

/** Resistances unlike the first lead another way round a corner that the steps cannot take. */
const WAYS = 3;

/**
 * @param balanced whether the flows in the tables balance at every node
 * @returns true when the network settled
 */
export function continueToAnswer(core: Core, balanced: () => boolean): boolean {
  for (let way = 0; way < WAYS; way++) if (follow(core, way, balanced)) return true;
  return false;
}

function follow(core: Core, way: number, balanced: () => boolean): boolean {
  const { unknowns, head, dry } = core;
  let highest = 0;
  for (let i = unknowns; i < head.length; i++) highest = Math.max(highest, head[i]!);
  for (let i = 0; i < unknowns; i++) if (!dry[i]) head[i] = highest;
  const kept = Float64Array.from(head);
  let settledAt = Number.POSITIVE_INFINITY;
  let resistance = FIRST_RESISTANCE;
  let cut = USUAL_CUT;
  for (let level = 0; level < MOST_LEVELS && core.iterations < MOST_PASSES; level++) {
    if (march(core, resistance, way)) {
      settledAt = resistance;
      if (resistance <= LAST_RESISTANCE && balanced()) return true;
      kept.set(head);
      if (resistance < TRIED_UNDER) {
        if (newton(core, 24, false) && balanced()) return true;
        head.set(kept);
      }
      cut = Math.max(USUAL_CUT, cut * cut);
      resistance = Math.max(0.9 * LAST_RESISTANCE, resistance * cut);
    } else if (settledAt === Number.POSITIVE_INFINITY) {
      // Much resistance may set the answer far off, out of reach: try with less.
      resistance *= cut;
    } else {
      // Too far at once: back to where it settled, and a smaller cut.
      head.set(kept);
      cut = Math.sqrt(cut);
      resistance = settledAt * cut;
    }
  }
  return false;
}
