/** Whole scenes as they are laid on the fireground, with sizes, heights and settings drawn at random. */
import type { NetworkDraft } from './network-draft.ts';

/** One to three supplies into an engine, and its lines. */
export function scene(draft: NetworkDraft): void {
  const { random } = draft;
  const height = random.between(0, 60);
  const intake = draft.node(height);
  const supplies = random.whole(1, 3);
  for (let left = supplies; left > 0; left--) supply(draft, intake, supplies > 1);
  attack(draft, intake);
  // Lines across, so that there are rings that are not only parallels.
  while (random.chance(0.25)) {
    const one = random.pick(draft.nodes);
    const two = random.pick(draft.nodes);
    if (one !== two && one.fixedPsi === undefined && two.fixedPsi === undefined) {
      draft.supplyHose(one.id, two.id, random.chance(0.2));
    }
  }
}

/** Pumps in line from a hydrant or a draft, up to forty. */
export function relay(draft: NetworkDraft): void {
  const { random } = draft;
  const count = random.chance(0.1) ? random.whole(10, 40) : random.whole(1, 6);
  let at = random.chance(0.7) ? hydrant(draft) : draftSource(draft);
  for (let left = count; left > 0; left--) {
    const discharge = draft.node(draft.heightOf(at));
    draft.pump(at, discharge);
    if (random.chance(0.2)) draft.relief(discharge);
    at = lay(draft, discharge, draft.node(draft.near(draft.heightOf(at))));
    if (random.chance(0.15)) draft.relief(at);
    if (random.chance(0.1)) supply(draft, at, true);
  }
  attack(draft, at);
}

function supply(draft: NetworkDraft, intake: string, shared: boolean): void {
  const { random } = draft;
  const kind = random.whole(0, 9);
  if (kind <= 4) {
    lay(draft, hydrant(draft), intake, shared && random.chance(0.5));
  } else if (kind <= 7) {
    boosted(draft, intake, shared);
  } else if (kind === 8) {
    const tank = draft.node(draft.heightOf(intake) + random.between(2, 10), { fixedPsi: 0 });
    draft.loss(tank, intake, random.between(2, 20), 500, random.chance(0.7));
  } else {
    const at = draftSource(draft);
    const out = draft.node(draft.heightOf(at));
    draft.pump(at, out);
    lay(draft, out, intake, true);
  }
}

/** @returns the node at the hydrant's outlets */
function hydrant(draft: NetworkDraft): string {
  const { random } = draft;
  const height = random.between(-20, 40);
  const staticPsi = random.chance(0.9) ? random.between(25, 120) : random.between(1, 300);
  const main = draft.node(height, { fixedPsi: staticPsi });
  const barrel = draft.node(height);
  draft.link({
    kind: 'supplyCurve',
    from: main,
    to: barrel,
    staticPsi,
    residualPsi: Math.max(-10, staticPsi * random.between(random.chance(0.1) ? -0.1 : 0.2, 0.98)),
    testGpm: random.scaled(draft.extreme ? 10 : 300, 5000),
  });
  if (random.chance(0.5)) return barrel;
  const outlet = draft.node(height);
  draft.loss(barrel, outlet, 5);
  return outlet;
}

/** @returns the intake of the pump that drafts */
function draftSource(draft: NetworkDraft): string {
  const { random } = draft;
  const height = random.between(-20, 20);
  const water = draft.node(height - random.between(2, 25), { fixedPsi: 0 });
  const strainer = draft.node(height - 2);
  const intake = draft.node(height);
  draft.loss(water, strainer, random.between(0.2, 2), 1000, random.chance(0.2));
  draft.link({
    kind: 'hose',
    from: strainer,
    to: intake,
    coefficient: random.pick([0.03, 0.05, 0.08]),
    lengthFt: random.between(10, 40),
  });
  return intake;
}

/** A hydrant assist valve with a booster beside it, and its lay. */
function boosted(draft: NetworkDraft, intake: string, shared: boolean): void {
  const { random } = draft;
  const outlet = hydrant(draft);
  const height = draft.heightOf(outlet);
  const [suctionPort, pumpIn, pumpOut, dischargePort, supplyPort] = [0, 1, 2, 3, 4].map(() =>
    draft.node(height),
  ) as [string, string, string, string, string];
  draft.loss(outlet, supplyPort, random.between(5, 23), 1000, true);
  const suction = draft.loss(outlet, suctionPort, random.between(1, 15));
  draft.supplyHose(suctionPort, pumpIn);
  draft.pump(pumpIn, pumpOut);
  draft.supplyHose(pumpOut, dischargePort);
  draft.loss(dischargePort, supplyPort, random.between(0, 5));
  for (let left = random.whole(0, 2); left > 0; left--) {
    const side = draft.node(height);
    draft.loss(outlet, side, 6, 500);
    draft.supplyHose(side, pumpIn, random.chance(0.3));
  }
  if (random.chance(0.15)) draft.links.find((link) => link.id === suction)!.shut = true;
  lay(draft, supplyPort, intake, shared && random.chance(0.5));
}

/** One to three lines from one place to another, in sections, with a manifold now and then. @returns `to` */
function lay(draft: NetworkDraft, from: string, to: string, check = false): string {
  const { random } = draft;
  for (let left = random.chance(0.7) ? 1 : random.whole(2, 3); left > 0; left--) {
    let at = from;
    for (let sections = random.chance(0.6) ? 1 : random.whole(2, 4); sections > 1; sections--) {
      const joint = draft.node(draft.near(draft.heightOf(at)));
      draft.supplyHose(at, joint, check && random.chance(0.3));
      if (random.chance(0.1)) line(draft, joint);
      at = joint;
    }
    draft.supplyHose(at, to, check);
  }
  return to;
}

function attack(draft: NetworkDraft, intake: string): void {
  const { random } = draft;
  const discharge = draft.node(draft.heightOf(intake));
  draft.pump(intake, discharge);
  if (random.chance(0.2)) draft.relief(random.pick([intake, discharge]));
  const lines = random.whole(1, 5);
  for (let left = lines; left > 0; left--) line(draft, discharge);
  if (random.chance(0.1)) {
    draft.node(0, { demandGpm: random.between(0, 500) });
    draft.attackHose(discharge, draft.nodes.at(-1)!.id);
  }
}

/** A valve, hose, sometimes a wye or a monitor, and openings. */
function line(draft: NetworkDraft, from: string): void {
  const { random } = draft;
  let at = from;
  if (random.chance(0.4)) {
    const gate = draft.node(draft.heightOf(at));
    draft.loss(at, gate, random.between(1, 12), 400);
    at = gate;
  }
  const end = draft.node(draft.near(draft.heightOf(at)));
  if (random.chance(0.2)) draft.loss(at, end, 15);
  else draft.attackHose(at, end);
  if (random.chance(0.25)) {
    for (let legs = random.whole(2, 3); legs > 0; legs--) {
      const tip = draft.node(draft.near(draft.heightOf(end)));
      draft.attackHose(end, tip);
      draft.opening(tip);
    }
  } else {
    draft.opening(end);
  }
}
