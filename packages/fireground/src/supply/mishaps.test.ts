import { supplyCurvePsi } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import {
  boostedAtHydrant,
  checkLimits,
  draftSupply,
  dualLines,
  mishaps,
  mostWater,
  newDraft,
  newHydrant,
  newLine,
  newPlan,
  newRig,
  type Plan,
  planNetwork,
  relay,
  reverseLay,
  settingsFor,
  twoHydrants,
  unassistedPlan,
} from '../index.ts';
import { readState } from '../network/read-state.ts';

const hydrant = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };
const boosted = boostedAtHydrant({ hydrant, lay: { hose: '5', lengthFt: 900, riseFt: 35 } });
const setTo = (plan: Plan, demandGpm: number): Plan => settingsFor(plan, demandGpm).plan;
const found = (plan: Plan, demandGpm: number, words: string) =>
  mishaps(setTo(plan, demandGpm), demandGpm).find(({ what }) => what.includes(words))!;

describe('a booster that stops on an assist valve', () => {
  const one = found(boosted, 1000, 'stops pumping');

  it('leaves what hydrant pressure gives: the clapper keeps it flowing', () => {
    const alone = mostWater(unassistedPlan(boosted)).flowGpm;
    // Through the clapper, and beside it through the pump that stands.
    expect(one.flowGpm).toBeGreaterThanOrEqual(alone - 0.5);
    expect(one.flowGpm).toBeLessThan(1000);
    expect(one.stillMeets).toBe(false);
    expect(one.text).toContain('clapper');
  });

  it('leaves the attack engine 20 psi by hand arithmetic', () => {
    // Both ways at once, clapper k = 10 and pump 8 + 5 + 3 psi at 1,000 gpm with 50 ft of 5 in: 4 more.
    const gpm = one.flowGpm;
    const conductance = 1000 / Math.sqrt(10) + 1000 / Math.sqrt(20);
    const intake =
      supplyCurvePsi(hydrant, gpm) -
      5 * (gpm / 1000) ** 2 -
      (gpm / conductance) ** 2 -
      0.08 * (gpm / 100) ** 2 * 9 -
      35 * 0.434;
    expect(intake).toBeCloseTo(20, 1);
  });
});

describe('a booster that need not pump at the demand', () => {
  const most = mostWater(boosted).flowGpm;
  const standing: Plan = {
    ...boosted,
    rigs: boosted.rigs.map((rig) =>
      rig.id === boosted.scene ? rig : { ...rig, setting: { mode: 'idle' } },
    ),
  };
  // Hydrant pressure through clapper and standing pump side by side.
  const alone = mostWater(standing).flowGpm;
  const demandGpm = Math.floor(alone) - 2;
  const set = setTo(boosted, demandGpm);

  it('is set to stand by', () => {
    expect(set.rigs.find(({ id }) => id !== set.scene)!.setting).toEqual({ mode: 'idle' });
  });

  it('pumps when more is wanted: all that the lay brings counts, not what comes without it', () => {
    const one = mishaps(set, demandGpm).find(({ what }) => what.includes('more hand line'))!;
    expect(demandGpm + 150).toBeGreaterThan(alone);
    expect(demandGpm + 150).toBeLessThan(most);
    expect(one.resetGpm).toBeCloseTo(demandGpm + 150, 1);
    expect(one.stillMeets).toBe(true);
  });

  it('makes up for a weaker hydrant', () => {
    const one = mishaps(set, demandGpm).find(({ what }) => what.includes('20 % less'))!;
    expect(one.flowGpm).toBeLessThan(demandGpm);
    const weak = { ...hydrant, testGpm: 0.8 * hydrant.testGpm };
    const lay = { hose: '5' as const, lengthFt: 900, riseFt: 35 };
    const withPump = mostWater(boostedAtHydrant({ hydrant: weak, lay })).flowGpm;
    expect(one.resetGpm).toBeCloseTo(Math.min(demandGpm, withPump), 1);
    expect(one.resetGpm).toBeGreaterThan(one.flowGpm + 1);
  });
});

describe('a line that is lost', () => {
  it('of two leaves what the other gives', () => {
    const plan = dualLines({ hydrant, lay: { hose: '5', lengthFt: 400 }, secondHose: '3' });
    const demandGpm = mostWater(plan).flowGpm - 5;
    const other = (id: string): number =>
      mostWater({ ...plan, lines: plan.lines.filter((line) => line.id !== id) }).flowGpm;
    const lost = mishaps(setTo(plan, demandGpm), demandGpm).filter(({ what }) =>
      what.includes('is lost'),
    );
    expect(lost.map(({ flowGpm }) => Math.round(flowGpm))).toEqual(
      ['lay', 'lay2'].map((id) => Math.round(other(id))),
    );
    expect(new Set(lost.map(({ what }) => what)).size).toBe(2);
  });

  it('and is the only one leaves nothing, and nothing can be set anew', () => {
    expect(found(boosted, 1000, 'is lost')).toMatchObject({
      flowGpm: 0,
      resetGpm: 0,
      stillMeets: false,
    });
  });

  it('between two pumps of a relay is one of them', () => {
    const lost = mishaps(setTo(relay({ hydrant }), 700), 700).filter(({ what }) =>
      what.includes('is lost'),
    );
    expect(lost).toHaveLength(2);
    expect(lost.every(({ flowGpm }) => flowGpm === 0)).toBe(true);
  });
});

describe('a weaker hydrant', () => {
  it('gives a fifth less at any pressure, and the pumps set anew make up what they can', () => {
    const one = found(boosted, 1000, '20 % less');
    const weak: Plan = {
      ...boosted,
      hydrants: boosted.hydrants.map((h) => ({ ...h, testGpm: 0.8 * h.testGpm })),
    };
    expect(one.resetGpm).toBeCloseTo(Math.min(1000, mostWater(weak).flowGpm), 3);
    expect(one.stillMeets).toBe(mostWater(weak).flowGpm >= 1000);
  });

  it('is not counted as met where the water comes past a limit', () => {
    const demandGpm = mostWater(boosted).flowGpm - 1;
    const one = found(boosted, demandGpm, '20 % less');
    expect(one.passed.length).toBeGreaterThan(0);
    expect(one.stillMeets).toBe(false);
    expect(one.text).toContain('within every limit');
  });
});

describe('one more hand line', () => {
  it('is met where there is room, after the pumps are set anew', () => {
    const one = found(boosted, 900, 'One more hand line');
    expect(one.resetGpm).toBeCloseTo(1050, 6);
    expect(one.flowGpm).toBeLessThan(1050);
    expect(one.stillMeets).toBe(true);
    expect(one.orders.length).toBe(2);
  });
});

describe('a relay pump that stops', () => {
  // 0.08·(Q/100)²·20 for 2,000 ft of 5 in, the stopped pump's own loss, level ground: what is left at
  // the attack engine is 20 psi.
  const strong = { staticPsi: 100, residualPsi: 90, testGpm: 2000 };
  const plan = relay({ hydrant: strong, lay: { hose: '5', lengthFt: 2000 }, ratedGpm: 2000 });
  const second = plan.rigs.find(({ id }) => id === 'P2')!;
  const passes = (pdpPsi: number) => {
    const { lossPsi, atGpm } = second.passLoss;
    return 100 * Math.sqrt((pdpPsi - 20) / (0.08 * 20 + lossPsi / (atGpm / 100) ** 2));
  };
  const set = setTo(plan, 1200);
  const [, one] = mishaps(set, 1200);

  it('passes what its stopped pump lets pass (by hand arithmetic)', () => {
    const { setting } = set.rigs.find(({ id }) => id === 'P1')!;
    expect(one!.what).toBe('Relay engine 1 stops pumping');
    expect(one!.flowGpm).toBeCloseTo(passes(setting.mode === 'governed' ? setting.pdpPsi : 0), 1);
  });

  it('set anew gives what the hose before it bears: 185 psi (by hand arithmetic)', () => {
    expect(one!.resetGpm).toBeCloseTo(passes(185), 1);
    expect(one!.shortfallGpm).toBeCloseTo(1200 - passes(185), 1);
    expect(one!.stillMeets).toBe(false);
  });

  it('gives no more by any setting within limits (the network solved at each)', () => {
    const stopped: Plan = {
      ...plan,
      rigs: plan.rigs.map((rig) => (rig.id === 'P2' ? { ...rig, setting: { mode: 'idle' } } : rig)),
    };
    let mostGpm = 0;
    for (let pdpPsi = 50; pdpPsi <= 250; pdpPsi += 2.5) {
      const tried: Plan = {
        ...stopped,
        rigs: stopped.rigs.map((rig) =>
          rig.id === 'P1' ? { ...rig, setting: { mode: 'governed', pdpPsi } } : rig,
        ),
      };
      const solved = planNetwork(tried, { part: 'supply' });
      for (let gpm = 10; gpm <= 1300; gpm += 10) {
        solved.network.setDemandGpm('P3:intake', gpm);
        solved.network.solve();
        const within = checkLimits(tried, readState(solved)).every(
          ({ passed, weight }) => weight !== 'hard' || !passed,
        );
        if (within) mostGpm = Math.max(mostGpm, gpm);
      }
    }
    expect(mostGpm).toBeGreaterThan(800);
    expect(one!.resetGpm).toBeGreaterThanOrEqual(mostGpm - 0.01);
    expect(one!.resetGpm).toBeLessThan(mostGpm + 10);
  });
});

describe('a pump that stops at draft', () => {
  const relayed = newPlan({
    title: 'Draft and relay',
    scene: 'A',
    drafts: [newDraft('W', { name: 'River', waterElevationFt: -10 })],
    rigs: [
      newRig('S', 'relay', { name: 'Source engine' }),
      newRig('R', 'relay', { name: 'Relay engine' }),
      newRig('A', 'attack', { name: 'Attack engine' }),
    ],
    lines: [
      newLine('suction', 'W.water', 'S.intake1', '6', 20),
      newLine('leg1', 'S.discharge1', 'R.intake1', '5', 1500),
      newLine('leg2', 'R.discharge1', 'A.intake1', '5', 1500),
    ],
  });

  it('leaves nothing, though a pump behind it would still draw', () => {
    expect(found(relayed, 700, 'Source engine stops')).toMatchObject({
      flowGpm: 0,
      resetGpm: 0,
      stillMeets: false,
      shortfallGpm: 700,
    });
  });

  it('leaves what other sources bring, and says whose water is gone', () => {
    const beside: Plan = {
      ...relayed,
      hydrants: [newHydrant('H', { ...hydrant, name: 'H-7' })],
      lines: [...relayed.lines, newLine('lay', 'H.steamer', 'A.intake2', '5', 400)],
    };
    const alone = mostWater({ ...beside, lines: beside.lines.slice(3) }).flowGpm;
    const one = found(beside, 1500, 'Source engine stops');
    expect(one.what).toBe('Source engine stops pumping, water from River');
    expect(one.flowGpm).toBeCloseTo(alone, 0);
    expect(one.shortfallGpm).toBeCloseTo(1500 - alone, 0);
    // A relay engine that nothing reaches any more raises nothing either.
    const lost = found(beside, 1500, 'The line Source engine to Relay engine is lost');
    expect(lost.resetGpm).toBeCloseTo(alone, 0);
    expect(lost.passed).toEqual([]);
    const dry: Plan = {
      ...beside,
      lines: beside.lines.map((line) => (line.id === 'leg1' ? { ...line, valve: 'shut' } : line)),
    };
    expect(mostWater(dry).flowGpm).toBeCloseTo(alone, 0);
  });
});

describe('the figures of any mishap', () => {
  const plans: [string, Plan, number][] = [
    ['boosted', boosted, 1000],
    ['a relay', relay({ hydrant }), 700],
    ['two lines', dualLines({ hydrant, lay: { hose: '5', lengthFt: 400 }, secondHose: '3' }), 1200],
    ['two hydrants', twoHydrants({ first: { hydrant }, second: { hydrant } }), 1500],
    ['a draft', draftSupply(), 600],
  ];

  it.each(plans)('of %s agree with each other', (_, plan, demandGpm) => {
    const all = mishaps(setTo(plan, demandGpm), demandGpm);
    for (const one of all) {
      const more = one.what.startsWith('One more hand line') ? 150 : 0;
      expect(one.wantedGpm).toBe(demandGpm + more);
      if (one.passed.length === 0) expect(one.resetGpm).toBeGreaterThanOrEqual(one.flowGpm);
      expect(one.resetGpm).toBeLessThanOrEqual(one.wantedGpm);
      expect(one.stillMeets).toBe(one.shortfallGpm === 0);
      if (!one.stillMeets) expect(one.shortfallGpm).toBeCloseTo(one.wantedGpm - one.resetGpm, 9);
      else expect(one.resetGpm).toBeGreaterThanOrEqual(one.wantedGpm - 0.5);
    }
    expect(all.some(({ stillMeets }) => !stillMeets)).toBe(true);
  });

  it('has no clapper where there is no valve', () => {
    const inLine = reverseLay({ hydrant, lay: { hose: '5', lengthFt: 900, riseFt: 35 } });
    const one = found(inLine, 900, 'stops pumping');
    expect(one.text).not.toContain('clapper');
    expect(one.text).toContain('Water passes through its pump');
  });
});

describe('other supplies', () => {
  it('one of two hydrants lost leaves the other', () => {
    const plan = twoHydrants({ first: { hydrant }, second: { hydrant } });
    const [first] = mishaps(setTo(plan, 1200), 1200);
    const alone = mostWater({ ...plan, lines: plan.lines.slice(1) }).flowGpm;
    expect(first?.flowGpm).toBeCloseTo(alone, 0);
  });

  it('a pump that stops at draft leaves nothing', () => {
    expect(found(draftSupply(), 500, 'stops pumping').flowGpm).toBe(0);
  });

  it('a second line from the booster goes on when the first is lost', () => {
    const plan: Plan = {
      ...boosted,
      lines: [...boosted.lines, newLine('lay2', 'B1.discharge2', 'A1.intake2', '3', 900)],
    };
    const lost = mishaps(setTo(plan, 1000), 1000).filter(({ what }) => what.includes('is lost'));
    expect(lost.map(({ flowGpm }) => flowGpm > 100)).toEqual([true, true]);
  });

  it('a way without a plan has none, no demand is refused', () => {
    expect(mishaps({ plan: null }, 500)).toEqual([]);
    expect(() => mishaps(boosted, 0)).toThrow('demandGpm is 0');
  });
});

describe('hydrants whose mains are not known', () => {
  const one = { hydrant, hose: '5', lengthFt: 300 } as const;
  const open = twoHydrants({ first: one, second: one });
  const named = (mains: [string, string]): Plan => ({
    ...open,
    hydrants: open.hydrants.map((one, at) => ({
      ...one,
      main: mains[at]!,
      mainFedFrom: `the source of ${mains[at]}`,
    })),
  });

  it('may share one: what comes then is what the plan with one main gives', () => {
    const most = mostWater(open).flowGpm;
    const shared = found(open, most - 1, 'share a main');
    expect(shared.what).toBe('Hydrant H1 and Hydrant H2 share a main');
    expect(shared.resetGpm).toBeCloseTo(mostWater(named(['m', 'm'])).flowGpm, 1);
    expect(shared.stillMeets).toBe(false);
    for (const mains of [
      ['m', 'm'],
      ['m', 'n'],
    ] as [string, string][]) {
      const words = mishaps(setTo(named(mains), 500), 500).map(({ what }) => what);
      expect(words.some((what) => what.includes('share a main'))).toBe(false);
    }
  });

  it('of one main weaken together: a fifth less of its flow at 20 psi, by the curve', () => {
    const plan = named(['m', 'm']);
    const words = mishaps(setTo(plan, 500), 500).map(({ what }) => what);
    expect(words).toContain(
      'The main of Hydrant H1 and Hydrant H2 gives 20 % less than their tests',
    );
    expect(words.filter((what) => what.includes('less than'))).toHaveLength(1);
    const weak = found(plan, mostWater(plan).flowGpm, 'less than their tests');
    const byHand = mostWater({
      ...plan,
      hydrants: plan.hydrants.map((one) => ({ ...one, testGpm: 0.8 * one.testGpm })),
    }).flowGpm;
    expect(weak.resetGpm).toBeCloseTo(byHand, 1);
  });
});
