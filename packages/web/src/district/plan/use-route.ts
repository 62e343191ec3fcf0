import type { Place, Route } from '@plugside/records/streets';
import { useEffect, useRef, useState } from 'react';
import type { StreetService } from '../streets/street-service.ts';

export interface FoundRoute {
  route: Route;
  /** What it was asked for: hydrant, places between, building. */
  points: readonly Place[];
}

/**
 * The hose's way through given points. While it is being worked out the one before stays, and of
 * many asked for meanwhile only the last is worked out: a drag never queues.
 */
export function useRoute(
  streets: StreetService,
  points: readonly Place[] | null,
): { found: FoundRoute | null; problem: string | null } {
  const [found, setFound] = useState<FoundRoute | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const wanted = useRef<readonly Place[] | null>(null);
  const busy = useRef(false);
  useEffect(() => {
    wanted.current = points;
    if (!points) {
      setFound(null);
      setProblem(null);
      return;
    }
    const work = async () => {
      if (busy.current) return;
      busy.current = true;
      let done: readonly Place[] | null = null;
      while (wanted.current && wanted.current !== done) {
        const now: readonly Place[] = wanted.current;
        done = now;
        try {
          const route = await streets.ask({ ask: 'route', points: now });
          if (wanted.current) setFound({ route, points: now });
          setProblem(null);
        } catch (error) {
          setProblem(error instanceof Error ? error.message : String(error));
        }
      }
      busy.current = false;
    };
    void work();
  }, [points, streets]);
  return { found, problem };
}
