/** Solves many random networks and checks every answer; `npm run prove` runs the full count. */
import { buildNetwork, NetworkError } from '@plugside/hydraulics';
import { checkAnswer } from './check-answer.ts';
import { randomNetwork } from './random-networks.ts';

export interface Proof {
  networks: number;
  /** `seed: what is wrong`. */
  failures: string[];
  /** Solves that took the slow method. */
  slow: number;
  /** Newton passes of all solves. */
  passes: number;
}

/** @param first seed of the first network @param count how many */
export function prove(first: number, count: number): Proof {
  const proof: Proof = { networks: count, failures: [], slow: 0, passes: 0 };
  for (let seed = first; seed < first + count; seed++) {
    const spec = randomNetwork(seed);
    try {
      const network = buildNetwork(spec).solve();
      proof.passes += network.iterations;
      const wrong = checkAnswer(spec, network);
      if (wrong.length > 0) proof.failures.push(`${seed}: ${wrong.slice(0, 3).join('; ')}`);
    } catch (error) {
      const reason =
        error instanceof NetworkError ? `${error.code}: ${error.message}` : String(error);
      proof.failures.push(`${seed}: ${reason}`);
    }
  }
  return proof;
}
