/** Networks of every kind the solver takes, one for each seed. */
import type { NetworkSpec } from '@plugside/hydraulics';
import { NetworkDraft } from './network-draft.ts';
import { relay, scene } from './random-scenes.ts';
import { randomSource } from './random-source.ts';
import { web } from './random-webs.ts';

/** @returns the network of a seed: a scene, a relay, or a web of anything */
export function randomNetwork(seed: number): NetworkSpec {
  const random = randomSource(seed);
  const draft = new NetworkDraft(random, random.chance(0.3));
  const kind = random.whole(0, 9);
  if (kind <= 4) scene(draft);
  else if (kind <= 6) relay(draft);
  else web(draft);
  if (random.chance(0.3)) shutSome(draft);
  return draft.spec;
}

function shutSome({ random, links }: NetworkDraft): void {
  for (const link of links) if (random.chance(0.08)) link.shut = true;
}
