import { describe, expect, it } from 'vitest';
import {
  chooseSupply,
  draftAt,
  newDraft,
  newRig,
  type RespondingRig,
  type Situation,
  type WaterAtHand,
} from '../index.ts';

const engine = (number: number, arrivesMin: number): RespondingRig => ({
  rig: newRig(`E${number}`, 'attack', { ratedGpm: 1500, name: `Engine ${number}` }),
  kind: 'engine',
  arrivesMin,
  hose: [{ hose: '5', lengthFt: 600 }],
  assistValve: false,
});
const cistern = (more: Partial<WaterAtHand> = {}): WaterAtHand => ({
  draft: newDraft('W1', { name: 'Cistern', waterElevationFt: -12, altitudeFt: 1000 }),
  liftFt: 12,
  lengthFt: 400,
  ...more,
});
const situation = (water: WaterAtHand, demandGpm = 500): Situation => ({
  title: 'Barn',
  invented: true,
  scene: { name: 'Barn', elevationFt: 0 },
  demandGpm,
  rigs: [engine(1, 2), engine(2, 3)],
  hydrants: [],
  waters: [water],
  fillPlaces: [],
  department: {},
});
const drafted = (water: WaterAtHand, demandGpm?: number) =>
  chooseSupply(situation(water, demandGpm)).ways.find(({ kind }) => kind === 'draft')!;

describe('a way from open water', () => {
  it('carries lift, height and water with where each comes from', () => {
    const liftOrigin = { kind: 'measured', text: 'Taped' } as const;
    const [one] = drafted(cistern({ liftOrigin })).drafts!;
    expect(one).toMatchObject({
      sourceName: 'Cistern',
      rigName: 'Engine 2',
      liftFt: { value: 12, origin: liftOrigin },
      altitudeFt: { value: 1000 },
      waterTempF: { value: 60 },
      suction: { hose: '6', lengthFt: 20, count: 1 },
    });
    const [usual] = drafted(cistern()).drafts!;
    expect(usual!.liftFt.origin.kind).toBe('default');
  });

  it('says what the pump can do there at the pressure that the lay asks', () => {
    const [one] = drafted(cistern()).drafts!;
    const able = draftAt({
      liftFt: 12,
      altitudeFt: 1000,
      ratedGpm: 1500,
      dischargePsi: Math.max(20, one!.dischargePsi),
    });
    expect(one!.pumpMostGpm).toBeCloseTo(able.mostGpm, 6);
    expect(one!.bindingText).toMatch(/Engine 2/);
    // 60 to 70 % of the rating between 15 and 20 ft, all of it to 10 ("NWCG glossary, suction lift").
    expect(one!.ruleGpm).toBeGreaterThan(0.7 * 1500);
    expect(one!.ruleGpm).toBeLessThan(1500);
    expect(one!.vacuumInHg).toBeLessThan(one!.vacuumLimitInHg);
  });

  // 250 gpm for 2 h take 30,000 gal ("Highway Hydraulics" part 3, Fire Apparatus).
  it('counts how long limited water lasts: 30,000 gal at 250 gpm two hours, at 500 one', () => {
    const water = cistern({ usableGal: 30_000 });
    const hours = (demandGpm: number) => drafted(water, demandGpm).drafts![0]!.lastsMin! / 60;
    expect(hours(250)).toBeCloseTo(2, 6);
    expect(hours(500)).toBeCloseTo(1, 6);
    const warned = (demandGpm: number) =>
      drafted(water, demandGpm).notices.some(({ text }) => text.includes('less than the 2 hours'));
    expect([warned(249), warned(500)]).toEqual([false, true]);
    expect(drafted(water, 500).notices.find(({ text }) => text.includes('60 min'))).toMatchObject({
      level: 'caution',
      piece: 'W1',
    });
  });

  it('tells of the way to it, and of nothing where nothing is known', () => {
    const told = drafted(cistern({ access: 'Under the verge; cover key on Tender 1' }));
    expect(told.drafts![0]!.access).toBe('Under the verge; cover key on Tender 1');
    expect(told.notices.map(({ text }) => text)).toContain(
      'Access to Cistern: Under the verge; cover key on Tender 1.',
    );
    const plain = drafted(cistern());
    expect(plain.drafts![0]).not.toHaveProperty('lastsMin');
    expect(plain.notices.some(({ text }) => text.startsWith('Access'))).toBe(false);
  });
});
