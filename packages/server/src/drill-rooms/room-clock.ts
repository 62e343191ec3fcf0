/** One timer for all rooms. */

export interface Beat {
  /** Later than it was due [ms]. */
  lateMs: number;
  /** What it took [ms]. */
  tookMs: number;
  /** Of that, the steps of all rooms [ms]; the rest is views. */
  stepsMs: number;
  /** Ticks of all rooms together. */
  ticks: number;
}

export interface ClockWork {
  /** Nothing to do: the timer stops until it is woken. */
  isIdle(): boolean;
  /** @param behind the beats before took long */
  beat(elapsedMs: number, count: number, behind: boolean): Pick<Beat, 'stepsMs' | 'ticks'>;
  told(beat: Beat): void;
}

export interface RoomClock {
  wake(): void;
  stop(): void;
}

/** A beat takes at most this share of its time before views are halved. */
const BUSY_SHARE = 0.6;

/**
 * Beats at fixed moments. One that comes late is told how much time has passed; beats that were
 * missed altogether are not made up for, so that a machine that falls behind does not fall further.
 */
export function startClock(beatMs: number, work: ClockWork): RoomClock {
  let timer: NodeJS.Timeout | undefined;
  let [lastMs, dueMs, count] = [0, 0, 0];
  let busyShare = 0;
  let stopped = false;

  const next = () => {
    const nowMs = performance.now();
    dueMs = Math.max(dueMs + beatMs, nowMs + 1);
    timer = setTimeout(run, dueMs - nowMs);
    timer.unref();
  };
  const run = () => {
    timer = undefined;
    if (stopped || work.isIdle()) return;
    const nowMs = performance.now();
    const lateMs = nowMs - dueMs;
    count += 1;
    const done = work.beat(nowMs - lastMs, count, busyShare > BUSY_SHARE);
    lastMs = nowMs;
    const tookMs = performance.now() - nowMs;
    busyShare += (tookMs / beatMs - busyShare) * 0.1;
    work.told({ lateMs, tookMs, ...done });
    next();
  };
  return {
    wake: () => {
      if (timer || stopped) return;
      lastMs = performance.now();
      dueMs = lastMs;
      next();
    },
    stop: () => {
      stopped = true;
      clearTimeout(timer);
      timer = undefined;
    },
  };
}
