/** Solves many random networks and checks every answer; `npm run prove` runs the full count. */
import { buildNetwork, NetworkError, type NetworkSpec } from '@plugside/hydraulics';
import { checkAnswer } from './check-answer.ts';
import { randomNetwork } from './random-networks.ts';
import { reachedByWater } from './reached-by-water.ts';

/** Passes after which the solver takes its slow method; only counted here. */
const QUICK_LIMIT = 40;

export interface Proof {
  networks: number;
  /** `seed: what is wrong`. */
  failures: string[];
  /** Networks refused because shut valves leave a demand with no water. */
  refused: number;
  /** Solves that took more passes than the quick method has, so that the slow one took over. */
  slow: number;
  quickLimit: number;
  /** Newton passes of all solves. */
  passes: number;
}

/** @param first seed of the first network @param count how many */
export function prove(first: number, count: number): Proof {
  const proof: Proof = {
    networks: count,
    failures: [],
    refused: 0,
    slow: 0,
    quickLimit: QUICK_LIMIT,
    passes: 0,
  };
  for (let seed = first; seed < first + count; seed++) {
    const spec = randomNetwork(seed);
    try {
      const network = buildNetwork(spec).solve();
      proof.passes += network.iterations;
      if (network.iterations > QUICK_LIMIT) proof.slow += 1;
      const wrong = checkAnswer(spec, network);
      if (wrong.length > 0) proof.failures.push(`${seed}: ${wrong.slice(0, 3).join('; ')}`);
    } catch (error) {
      if (refusedRightly(spec, error)) {
        proof.refused += 1;
        continue;
      }
      const reason =
        error instanceof NetworkError ? `${error.code}: ${error.message}` : String(error);
      proof.failures.push(`${seed}: ${reason}`);
    }
  }
  return proof;
}

/** Shut valves may leave a node that must have water with none; two held pressures may have no loss between them. */
function refusedRightly(spec: NetworkSpec, error: unknown): boolean {
  if (!(error instanceof NetworkError)) return false;
  if (error.code === 'conflicting fixed pressures') return losslessBetweenHeld(spec);
  if (error.code !== 'no source') return false;
  const wet = reachedByWater(spec);
  return spec.nodes.some(({ id, demandGpm }) => (demandGpm ?? 0) > 0 && !wet.has(id));
}

/** Whether links with next to no loss (pumps among them) join two sources, or a source and a relief valve without rise. */
function losslessBetweenHeld(spec: NetworkSpec): boolean {
  const part = new Map(spec.nodes.map(({ id }) => [id, id]));
  const find = (id: string): string => (part.get(id) === id ? id : find(part.get(id)!));
  for (const link of spec.links) {
    if (link.shut || !('to' in link)) continue;
    const lossless =
      (link.kind === 'loss' && link.lossPsi <= 0.001) ||
      (link.kind === 'hose' && link.lengthFt === 0) ||
      (link.kind === 'pump' && !link.passLoss?.lossPsi);
    if (lossless) part.set(find(link.from), find(link.to));
  }
  const held = [
    ...spec.nodes.filter(({ fixedPsi }) => fixedPsi !== undefined).map(({ id }) => id),
    ...spec.links
      .filter((link) => link.kind === 'relief' && link.risePsi === 0)
      .map(({ from }) => from),
  ].map(find);
  return new Set(held).size < held.length;
}
