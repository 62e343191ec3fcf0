/** So many at once, and so many a second after that. */
export interface Allowance {
  /** Takes one, if there is one. */
  take(): boolean;
}

/** @param now [ms] */
export function allowance(atOnce: number, perS: number, now = () => performance.now()): Allowance {
  let [left, since] = [atOnce, now()];
  return {
    take: () => {
      const at = now();
      left = Math.min(atOnce, left + ((at - since) / 1000) * perS);
      since = at;
      if (left < 1) return false;
      left -= 1;
      return true;
    },
  };
}

/** Addresses that are remembered at once; the rest share what all of them may. */
const MOST_ADDRESSES = 10_000;

/** Wrong guesses, by the address that they come from. */
export interface Guesses {
  /** Whether that address may ask for another code. */
  mayAsk(address: string): boolean;
  /** It asked for one that is no drill's. */
  missed(address: string): void;
}

/** @param perMin for one address @param ofAllPerMin for all together */
export function guesses(perMin: number, ofAllPerMin: number): Guesses {
  const minute = 60_000;
  let misses = new Map<string, number>();
  let [all, began] = [0, performance.now()];
  const turn = () => {
    if (performance.now() - began < minute) return;
    [misses, all, began] = [new Map(), 0, performance.now()];
  };
  return {
    mayAsk: (address) => {
      turn();
      return all < ofAllPerMin && (misses.get(address) ?? 0) < perMin;
    },
    missed: (address) => {
      turn();
      all += 1;
      if (misses.size < MOST_ADDRESSES || misses.has(address)) {
        misses.set(address, (misses.get(address) ?? 0) + 1);
      }
    },
  };
}
