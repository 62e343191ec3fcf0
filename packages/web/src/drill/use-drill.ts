import type { DrillAction, DrillView, NoticedEvent, Problem } from '@plugside/drill';
import { useEffect, useState } from 'react';
import type { DrillLink, Told } from './link.ts';
import { addReadings, type GaugeHistory } from './stage/index.ts';

/** What a link has told so far. */
export interface Heard {
  view: DrillView | null;
  events: readonly NoticedEvent[];
  refused: { action: DrillAction; problem: Problem } | null;
  history: GaugeHistory;
  failed: string | null;
}

/** Events kept; older ones have been read. */
const EVENTS_KEPT = 40;

export const nothingHeard: Heard = {
  view: null,
  events: [],
  refused: null,
  history: {},
  failed: null,
};

/** What is known after one more thing was told. */
export function hear(before: Heard, told: Told): Heard {
  switch (told.told) {
    case 'view':
      return { ...before, view: told.view, history: addReadings(before.history, told.view) };
    case 'noticed':
      return { ...before, events: [...before.events, ...told.events].slice(-EVENTS_KEPT) };
    case 'refused':
      return { ...before, refused: { action: told.action, problem: told.problem } };
    case 'failed':
      return { ...before, failed: told.reason };
  }
}

/** Follows a link for as long as it is the one. */
export function useDrill(link: Pick<DrillLink, 'listen'> | null): Heard {
  const [heard, setHeard] = useState<Heard>(nothingHeard);
  useEffect(() => {
    setHeard(nothingHeard);
    return link?.listen((told) => setHeard((before) => hear(before, told)));
  }, [link]);
  return heard;
}
