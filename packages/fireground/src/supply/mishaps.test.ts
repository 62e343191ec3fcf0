import { supplyCurvePsi } from '@plugside/hydraulics';
import { describe, expect, it } from 'vitest';
import {
  boostedAtHydrant,
  draftSupply,
  dualLines,
  mishaps,
  mostWater,
  newLine,
  type Plan,
  relay,
  settingsFor,
  twoHydrants,
  unassistedPlan,
} from '../index.ts';

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
