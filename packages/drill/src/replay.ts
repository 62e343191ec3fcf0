import type { Submitted } from './action.ts';
import { createDrill, restoreDrill } from './drill.ts';
import type { DrillLog } from './log.ts';
import type { Drill } from './running-drill.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';
import { step } from './step.ts';

/** A state that was kept, to go back to without running from the start. */
export interface Keyframe {
  tick: number;
  state: DrillState;
}

/** The drill's state as it stands, to be kept. */
export function keyframeOf({ state }: Drill): Keyframe {
  return { tick: state.tick, state: structuredClone(state) };
}

/**
 * The drill as it stood at a tick, made again from its log: what was refused is refused again, and what
 * happened by itself happens again. Run on from there, it is a drill of its own.
 * @param log the whole log; what it says after the tick is left out
 * @param tick the tick it should stand at, before anything that was done at it [ticks ≥ 0]; where the log
 *   leaves the drill paused before, it stands there
 * @param keyframes of the same drill, in any order
 */
export function replayTo(
  scene: DrillScene,
  seed: number,
  log: DrillLog,
  tick: number,
  keyframes: readonly Keyframe[] = [],
): Drill {
  let from: Keyframe | undefined;
  for (const one of keyframes) if (one.tick <= tick && one.tick > (from?.tick ?? -1)) from = one;
  const drill = from
    ? restoreDrill(
        scene,
        from.state,
        log.filter((entry) => entry.seq < from.state.seq),
      )
    : createDrill(scene, seed);
  const rest = log.filter((entry) => entry.seq >= drill.state.seq && entry.tick < tick);
  runOn(drill, rest, tick);
  return drill;
}

/**
 * A drill played again from its beginning: yields it at its first tick, after every so many, and at the
 * end. It is one drill that moves on: what is to be kept of it is to be taken at once.
 * @param log the whole log; what it says after the tick is left out
 * @param tick where it ends [ticks ≥ 0]; where the log leaves the drill paused before, it ends there
 * @param everyTicks between two yields [whole number ≥ 1]
 */
export function* replayThrough(
  scene: DrillScene,
  seed: number,
  log: DrillLog,
  tick: number,
  everyTicks: number,
): Generator<Drill, void> {
  const drill = createDrill(scene, seed);
  const rest = log.filter((entry) => entry.tick < tick);
  yield drill;
  let next = 0;
  while (drill.state.tick < tick) {
    const from = drill.state.tick;
    const until = Math.min(tick, from + everyTicks);
    next += runOn(drill, rest.slice(next), until);
    if (drill.state.tick > from) yield drill;
    if (drill.state.tick < until) return;
  }
}

/** Runs a drill to a tick by what is left of its log. @returns how many entries were taken in */
function runOn(drill: Drill, rest: DrillLog, tick: number): number {
  let next = 0;
  while (drill.state.tick < tick) {
    const now: Submitted[] = [];
    for (; next < rest.length && rest[next]!.tick <= drill.state.tick; next++) {
      const entry = rest[next]!;
      if (entry.kind === 'event') continue;
      const { role, action, byComputer } = entry;
      now.push(byComputer ? { role, action, byComputer } : { role, action });
    }
    step(drill, now);
    if (drill.state.paused) break;
  }
  return next;
}
