/** Plays a drill again, away from the page's own thread. */
import type { DrillView } from '@plugside/drill';
import { type Played, type ReplayRecord, ReplayRun } from './replay-run.ts';

export type ToReplay = { tell: 'open'; record: ReplayRecord } | { tell: 'at'; tick: number };

export type FromReplay =
  | { told: 'progress'; share: number }
  | { told: 'played'; played: Played }
  | { told: 'view'; view: DrillView }
  | { told: 'failed'; reason: string };

let run: ReplayRun | undefined;

const tell = (told: FromReplay) => self.postMessage(told);

self.onmessage = ({ data }: MessageEvent<ToReplay>) => {
  try {
    if (data.tell === 'open') {
      run = new ReplayRun(data.record);
      const playing = run.play();
      for (let next = playing.next(); ; next = playing.next()) {
        if (next.done) {
          tell({ told: 'played', played: next.value });
          return;
        }
        tell({ told: 'progress', share: next.value });
      }
    }
    if (run) tell({ told: 'view', view: run.viewAt(data.tick) });
  } catch (error) {
    tell({ told: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
};
