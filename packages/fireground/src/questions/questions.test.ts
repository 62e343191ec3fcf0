import { describe, expect, it } from 'vitest';
import {
  addAttackLines,
  addMasterStream,
  boostedAtHydrant,
  coefficientBand,
  compareBoost,
  improvements,
  mostWater,
  type Plan,
  relay,
  settingsFor,
  sideSuctionLines,
  supplyCurves,
  sweep,
  twoHydrants,
  unassistedPlan,
  whatNow,
} from '../index.ts';

/** 900 ft of 5 in, 35 ft up, from a middling hydrant; S2 of the cases an independent solver answered. */
const hillLay = (more: Parameters<typeof boostedAtHydrant>[0] = {}): Plan =>
  boostedAtHydrant({
    hydrant: { staticPsi: 62, residualPsi: 44, testGpm: 1060 },
    lay: { hose: '5', lengthFt: 900, riseFt: 35 },
    ...more,
  });

const twoHandLines = [
  { hose: '1-3/4', lengthFt: 200, nozzle: { kind: 'fog', ratedGpm: 150, ratedPsi: 100 } },
  { hose: '2-1/2', lengthFt: 200, nozzle: { kind: 'smooth-bore', tipIn: 1.125, ratedPsi: 50 } },
] as const;

const rigOf = (state: { rigs: { id: string }[] }, id: string) =>
  state.rigs.find((rig) => rig.id === id) as ReturnType<typeof whatNow>['state']['rigs'][number];

describe('how do I set it', () => {
  it('sets the hand line by hand arithmetic: nozzle + friction + height', () => {
    const plan = hillLay({ attackLines: [twoHandLines[0]] });
    const answer = settingsFor(plan);
    // 100 psi at the nozzle + 15.5·1.5²·2 friction: "Florida pump-operations examination answers" give 69.75.
    expect(rigOf(answer.state, 'A1').pdpPsi).toBeCloseTo(100 + 69.75, 6);
    expect(answer.possible).toBe(true);
  });

  it('gates the easier line down to its own need', () => {
    const plan = hillLay({ attackLines: twoHandLines });
    const answer = settingsFor(plan);
    const smoothGpm = 29.7 * 1.125 ** 2 * Math.sqrt(50);
    const smoothNeed = 50 + 2 * (smoothGpm / 100) ** 2 * 2;
    const gate = answer.orders.find((order) => order.id === 'A1')?.gate;
    expect(gate).toHaveLength(1);
    expect(gate?.[0]?.lossPsi).toBeCloseTo(169.75 - smoothNeed, 4);
    for (const nozzle of answer.state.nozzles) {
      expect(nozzle.pressurePsi).toBeCloseTo(nozzle.ratedPsi, 3);
      expect(nozzle.flowGpm).toBeCloseTo(nozzle.ratedGpm, 3);
    }
  });

  it('gates both lines into a master stream, so that its tip gets its own', () => {
    const plan = addMasterStream(hillLay({ attackLines: [twoHandLines[0]] }), 'A1', { lines: 2 });
    const found = whatNow(settingsFor(plan).plan);
    expect(found.state.nozzles).toHaveLength(2);
    for (const nozzle of found.state.nozzles) {
      expect(nozzle.pressurePsi).toBeCloseTo(nozzle.ratedPsi, 3);
    }
  });

  it('gives settings which, set so, do what was promised', () => {
    const plan = hillLay({ attackLines: twoHandLines });
    const promised = settingsFor(plan);
    const found = whatNow(promised.plan);
    expect(found.state.sceneGpm).toBeCloseTo(promised.demandGpm, 2);
    expect(found.state.sceneIntakePsi).toBeCloseTo(promised.state.sceneIntakePsi, 3);
    found.state.nozzles.forEach((nozzle) => {
      expect(nozzle.pressurePsi).toBeCloseTo(nozzle.ratedPsi, 3);
    });
  });

  it('keeps the next intake at its least and no more: 20 psi + friction + height + the valve', () => {
    const answer = settingsFor(hillLay(), 1000);
    // 0.08·10²·9 in the lay, 35 ft at 0.434, 3 psi in the valve at 1,000 gpm, 0.08·10²·0.25 in 25 ft.
    expect(rigOf(answer.state, 'B1').pdpPsi).toBeCloseTo(20 + 72 + 35 * 0.434 + 3 + 2, 4);
  });

  it('says how much is missing, and where it fails', () => {
    const answer = settingsFor(hillLay(), 1500);
    expect(answer.possible).toBe(false);
    // The independent solver's greatest flow for this lay is 1,304.999 gpm.
    expect(answer.shortfallGpm).toBeCloseTo(1500 - 1304.999, 1);
    expect(answer.failing.map((limit) => limit.kind)).toContain('booster intake');
  });

  it('refuses a demand of nothing', () => {
    expect(() => settingsFor(hillLay(), 0)).toThrow(/demand is 0 gpm/);
    expect(() => settingsFor(hillLay(), Number.NaN)).toThrow(/above 0/);
  });
});

describe('what would raise it next', () => {
  it('names side lines and their gain, and what binds after', () => {
    // Independent solver: 1,304.999 without, 1,394.842 with a 3 in and a 5 in line; then hose pressure.
    const found = improvements(hillLay()).find((one) => one.change.includes('3 in and a 5 in'));
    expect(found?.gainGpm).toBeCloseTo(1394.842 - 1304.999, 1);
    expect(found?.thenBinding.map((limit) => limit.kind)).toEqual(['hose pressure']);
  });

  it('puts a booster where there is none', () => {
    const plan = hillLay({ booster: null });
    const found = improvements(plan).find((one) => one.change === 'a booster at the hydrant');
    expect(found?.flowGpm).toBeCloseTo(1304.999, 1);
  });
});

describe('what happens now', () => {
  it('opens the clapper and shuts the suction with the handle at hydrant', () => {
    const plan = unassistedPlan(hillLay({ attackLines: twoHandLines }));
    const valve = whatNow(plan).state.assistValves[0]!;
    expect(valve.clapper).toBe('open');
    expect(valve.suctionGpm).toBe(0);
    expect(valve.clapperGpm).toBeGreaterThan(100);
  });

  it('shuts the clapper once the booster passes the hydrant', () => {
    const at = (pdpPsi: number) =>
      whatNow(hillLay({ attackLines: twoHandLines, booster: { pdpPsi } })).state.assistValves[0]!;
    expect(at(50).clapper).toBe('open');
    expect(at(120).clapper).toBe('shut');
  });

  it('keeps water flowing when the booster stops, through the clapper', () => {
    const boosted = hillLay({ attackLines: twoHandLines });
    const lost: Plan = {
      ...boosted,
      rigs: boosted.rigs.map((rig) =>
        rig.id === 'B1' ? { ...rig, setting: { mode: 'idle' } } : rig,
      ),
    };
    expect(whatNow(lost).state.sceneGpm).toBeGreaterThan(200);
  });

  it('takes no water through a clapper stuck shut', () => {
    const plan = unassistedPlan(hillLay({ attackLines: twoHandLines }));
    const stuck: Plan = {
      ...plan,
      appliances: plan.appliances.map((a) =>
        a.kind === 'assist-valve' ? { ...a, clapperStuck: 'shut' } : a,
      ),
    };
    expect(whatNow(stuck).state.sceneGpm).toBe(0);
  });

  it('warns of water running back into a weaker main', () => {
    const plan = addAttackLines(
      twoHydrants({
        first: { hydrant: { staticPsi: 90, residualPsi: 80, testGpm: 1500 } },
        second: { hydrant: { staticPsi: 40, residualPsi: 25, testGpm: 600 } },
      } as never),
      'A1',
      [twoHandLines[0]],
    );
    const answer = whatNow(plan);
    expect(answer.state.hydrants.some((hydrant) => hydrant.flowGpm < 0)).toBe(true);
    expect(answer.notices.some((notice) => notice.text.includes('runs back into the main'))).toBe(
      true,
    );
  });
});

describe('shut-off', () => {
  it('puts nearly all of the booster on the attack engine: its setting less height', () => {
    const plan = hillLay({ booster: { pdpPsi: 185 }, attackLines: twoHandLines });
    const { shutOff } = whatNow(plan);
    const intake = shutOff.intakes.find((one) => one.id === 'A1')!;
    expect(intake.shutPsi).toBeCloseTo(185 - 35 * 0.434, 4);
    expect(intake.passed).toBe(true);
    expect(shutOff.notices[0]?.text).toMatch(/170 psi comes onto Attack engine's intake/);
  });
});

describe('hydrant pressure alone against boosted', () => {
  it('finds the lay length past which the demand needs the boost', () => {
    const plan = { ...hillLay(), demandGpm: 600 };
    const { boostPays, boostPaysFromFt, gainGpm } = compareBoost(plan);
    expect(gainGpm).toBeCloseTo(1304.999 - 505.602, 1);
    expect(boostPays).toBe('from length');
    // By hand: 62 − 18·(600/1060)^(1/0.54) − 5·0.36 − 10·0.36 − 15.19 − 20 left for 0.08·36 per 100 ft.
    const left = 62 - 18 * (600 / 1060) ** (1 / 0.54) - 15 * 0.36 - 35 * 0.434 - 20;
    expect(boostPaysFromFt).toBeCloseTo((left / (0.08 * 36)) * 100, -1);
  });

  it('says when no length needs it, and when none is short enough', () => {
    expect(compareBoost({ ...hillLay(), demandGpm: 1200 }).boostPays).toBe('at any length');
    expect(compareBoost({ ...hillLay(), demandGpm: 5000 }).boostPays).toBe('demand out of reach');
    expect(compareBoost({ ...hillLay(), demandGpm: 60 }).boostPays).toBe('not for this demand');
  });
});

describe('limits', () => {
  it("takes the department's own", () => {
    const plan = hillLay();
    const stricter: Plan = { ...plan, department: { limits: { boosterIntakePsi: 20 } } };
    const answer = mostWater(stricter);
    expect(answer.flowGpm).toBeLessThan(1304);
    expect(answer.binding[0]?.limit).toBe(20);
    expect(answer.binding[0]?.origin.kind).toBe('department');
  });

  it('leaves no hard limit passed at the greatest flow', () => {
    for (const plan of [
      hillLay(),
      sideSuctionLines(hillLay(), [{ hose: '5' }]),
      relay({ pumps: 3 }),
    ]) {
      const { limits, binding } = mostWater(plan);
      expect(limits.filter((limit) => limit.weight === 'hard' && limit.margin < -1e-3)).toEqual([]);
      expect(binding.length).toBeGreaterThan(0);
    }
  });
});

describe('what if', () => {
  it("gets less water the longer the lay, once the booster's intake no longer holds it", () => {
    const rows = sweep(hillLay(), { vary: 'lay length', values: [200, 400, 800, 1600, 3200] });
    rows.slice(1).forEach((row, at) => {
      expect(row.flowGpm).toBeLessThan(rows[at]!.flowGpm + 1e-3);
    });
    expect(rows[0]!.flowGpm - rows[4]!.flowGpm).toBeGreaterThan(300);
  });

  it('gets no less water as the booster is raised', () => {
    const plan = hillLay({ attackLines: twoHandLines });
    const rows = sweep(plan, { vary: 'pdp', values: [60, 80, 100, 140, 180] });
    rows.slice(1).forEach((row, at) => {
      expect(row.flowGpm).toBeGreaterThanOrEqual(rows[at]!.flowGpm - 1e-6);
      expect(row.sceneIntakePsi).toBeGreaterThan(rows[at]!.sceneIntakePsi);
    });
  });

  it('refuses a rig that is not in the plan', () => {
    expect(() => sweep(hillLay(), { vary: 'pdp', values: [100], rig: 'E99' })).toThrow(
      /no rig "E99"/,
    );
  });

  it('shows what the coefficient of 5 in hose is worth', () => {
    const { low, high } = coefficientBand(
      sideSuctionLines(hillLay(), [{ hose: '3' }, { hose: '5' }]),
      'lay',
    );
    expect(high.flowGpm).toBeCloseTo(1394.842, 1);
    expect(low.flowGpm).toBeGreaterThan(high.flowGpm + 50);
  });
});

describe('supply curves', () => {
  it('fall with flow and end at the greatest flow', () => {
    const curves = supplyCurves(hillLay());
    expect(curves.map((curve) => curve.id)).toEqual(['alone', 'boosted', 'more suction']);
    for (const curve of curves) {
      curve.points.slice(1).forEach((point, at) => {
        expect(point.flowGpm).toBeGreaterThan(curve.points[at]!.flowGpm);
        expect(point.intakePsi).toBeLessThan(curve.points[at]!.intakePsi);
      });
    }
    expect(curves[0]?.points[0]?.intakePsi).toBeCloseTo(62 - 35 * 0.434, 6);
    expect(curves[1]?.points[0]?.intakePsi).toBeCloseTo(185 - 35 * 0.434, 6);
  });
});

describe('a valve shut on the way', () => {
  const shut = (): Plan => {
    const plan = hillLay({ attackLines: [twoHandLines[0]] });
    return {
      ...plan,
      lines: plan.lines.map((line) => (line.id === 'lay' ? { ...line, valve: 'shut' } : line)),
    };
  };

  it('is why there is no water, by name', () => {
    const answer = mostWater(shut());
    expect(answer.flowGpm).toBe(0);
    expect(answer.noneReason).toMatch(/valve is shut on the way.*Attack engine/);
  });

  it('leaves the whole demand missing', () => {
    const answer = settingsFor(shut());
    expect(answer.possible).toBe(false);
    expect(answer.shortfallGpm).toBeCloseTo(150, 6);
  });
});

describe('large plans', () => {
  it('answers a relay of 40 pumps', () => {
    const answer = mostWater(relay({ pumps: 40 }));
    expect(answer.flowGpm).toBeGreaterThan(100);
    expect(answer.state.rigs.length).toBeGreaterThanOrEqual(40);
  });
});
