import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hoseSizes } from '../units/hose-size.ts';
import { checkPlan, crossIssues } from './check.ts';
import type { HoseSize, Line, Loss, Nozzle, Origin, Plan, PumpSetting, Rig } from './plan.ts';
import { readPlan } from './read-plan.ts';
import { writePlan } from './write-plan.ts';

/** Whole and broken numbers in a range; never −0, which no one writes. */
const within = (min: number, max: number) =>
  fc
    .oneof(
      fc.double({ min, max, noNaN: true }).map((value) => value + 0),
      fc.integer({ min: Math.ceil(min), max: Math.floor(max) }),
    )
    .map((value) => (value === 0 ? 0 : value));

const words = fc
  .oneof(fc.string({ minLength: 1, maxLength: 40 }), fc.string({ unit: 'binary', maxLength: 40 }))
  .filter((text) => text.trim() !== '' && !/\p{Cc}/u.test(text));
const loss: fc.Arbitrary<Loss> = fc.record({ lossPsi: within(0, 100), atGpm: within(1, 5000) });
const day = fc
  .integer({ min: 0, max: 40_000 })
  .map((days) => new Date(days * 86_400_000).toISOString().slice(0, 10));
const origin: fc.Arbitrary<Origin> = fc.record(
  { kind: fc.constantFrom('measured', 'maker', 'department'), text: words, date: day },
  { requiredKeys: ['kind', 'text'] },
);
const setting: fc.Arbitrary<PumpSetting> = fc.oneof(
  within(0, 400).map((pdpPsi) => ({ mode: 'governed', pdpPsi }) as const),
  within(0.3, 1.1).map((speedFraction) => ({ mode: 'throttled', speedFraction }) as const),
  fc.constant({ mode: 'idle' } as const),
);
const hose = fc.constantFrom(...(hoseSizes as HoseSize[]));
const elevationFt = within(-500, 9000);
const optional = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

const nozzleMake = fc.oneof(
  fc.record({ kind: fc.constant('smooth-bore'), tipIn: within(0.5, 3), ratedPsi: within(20, 150) }),
  fc.record({ kind: fc.constant('fog'), ratedGpm: within(10, 2000), ratedPsi: within(20, 150) }),
  fc.array(within(10, 500), { minLength: 1, maxLength: 5 }).map((settingsGpm) => ({
    kind: 'selectable',
    settingsGpm,
    selectedGpm: settingsGpm[0],
    ratedPsi: 100,
  })),
  fc.record({
    kind: fc.constant('automatic'),
    ratedPsi: within(40, 120),
    leastGpm: within(10, 100),
    greatestGpm: within(101, 2000),
  }),
);

const sceneEngine = fc.record(
  {
    name: words,
    mostGpm: within(1, 20_000),
    lines: fc.array(fc.constantFrom('lay', 'lay2'), { maxLength: 3 }),
  },
  { requiredKeys: ['name', 'mostGpm'] },
);

const capability = fc
  .array(fc.tuple(within(1, 500), within(0, 60)), { minLength: 1, maxLength: 6 })
  .map((steps) => {
    const points: [number, number][] = [[0, 400]];
    for (const [flow, drop] of steps) {
      const [lastFlow, lastPsi] = points.at(-1) as [number, number];
      points.push([lastFlow + flow, Math.max(0, lastPsi - drop)]);
    }
    return points;
  });

const rig = (id: string, role: Rig['role']) =>
  fc.record({
    id: fc.constant(id),
    name: optional(words),
    role: fc.constant(role),
    elevationFt,
    ratedGpm: within(250, 3000),
    capability: optional(capability),
    setting,
    protectIntakePsi: optional(within(0, 100)),
    intakes: fc.integer({ min: 2, max: 8 }),
    discharges: fc.integer({ min: 4, max: 20 }),
    intakeLoss: optional(loss),
    passLoss: loss,
    tankGal: within(100, 5000),
    tankValve: optional(fc.constantFrom('open', 'shut')),
    intakeReliefPsi: optional(within(50, 250)),
  });

const line = (id: string, from: string, to: string) =>
  within(1, 5000).chain((lengthFt) =>
    fc.record({
      id: fc.constant(id),
      name: optional(words),
      from: fc.constant(from),
      to: fc.constant(to),
      hose,
      lengthFt: fc.constant(lengthFt),
      count: fc.integer({ min: 1, max: 6 }),
      coefficient: optional(within(0.01, 500)),
      coefficientOrigin: optional(origin),
      valve: fc.oneof(
        fc.constantFrom('open', 'shut'),
        loss.map((gated) => ({ gated })),
      ),
      check: optional(fc.boolean()),
      terrain: optional(
        elevationFt.map((height) => [{ alongFt: lengthFt / 2, elevationFt: height }]),
      ),
      limitPsi: optional(within(50, 600)),
    }),
  );

const nozzle = (id: string, on?: string) =>
  fc
    .tuple(
      fc.record({
        name: optional(words),
        elevationFt,
        open: fc.boolean(),
        use: fc.constantFrom('hand line', 'master stream'),
      }),
      nozzleMake,
    )
    .map(([place, make]) => ({ id, ...place, ...make, ...(on ? { on } : {}) }));

const limits = fc.record(
  {
    mainResidualPsi: within(0, 60),
    attackHosePsi: within(100, 400),
    hilltopPsi: within(0, 30),
    nozzleLeastFraction: within(0.1, 1),
    hoseVelocityFtS: within(5, 60),
    draftVacuumInHg: within(5, 25),
    leastDischargePsi: within(20, 100),
  },
  { requiredKeys: [] },
);

/** Sound plans: one of each kind of piece around a hydrant, its booster and an attack engine. */
const plans: fc.Arbitrary<Plan> = fc
  .record({
    title: words,
    note: optional(fc.constantFrom('one\ntwo', 'a: b # c', '- x\n\n  y \n', '\ttab')),
    invented: fc.boolean(),
    scene: fc.constant('E3'),
    sceneEngines: optional(fc.array(sceneEngine, { minLength: 1, maxLength: 3 })),
    demandGpm: optional(within(50, 4000)),
    hydrants: fc
      .record({
        id: fc.constant('H1'),
        name: optional(words),
        elevationFt,
        staticPsi: within(60, 200),
        residualPsi: within(0, 59),
        testGpm: within(100, 5000),
        testedOn: optional(day),
        main: optional(words),
        mainFedFrom: optional(words),
        sideOutlets: fc.integer({ min: 1, max: 6 }),
        steamerLoss: loss,
        sideLoss: loss,
      })
      .map((hydrant) => [hydrant, { ...hydrant, id: 'H2' }]),
    groupTests: optional(
      fc.tuple(
        fc.record(
          {
            hydrants: fc.constant(['H1', 'H2']),
            elevationFt,
            staticPsi: within(60, 200),
            residualPsi: within(0, 59),
            testGpm: within(100, 5000),
            testedOn: day,
          },
          { requiredKeys: ['hydrants', 'staticPsi', 'residualPsi', 'testGpm'] },
        ),
      ),
    ),
    drafts: fc
      .record({
        id: fc.constant('D1'),
        waterElevationFt: elevationFt,
        altitudeFt: within(0, 9000),
        waterTempF: within(33, 100),
        strainerLoss: loss,
      })
      .map((draft) => [draft]),
    rigs: fc.tuple(rig('E7', 'booster'), rig('E3', 'attack')),
    appliances: fc.tuple(
      fc.record({
        id: fc.constant('V1'),
        kind: fc.constant('assist-valve'),
        elevationFt,
        on: fc.constant('H1.steamer'),
        handle: fc.constantFrom('hydrant', 'boost'),
        clapperLoss: loss,
        suctionLoss: loss,
        dischargeLoss: loss,
        clapperStuck: optional(fc.constant('shut')),
      }),
      fc.record({ id: fc.constant('W1'), kind: fc.constant('wye'), elevationFt, loss }),
      fc.record({
        id: fc.constant('MS1'),
        kind: fc.constant('monitor'),
        elevationFt,
        inlets: fc.integer({ min: 1, max: 8 }),
        loss,
      }),
      fc.record({
        id: fc.constant('SP1'),
        kind: fc.constant('standpipe'),
        elevationFt,
        inlets: fc.integer({ min: 1, max: 8 }),
        outlets: fc.integer({ min: 1, max: 12 }),
        outletElevationFt: elevationFt,
        loss,
      }),
      fc.record({
        id: fc.constant('F1'),
        kind: fc.constant('sprinkler'),
        elevationFt,
        inlets: fc.integer({ min: 1, max: 8 }),
        demandGpm: within(50, 3000),
        basePsi: within(10, 200),
      }),
    ),
    lines: fc.tuple(
      line('suction', 'V1.pump-suction', 'E7.intake1'),
      line('drafted', 'D1.water', 'E7.intake2'),
      line('discharge', 'E7.discharge1', 'V1.pump-discharge'),
      line('lay', 'V1.supply', 'E3.intake1'),
      line('leader', 'E3.discharge1', 'W1.inlet'),
      line('attack1', 'W1.outlet1', 'N1.inlet'),
      line('stream', 'E3.discharge2', 'MS1.inlet1'),
      line('connection', 'E3.discharge3', 'SP1.inlet1'),
    ),
    nozzles: fc.tuple(nozzle('N1'), nozzle('N2', 'MS1.tip')),
    department: fc.record(
      {
        coefficients: fc.dictionary(hose, fc.record({ coefficient: within(0.01, 900), origin }), {
          maxKeys: 3,
        }),
        limits,
        limitsOrigin: origin,
      },
      { requiredKeys: [] },
    ),
  })
  .map((plan) => plan as unknown as Plan);

/** The other, with each number that is nearly the one's put as that is. */
function likeIn(one: unknown, other: unknown): unknown {
  if (typeof one === 'number' && typeof other === 'number') {
    return Math.abs(one - other) <= 1e-11 * (Math.abs(one) + 32) ? one : other;
  }
  if (typeof other !== 'object' || other === null) return other;
  if (Array.isArray(other)) return other.map((item, n) => likeIn((one as unknown[])?.[n], item));
  const known = (one ?? {}) as Record<string, unknown>;
  return Object.fromEntries(Object.entries(other).map(([key, v]) => [key, likeIn(known[key], v)]));
}

// Many plans on a busy machine take longer than a test is usually given.
const patience = { timeout: 120_000 };

describe('a plan written and read again', patience, () => {
  test('is the same plan to eleven digits where it is written in SI units', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const reading = readPlan(writePlan(plan, 'yaml', 'si'));
        expect(reading.ok && reading.notices).toEqual([]);
        expect(reading.ok && likeIn(plan, reading.plan)).toEqual(plan);
      }),
      { numRuns: 80 },
    );
  });

  test.each(['yaml', 'json'] as const)('is the same plan, to the last bit (%s)', (format) => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(crossIssues(plan)).toEqual([]);
        expect(readPlan(writePlan(plan, format))).toEqual({ ok: true, plan, notices: [] });
      }),
      { numRuns: 80 },
    );
  });

  test('is sound in memory too', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        expect(checkPlan(plan)).toEqual([]);
      }),
      { numRuns: 50 },
    );
  });

  test('writes the same text a second time', () => {
    fc.assert(
      fc.property(plans, (plan) => {
        const text = writePlan(plan);
        const reading = readPlan(text);
        expect(reading.ok && writePlan(reading.plan)).toBe(text);
      }),
      { numRuns: 50 },
    );
  });
});

test('any text is read or refused with a place, never thrown at', patience, () => {
  const text = fc.oneof(
    fc.string({ maxLength: 200 }),
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.json().map((json) => json),
    plans
      .map((plan) => writePlan(plan))
      .chain((written) =>
        // A sound plan with a piece cut out of it.
        fc
          .tuple(fc.nat(written.length), fc.nat(60))
          .map(([start, length]) => written.slice(0, start) + written.slice(start + length)),
      ),
  );
  fc.assert(
    fc.property(text, (candidate) => {
      const reading = readPlan(candidate);
      if (reading.ok) return;
      expect(reading.issues.length).toBeGreaterThan(0);
      for (const issue of reading.issues) {
        expect(issue.line).toBeGreaterThanOrEqual(1);
        expect(issue.message).toContain('Allowed:');
      }
    }),
    { numRuns: 300 },
  );
});

/** A setter for every number in a record, however deep. */
function numbersIn(record: object): ((value: number) => void)[] {
  return Object.entries(record).flatMap(([key, value]) => {
    if (typeof value === 'number') {
      return [(spoilt: number) => Object.assign(record, { [key]: spoilt })];
    }
    return value !== null && typeof value === 'object' ? numbersIn(value) : [];
  });
}

describe('a plan in memory with a bad number', patience, () => {
  const spoil = (plan: Plan, change: Partial<Line>): Plan => ({
    ...plan,
    lines: plan.lines.map((candidate, index) =>
      index === 0 ? { ...candidate, ...change } : candidate,
    ),
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, -1, 1e9])('%d ft of hose', (lengthFt) => {
    const [plan] = fc.sample(plans, { numRuns: 1, seed: 7 }) as [Plan];
    const issues = checkPlan(spoil(plan, { lengthFt, terrain: undefined }));
    expect(issues.map((issue) => issue.path)).toEqual(['lines[0].length']);
  });

  test('any one number spoilt is found, and nothing is thrown', () => {
    const spoilt = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -1e9, 1e300);
    fc.assert(
      fc.property(plans, fc.nat(), spoilt, (plan, choice, value) => {
        const copy = JSON.parse(JSON.stringify(plan)) as Plan;
        const slots = numbersIn(copy);
        slots[choice % slots.length]?.(value);
        expect(checkPlan(copy).length).toBeGreaterThan(0);
      }),
      { numRuns: 120 },
    );
  });

  test('a nozzle moved to a port that is not there', () => {
    const [plan] = fc.sample(plans, { numRuns: 1, seed: 7 }) as [Plan];
    const nozzles = [plan.nozzles[0], { ...plan.nozzles[1], on: 'MS1.top' }] as Nozzle[];
    expect(checkPlan({ ...plan, nozzles })).toMatchObject([{ path: 'nozzles[1].sits-on' }]);
  });
});
