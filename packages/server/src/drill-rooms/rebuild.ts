/** A drill as it was when it was last written, made again from what was written. */
import {
  type Drill,
  type DrillLog,
  type DrillScene,
  type Keyframe,
  type LogEntry,
  replayTo,
  type Submitted,
  step,
} from '@plugside/drill';
import type { DrillLogRow, DrillRun } from '@plugside/records';

export interface Rebuilt {
  drill: Drill;
  /** By sender: the greatest number of an action that was written. */
  lastSeqs: Map<string, number>;
}

/**
 * Replays from the last keyframe to the tick that was written, and does what was done at that very
 * tick, where the drill stood paused.
 */
export function rebuilt(run: DrillRun, rows: readonly DrillLogRow[]): Rebuilt {
  const scene = run.scene as DrillScene;
  const log = rows.map(({ entry }) => entry as LogEntry) as DrillLog;
  const keyframes = run.keyframe === undefined ? [] : [run.keyframe as Keyframe];
  const drill = replayTo(scene, run.seed, log, run.tick, keyframes);
  const rest = log.flatMap((entry): Submitted[] => {
    if (entry.kind === 'event' || entry.seq < drill.state.seq) return [];
    const { role, action, byComputer } = entry;
    return [byComputer ? { role, action, byComputer } : { role, action }];
  });
  if (rest.length > 0) step(drill, rest);
  const lastSeqs = new Map<string, number>();
  for (const { sender, clientSeq } of rows) {
    if (sender === undefined || clientSeq === undefined) continue;
    lastSeqs.set(sender, Math.max(clientSeq, lastSeqs.get(sender) ?? 0));
  }
  return { drill, lastSeqs };
}
