import { useEffect, useState } from 'react';
import { arrive } from '../arrival.ts';

interface Left {
  drawn: number;
  scrollPx: number;
}

/** Lists as they were left, by the browser's entry; forgotten with the page. */
const left = new Map<string, Left>();

/**
 * How many rows are drawn, kept with where the list was scrolled to: Back leads to the row that one
 * came from.
 * @param ready the rows stand on the page
 */
export function useListMemory(ready: boolean, atFirst: number) {
  const [before] = useState(() => left.get(arrive().entry));
  const [drawn, setDrawn] = useState(before?.drawn ?? atFirst);
  useEffect(() => {
    if (ready && before) window.scrollTo({ top: before.scrollPx });
  }, [ready, before]);
  useEffect(() => {
    if (!ready) return;
    const path = window.location.pathname;
    const keep = () => {
      // The address changes before the page does: what is scrolled after that is another's.
      if (window.location.pathname !== path) return;
      left.set(arrive().entry, { drawn, scrollPx: window.scrollY });
    };
    window.addEventListener('scroll', keep, { passive: true });
    return () => window.removeEventListener('scroll', keep);
  }, [ready, drawn]);
  return [drawn, setDrawn] as const;
}
