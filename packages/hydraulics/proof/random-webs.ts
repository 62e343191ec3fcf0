/** Webs of anything joined to anything: no scene looks like this, and all must be solved. */
import type { NetworkDraft } from './network-draft.ts';

/** A tree grown from its sources, so that water can get everywhere, with links thrown across it. */
export function web(draft: NetworkDraft): void {
  const { random } = draft;
  const wet: string[] = [];
  for (let left = random.whole(1, 3); left > 0; left--) {
    const height = draft.near(0);
    const psi = random.between(-10, 150);
    const source = draft.node(height, { fixedPsi: psi });
    const outlet = draft.node(height);
    if (random.chance(0.5)) draft.loss(source, outlet, random.between(1, 30));
    else {
      draft.link({
        kind: 'supplyCurve',
        from: source,
        to: outlet,
        staticPsi: 80,
        residualPsi: random.between(0, 79),
        testGpm: random.scaled(100, 5000),
      });
    }
    wet.push(outlet);
  }
  const size = random.whole(2, random.chance(0.1) ? 60 : 16);
  for (let left = size; left > 0; left--) {
    const demandGpm = random.chance(0.05) ? random.between(0, 200) : undefined;
    const node = draft.node(draft.near(0), { demandGpm });
    join(draft, random.pick(wet), node);
    wet.push(node);
  }
  for (let left = random.whole(0, size); left > 0; left--) {
    const [one, two] = [random.pick(wet), random.pick(wet)];
    if (one !== two) join(draft, one, two);
  }
  for (let left = random.whole(1, 6); left > 0; left--) draft.opening(random.pick(wet));
  if (random.chance(0.3)) draft.relief(random.pick(wet));
}

function join(draft: NetworkDraft, from: string, to: string): void {
  const { random } = draft;
  const kind = random.whole(0, 9);
  if (kind <= 3) draft.supplyHose(from, to, random.chance(0.2));
  else if (kind <= 5) draft.attackHose(from, to);
  else if (kind <= 7) draft.loss(from, to, random.between(0, 20), 500, random.chance(0.3));
  else if (draft.heightOf(from) === draft.heightOf(to)) draft.pump(from, to);
  else {
    // A pump's intake and discharge stand at one height.
    const discharge = draft.node(draft.heightOf(from));
    draft.pump(from, discharge);
    draft.supplyHose(discharge, to);
  }
}
