import { useEffect, useState } from 'react';
import { cameBack } from '../arrival.ts';

interface Left {
  drawn: number;
  scrollPx: number;
}

/** Lists as they were left, by address; forgotten with the page. */
const left = new Map<string, Left>();

/**
 * How many rows are drawn, kept with where the list was scrolled to: Back leads to the row that one
 * came from.
 * @param ready the rows stand on the page
 */
export function useListMemory(ready: boolean, atFirst: number) {
  const [address] = useState(() => window.location.pathname + window.location.search);
  const [before] = useState(() => (cameBack() ? left.get(address) : undefined));
  const [drawn, setDrawn] = useState(before?.drawn ?? atFirst);
  useEffect(() => {
    if (ready && before) window.scrollTo({ top: before.scrollPx });
  }, [ready, before]);
  useEffect(() => {
    const keep = () => {
      // The address changes before the page does: what is scrolled after that is another's.
      const here = window.location.pathname + window.location.search;
      if (window.location.pathname === address.split('?')[0]) {
        left.set(here, { drawn, scrollPx: window.scrollY });
      }
    };
    window.addEventListener('scroll', keep, { passive: true });
    return () => window.removeEventListener('scroll', keep);
  }, [address, drawn]);
  return [drawn, setDrawn] as const;
}
