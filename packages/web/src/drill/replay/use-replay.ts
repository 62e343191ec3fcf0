import type { DrillView } from '@plugside/drill';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Played, ReplayRecord } from './replay-run.ts';
import type { FromReplay, ToReplay } from './replay-worker.ts';

export interface Replayed {
  /** How much has been played [0 … 1]. */
  share: number;
  /** Left out until all has been played. */
  played?: Played;
  /** The moment last asked for. */
  view?: DrillView;
  failed?: string;
}

/** A drill played again in a worker. @returns what it has told, and how to ask for a moment */
export function useReplay(record: ReplayRecord): [Replayed, (tick: number) => void] {
  const [replayed, setReplayed] = useState<Replayed>({ share: 0 });
  const worker = useRef<Worker | null>(null);
  // One moment is asked for at a time; of those asked for meanwhile the last counts.
  const busy = useRef(false);
  const wanted = useRef<number | null>(null);
  useEffect(() => {
    const opened = new Worker(new URL('./replay-worker.ts', import.meta.url), { type: 'module' });
    worker.current = opened;
    const tell = (message: ToReplay) => opened.postMessage(message);
    opened.onmessage = ({ data }: MessageEvent<FromReplay>) => {
      switch (data.told) {
        case 'progress':
          setReplayed((before) => ({ ...before, share: data.share }));
          return;
        case 'played':
          setReplayed((before) => ({ ...before, share: 1, played: data.played }));
          return;
        case 'view': {
          const tick = wanted.current;
          wanted.current = null;
          busy.current = tick !== null;
          if (tick !== null) tell({ tell: 'at', tick });
          setReplayed((before) => ({ ...before, view: data.view }));
          return;
        }
        case 'failed':
          setReplayed((before) => ({ ...before, failed: data.reason }));
      }
    };
    opened.onerror = () =>
      setReplayed((before) => ({ ...before, failed: 'It could not be played in this browser.' }));
    tell({ tell: 'open', record });
    return () => {
      opened.terminate();
      worker.current = null;
      busy.current = false;
    };
  }, [record]);
  const askFor = useCallback((tick: number) => {
    if (busy.current) {
      wanted.current = tick;
      return;
    }
    busy.current = true;
    worker.current?.postMessage({ tell: 'at', tick } satisfies ToReplay);
  }, []);
  return [replayed, askFor];
}
