import { describe, expect, it, test } from 'vitest';
import {
  boostedAtHydrant,
  draftSupply,
  forwardLay,
  mostWater,
  type Plan,
  relay,
  settingsFor,
  twoHydrants,
  whatNow,
} from '../index.ts';
import { supplyAsSet } from '../supply/as-set.ts';

const hydrant = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };
const lay = { hose: '5', lengthFt: 900, riseFt: 35 } as const;
const plans: [string, Plan][] = [
  ['a forward lay', forwardLay({ hydrant, lay })],
  ['a boosted lay', boostedAtHydrant({ hydrant, lay })],
  ['a draft', draftSupply()],
  ['a relay', relay({ hydrant })],
  ['two hydrants', twoHydrants({ first: { hydrant }, second: { hydrant } })],
];

const radio = (answer: { orders: { id: string; radio: string }[] }) =>
  answer.orders.map((order) => order.radio);
/** "120 gpm more" and "at 71 psi" in what is said. */
const offered = (words: string) => {
  const gpm = /([\d,]+) gpm more/.exec(words)?.[1];
  const psi = /with me at (\d+) psi/.exec(words)?.[1];
  return {
    gpm: gpm === undefined ? undefined : Number(gpm.replace(',', '')),
    psi: psi === undefined ? undefined : Number(psi),
  };
};

describe.each(plans)('what is said of %s', (_, plan) => {
  const mostGpm = mostWater(plan).flowGpm;

  it('at its most is that there is no more, and why', () => {
    for (const words of radio(mostWater(plan)).filter((one) => !one.startsWith('Not pumping'))) {
      expect(words).toMatch(/; at .*: (no more|hold what you have)\.$/);
      expect(words).not.toContain(' more, ');
    }
  });

  it.each([0.3, 0.6, 0.9])('offers what the whole supply has left, at %f of it', (share) => {
    const flowGpm = share * mostGpm;
    const answer = settingsFor(plan, flowGpm);
    for (const words of radio(answer)) {
      if (words.startsWith('Not pumping')) continue;
      expect(Math.abs(offered(words).gpm! - (mostGpm - flowGpm))).toBeLessThanOrEqual(0.5);
    }
  });

  it('names for each pump a pressure that brings what it offers, within every limit', () => {
    const answer = settingsFor(plan, 0.6 * mostGpm);
    const psi = new Map(answer.orders.map(({ id, radio: words }) => [id, offered(words).psi]));
    const raised: Plan = {
      ...answer.plan,
      rigs: answer.plan.rigs.map((rig) => {
        const pdpPsi = psi.get(rig.id);
        return pdpPsi === undefined ? rig : { ...rig, setting: { mode: 'governed', pdpPsi } };
      }),
    };
    const { flowGpm, limits } = supplyAsSet(raised, mostGpm);
    // A psi of rounding in what is said.
    expect(flowGpm).toBeGreaterThan(0.98 * mostGpm);
    for (const limit of limits.filter(({ weight, unit }) => weight === 'hard' && unit === 'psi'))
      expect(limit.margin).toBeGreaterThan(-1.5);
  });

  it('has a unit behind every figure', () => {
    for (const answer of [mostWater(plan), settingsFor(plan, mostGpm / 2), whatNow(plan)]) {
      for (const words of radio(answer)) {
        const bare = words.replace(/(?:Engine|Hydrant|Booster|H-?|[A-Z])\s?\d+/g, '');
        for (const [figure] of bare.matchAll(/\d[\d,.]*\d|\d/g))
          expect(bare).toMatch(new RegExp(`${figure} (psi|gpm|inHg)`));
      }
    }
  });
});

// A lay that gives 9 gpm more: the pump alone could add 140 psi, and the supply has none of it.
test('a pump with pressure to spare offers none of it where its intake stands at its least', () => {
  const weak = { staticPsi: 50, residualPsi: 30, testGpm: 600 };
  const plan = boostedAtHydrant({ hydrant: weak, lay });
  const most = mostWater(plan);
  const booster = most.state.rigs.find(({ id }) => id !== plan.scene)!;
  const asked = settingsFor(plan, most.flowGpm - 9);
  const [words] = radio(asked);
  expect(booster.capabilityPsi - booster.netPsi).toBeGreaterThan(50);
  expect(words).toContain('. 9 gpm more');
  expect(offered(words!).psi ?? asked.orders[0]!.pdpPsi).toBeLessThanOrEqual(booster.pdpPsi + 0.5);
});

test('in SI all is said in SI', () => {
  const plan = boostedAtHydrant({ hydrant, lay });
  const [words] = radio(settingsFor(plan, 700, { units: 'si' }));
  expect(words).toMatch(/^Set [\d.,]+ (kPa|bar); [\d.,]+ (kPa|bar) in\. [\d,]+ L\/min more/);
});

// A short lay from a strong main: more flows by itself than a small pump can add to.
test('a pump that adds nothing is told as at idle, not to be set under its intake', () => {
  const strong = { staticPsi: 90, residualPsi: 80, testGpm: 1500 };
  const told = (ratedGpm: number, lengthFt: number) => {
    const plan = boostedAtHydrant({ hydrant: strong, lay: { ...lay, lengthFt, riseFt: 0 } });
    const rigs = plan.rigs.map((rig) => (rig.id === plan.scene ? rig : { ...rig, ratedGpm }));
    const { state, orders } = mostWater({ ...plan, rigs });
    const booster = state.rigs.find(({ id }) => id !== plan.scene)!;
    return { booster, words: orders.find(({ id }) => id === booster.id)!.radio };
  };
  const idle = told(500, 100);
  expect(idle.booster.pdpPsi).toBeLessThan(idle.booster.intakePsi);
  const { pdpPsi, intakePsi } = idle.booster;
  expect(idle.words).toContain(
    `At idle, no boost: ${Math.round(pdpPsi)} psi out; ${Math.round(intakePsi)} psi in; `,
  );
  const boosting = told(500, 900);
  expect(boosting.booster.pdpPsi).toBeGreaterThan(boosting.booster.intakePsi);
  expect(boosting.words).toMatch(/^Set \d+ psi; \d+ psi in/);
});
