import { pitotFlowGpm } from '@plugside/hydraulics';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { findingText } from './finding.ts';
import { flowTestResult, planSupply } from './flow-test.ts';
import type { FlowTestEntry } from './flow-test-entry.ts';
import { publicFlowTests } from './published/public-flow-tests.ts';

const codes = (entry: FlowTestEntry, today?: string) =>
  flowTestResult(entry, { today }).notices.map(({ code }) => code);

const entry = (over: Partial<FlowTestEntry> = {}): FlowTestEntry => ({
  testedOn: '2024-05-20',
  staticPsi: 80,
  residualPsi: 55,
  flowing: [{ hydrant: 'H-2', outletIn: 2.5, coefficient: 0.9, pitotPsi: 20 }],
  ...over,
});

describe('flow tests out of public reports', () => {
  const stating = publicFlowTests.filter(({ statedQ20Gpm }) => statedQ20Gpm !== undefined);
  test.each(stating.map((row) => [`${row.place}: ${row.source.title}`, row] as const))(
    'state the flow at 20 psi that comes out here, to the whole gpm: %s',
    (_, row) => {
      const result = flowTestResult({ ...row, flowing: [], statedFlowGpm: row.flowGpm });
      expect(Math.abs(result.q20Gpm! - row.statedQ20Gpm!)).toBeLessThanOrEqual(0.5);
    },
  );

  test.each(stating.map((row) => [row.place, row] as const))(
    'have pitots that agree with their stated flow through a rounded 2½ in outlet: %s',
    (_, row) => {
      const outlet = { outletIn: 2.5, coefficient: 0.9, pitotPsi: row.pitotPsi! };
      const found = flowTestResult({ ...row, flowing: [outlet], statedFlowGpm: row.flowGpm });
      expect(Math.abs(found.flowGpm! / row.flowGpm - 1)).toBeLessThan(0.02);
      expect(found.notices.map(({ code }) => code)).not.toContain('stated-disagrees');
    },
  );

  it('is neither clamped nor refused where the main was drawn below 20 psi', () => {
    const deep = publicFlowTests.filter(({ residualPsi }) => residualPsi < 20);
    expect(deep).toHaveLength(3);
    for (const row of deep) {
      const result = flowTestResult({ ...row, flowing: [], statedFlowGpm: row.flowGpm });
      expect(result.q20Gpm).toBeLessThan(row.flowGpm);
      expect(result.curve!(row.flowGpm)).toBeCloseTo(row.residualPsi, 9);
      expect(result.notices.map(({ code }) => code)).toContain('below-20');
    }
  });

  it('doubts the two whose drop is under 10 %, as their sources show 5.6 and 8 %', () => {
    const doubted = publicFlowTests.filter((row) =>
      codes({ ...row, flowing: [], statedFlowGpm: row.flowGpm }).includes('small-drop'),
    );
    expect(doubted.map(({ place }) => place)).toEqual(['Fifth and Lincoln', 'Castlegate Drive']);
  });
});

describe('worked examples', () => {
  it('is 789 gpm and 980 at 20 psi: Water-supply analysis, slides 15 and 16 (tkolb.net)', () => {
    const found = flowTestResult(
      entry({
        staticPsi: 86,
        residualPsi: 42,
        flowing: [{ outletIn: 2.5, coefficient: 0.8, pitotPsi: 28 }],
      }),
    );
    expect(Math.abs(found.flowGpm! - 789)).toBeLessThan(1);
    expect(Math.abs(found.q20Gpm! - 980)).toBeLessThan(5);
    expect(Math.abs(found.curve!(500) - 67)).toBeLessThan(1);
    expect(found.class?.name).toBe('B');
  });

  it('is 1,061 gpm at 40 psi on a rounded 2½ in outlet: engineers’ forum quoting NFPA 291', () => {
    const found = flowTestResult(
      entry({ flowing: [{ outletIn: 2.5, coefficient: 0.9, pitotPsi: 40 }] }),
    );
    expect(Math.abs(found.flowGpm! - 1061)).toBeLessThan(1);
  });

  it('takes the pumper outlet’s 0.83: 1,189 gpm at 9 psi on 4 in, NFPA 291 in the engineers’ forum', () => {
    const open = (coefficient: number) =>
      flowTestResult(entry({ flowing: [{ outletIn: 4, coefficient, pitotPsi: 9 }] }));
    expect(open(1).outlets[0]?.multiplier).toBe(0.83);
    expect(Math.abs(open(1).flowGpm! - 1189)).toBeLessThan(1);
    // A flow tube straightens the stream, so it takes its own coefficient alone (from memory).
    expect(open(0.95).outlets[0]?.multiplier).toBeUndefined();
  });

  it.each([
    [1499, 'A', 'green'],
    [1500, 'AA', 'light blue'],
    [999, 'B', 'orange'],
    [499, 'C', 'red'],
  ] as const)('%i gpm at 20 psi is class %s, %s: NFPA 291 in Firehouse', (gpm, name, colour) => {
    // A residual of 20 makes the tested flow the flow at 20 psi.
    const found = flowTestResult(entry({ residualPsi: 20, flowing: [], statedFlowGpm: gpm }));
    expect(found.class).toMatchObject({ name, colour });
  });
});

describe('what flowed', () => {
  it('adds pitots and meters of several hydrants', () => {
    const found = flowTestResult(
      entry({
        flowing: [
          { hydrant: 'H-2', outletIn: 2.5, coefficient: 0.9, pitotPsi: 16 },
          { hydrant: 'H-2', outletIn: 2.5, coefficient: 0.8, pitotPsi: 16 },
          { hydrant: 'H-3', flowGpm: 640 },
        ],
      }),
    );
    // 29.84·6.25·4·(0.9 + 0.8) + 640, by hand.
    expect(found.flowGpm).toBeCloseTo(29.84 * 6.25 * 4 * 1.7 + 640, 6);
    expect(found.outlets.map((each) => each?.from)).toEqual(['pitot', 'pitot', 'meter']);
  });

  it('asks about a stated flow further than 5 % from the pitots, and keeps the pitots', () => {
    const pitots = pitotFlowGpm(2.5, 0.9, 20);
    expect(codes(entry({ statedFlowGpm: pitots * 1.04 }))).not.toContain('stated-disagrees');
    const off = entry({ statedFlowGpm: pitots * 1.07 });
    expect(codes(off)).toContain('stated-disagrees');
    expect(flowTestResult(off).flowGpm).toBeCloseTo(pitots, 6);
  });

  it('prefers a stated flow to an outlet whose size had to be assumed', () => {
    const found = flowTestResult(entry({ flowing: [{ pitotPsi: 20 }], statedFlowGpm: 760 }));
    expect(found).toMatchObject({ flowGpm: 760, flowFrom: 'stated' });
    const alone = flowTestResult(entry({ flowing: [{ pitotPsi: 20 }] }));
    expect(alone.flowGpm).toBeCloseTo(pitotFlowGpm(2.5, 0.9, 20), 6);
    expect(alone.notices.map(({ code }) => code)).toContain('outlet-assumed');
  });

  it('refuses a total with an outlet missing, and a test with no flow at all', () => {
    const half = flowTestResult(entry({ flowing: [{ flowGpm: 500 }, { outletIn: 2.5 }] }));
    expect(half).toMatchObject({ flowGpm: null, q20Gpm: null, class: null, curve: null });
    expect(codes(entry({ flowing: [] }))).toContain('no-flow');
    expect(planSupply(entry({ flowing: [] }))).toBeNull();
  });
});

describe('what to doubt', () => {
  it('refuses a residual above or at static, saying so', () => {
    const swapped = flowTestResult(entry({ staticPsi: 50, residualPsi: 80 }));
    expect(swapped.notices[0]).toMatchObject({ level: 'error', code: 'residual-above-static' });
    expect(swapped.notices[0]!.text).toContain('80 psi is above static 50 psi');
    expect(swapped.curve).toBeNull();
    expect(codes(entry({ residualPsi: 80 }))).toContain('no-drop');
  });

  it.each([
    [72.1, 'small-drop'],
    [71, 'drop-under-25'],
    [60.1, 'drop-under-25'],
  ])('residual %d of static 80: %s', (residualPsi, code) => {
    expect(codes(entry({ residualPsi }))).toContain(code);
  });

  it('is content with a drop of a quarter', () => {
    const found = codes(entry({ residualPsi: 60 }));
    expect(found).not.toContain('drop-under-25');
    expect(found).not.toContain('small-drop');
  });

  it.each([
    [9.9, true],
    [10, false],
    [30, false],
    [30.1, true],
  ])('a pitot of %d psi on a 2½ in outlet is out of range: %s', (pitotPsi, out) => {
    const flowing = [{ outletIn: 2.5, coefficient: 0.9, pitotPsi }];
    expect(codes(entry({ flowing })).includes('pitot-range')).toBe(out);
  });

  it('rates a hydrant under 40 psi static at half its static', () => {
    const weak = flowTestResult(
      entry({ staticPsi: 30, residualPsi: 25, flowing: [], statedFlowGpm: 400 }),
    );
    expect(weak.rating?.residualPsi).toBe(15);
    // (15/5)^0.54·400, by hand 723.9.
    expect(weak.rating?.flowGpm).toBeCloseTo(723.9, 0);
    expect(weak.class?.name).toBe('B');
    expect(weak.notices.map(({ code }) => code)).toContain('weak-hydrant');
    const feeble = flowTestResult(entry({ staticPsi: 18, residualPsi: 10 }));
    expect(feeble.q20Gpm).toBe(0);
    expect(feeble.rating?.residualPsi).toBe(9);
  });

  it('falls due after 5 years: NFPA 291 (2022) 4.15.1 as quoted by QRFS', () => {
    expect(flowTestResult(entry()).retestOn).toBe('2029-05-20');
    expect(codes(entry(), '2029-05-20')).not.toContain('old-test');
    expect(codes(entry(), '2029-05-21')).toContain('old-test');
    expect(flowTestResult(entry({ testedOn: '2024-02-29' })).retestOn).toBe('2029-03-01');
  });

  it('refuses what is no date', () => {
    const undated = flowTestResult(entry({ testedOn: 'last May' }));
    expect(undated).toMatchObject({ retestOn: null, curve: null });
    expect(undated.notices[0]?.code).toBe('no-date');
  });

  it('says each in the reader’s units', () => {
    const [notice] = flowTestResult(entry({ staticPsi: 50, residualPsi: 80 })).notices;
    // 80 psi is 5.5 bar, 50 psi 3.4 bar (NIST SP 811).
    expect(findingText(notice!, 'si')).toContain('5.5 bar is above static 3.4 bar');
  });
});

it('never throws and never gives a wrong curve, whatever is entered', () => {
  const odd = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -5, 0);
  const psi = fc.oneof({ weight: 9, arbitrary: fc.double({ min: 0, max: 500, noNaN: true }) }, odd);
  const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
  const outlet = fc.record({
    outletIn: maybe(fc.oneof(fc.double({ min: 0.1, max: 12, noNaN: true }), odd)),
    coefficient: maybe(fc.double({ min: 0.5, max: 1, noNaN: true })),
    pitotPsi: maybe(fc.oneof(fc.double({ min: 0, max: 300, noNaN: true }), odd)),
    flowGpm: maybe(fc.oneof(fc.double({ min: 0, max: 50_000, noNaN: true }), odd)),
  });
  fc.assert(
    fc.property(
      psi,
      psi,
      fc.array(outlet, { maxLength: 4 }),
      maybe(fc.double({ min: 0, max: 100_000, noNaN: true })),
      (staticPsi, residualPsi, flowing, statedFlowGpm) => {
        const found = flowTestResult(entry({ staticPsi, residualPsi, flowing, statedFlowGpm }));
        const bad = found.notices.some(({ level }) => level === 'error');
        expect(found.curve === null).toBe(bad);
        if (found.curve === null) return;
        expect(found.curve(0)).toBe(staticPsi);
        expect(Math.abs(found.curve(found.flowGpm!) - residualPsi)).toBeLessThan(1e-6);
        expect(Number.isFinite(found.q20Gpm)).toBe(true);
      },
    ),
    { seed: 291, numRuns: 500 },
  );
});
