import {
  relayPlan as evenRelay,
  hoseFrictionPsi,
  PSI_PER_FT,
  relaySpacingFt,
} from '@plugside/hydraulics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adapterLoss } from '../catalogue/appliances.ts';
import type { GroundLine, HoseSize, RelayQuestion } from '../index.ts';
import {
  hoseCatalogue,
  mostWater,
  newDraft,
  newLine,
  newManifold,
  newPlan,
  newRig,
  relayPlan,
  settingsFor,
} from '../index.ts';

/** A pump that is never what stops a relay. */
const strong = { ratedGpm: 1500, capability: [[0, 500] as const, [5000, 500] as const] };
const level = (lengthFt: number): GroundLine => ({
  lengthFt,
  fromElevationFt: 0,
  toElevationFt: 0,
});
const oneHose = (hose: HoseSize, lengthFt: number, lines = 1) => [
  { lines: Array.from({ length: lines }, () => hose), lengthFt },
];

const stationsOf = (question: RelayQuestion) => {
  const plan = relayPlan(question);
  return plan.possible ? plan.stations : undefined;
};

describe('distance that one pump reaches', () => {
  /** Longest level lay, to a section, that one pump carries the flow through. */
  const reachFt = (hose: HoseSize, flowGpm: number, pdpPsi: number, lines = 1) => {
    let reach = 0;
    for (let lengthFt = 10; ; lengthFt += 10) {
      const hoses = oneHose(hose, lengthFt, lines);
      const asked = { ground: level(lengthFt), hose: hoses, flowGpm, mostPdpPsi: pdpPsi };
      if (!stationsOf({ ...asked, pumps: [strong] })) return reach;
      reach = lengthFt;
    }
  };

  // Distances from memory; 200 psi for 2½ and 3 in, 185 for 4 and 5 in, 20 at the next intake:
  // "Relay Pumping Operations" lesson p3, Firehouse. The table rounds, by up to 6 %.
  it.each([
    ['2-1/2', 500, 200, 360],
    ['3', 500, 200, 900],
    ['4', 500, 185, 3300],
    ['5', 500, 185, 8250],
    ['4', 750, 185, 1450],
    ['3', 1000, 200, 225],
    ['4', 1000, 185, 825],
    ['5', 1000, 185, 2050],
    ['4', 1250, 185, 500],
    ['5', 1250, 185, 1320],
  ] as const)(
    '%s in, %i gpm at %i psi: %i ft (driver/operator relay table, from memory)',
    (hose, flowGpm, pdpPsi, printedFt) => {
      const found = reachFt(hose, flowGpm, pdpPsi);
      expect(Math.abs(found / printedFt - 1)).toBeLessThan(0.07);
    },
  );

  it.each([
    ['2-1/2', 1000, 200, 360],
    ['3', 1000, 200, 900],
  ] as const)(
    'two lines of %s in, %i gpm at %i psi: %i ft (the same table, from memory)',
    (hose, flowGpm, pdpPsi, printedFt) => {
      expect(Math.abs(reachFt(hose, flowGpm, pdpPsi, 2) / printedFt - 1)).toBeLessThan(0.04);
    },
  );
});

describe('a relay', () => {
  it('over 4,500 ft of 5 in at 1,000 gpm takes three pumps before the attack engine, 1,500 ft apart, at 140 psi (basis: "Relay Pumping Operations" lesson p3, Firehouse; worked by hand)', () => {
    const stations = stationsOf({
      ground: level(4500),
      hose: oneHose('5', 4500),
      flowGpm: 1000,
      pumps: [strong, strong, strong, strong],
    });
    expect(stations?.map(({ alongFt }) => alongFt)).toEqual([0, 1500, 3000]);
    for (const { pdpPsi } of stations!) expect(pdpPsi).toBeCloseTo(140, 6);
  });

  it('takes as many pumps as the formula of an even slope, at the pressure that it gives', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<HoseSize>('5', '4', '3'),
        fc.integer({ min: 300, max: 1300 }),
        fc.integer({ min: 5, max: 50 }),
        fc.double({ min: -1, max: 3, noNaN: true }),
        (hose, flowGpm, hundreds, risePer100Ft) => {
          const lengthFt = 100 * hundreds;
          const coefficient = { '5': 0.08, '4': 0.2, '3': 0.8 }[hose as '5' | '4' | '3'];
          const basis = { flowGpm, coefficient, pdpPsi: hose === '3' ? 250 : 185 };
          const riseFt = risePer100Ft * hundreds;
          const even = evenRelay(basis, lengthFt, riseFt);
          const ground = { lengthFt, fromElevationFt: 0, toElevationFt: riseFt };
          const stations = stationsOf({
            ground,
            hose: oneHose(hose, lengthFt),
            flowGpm,
            pumps: Array.from({ length: 8 }, () => strong),
          });
          // Falling ground adds to the pressure at rest, which the formula does not look at.
          if (risePer100Ft < 0) return;
          // Hose comes in sections, which it does not know either: a pump reaches whole ones.
          const { sectionFt } = hoseCatalogue[hose];
          const wholeFt =
            Math.floor(relaySpacingFt(basis, risePer100Ft) / sectionFt + 1e-9) * sectionFt;
          const most = wholeFt > 0 ? Math.ceil(lengthFt / wholeFt) : Number.POSITIVE_INFINITY;
          if (!stations) {
            expect(most).toBeGreaterThan(8);
            return;
          }
          expect(stations.length).toBeGreaterThanOrEqual(even.hoseSections);
          expect(stations.length).toBeLessThanOrEqual(most);
          if (stations.length > even.hoseSections) return;
          const sectionPsi =
            (hoseFrictionPsi(coefficient, flowGpm, 100) + PSI_PER_FT * risePer100Ft) *
            (sectionFt / 100);
          const highest = Math.max(...stations.map(({ pdpPsi }) => pdpPsi));
          expect(highest).toBeGreaterThanOrEqual(even.pdpNeededPsi - 1e-6);
          expect(highest).toBeLessThanOrEqual(even.pdpNeededPsi + sectionPsi + 1e-6);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('holds its pressures when the plan of it is solved: next intakes at 20 psi, settings as foretold', () => {
    const ground: GroundLine = {
      lengthFt: 3000,
      fromElevationFt: 0,
      toElevationFt: 60,
      terrain: [
        { alongFt: 1000, elevationFt: 50 },
        { alongFt: 2000, elevationFt: 20 },
      ],
    };
    const hose = [
      { lines: ['5' as const], lengthFt: 1800 },
      { lines: ['4' as const], lengthFt: 1200 },
    ];
    const pumps = [strong, strong, strong, strong];
    const stations = stationsOf({ ground, hose, flowGpm: 900, pumps, sourceIntakePsi: 0 })!;
    const rigs = stations.map((one, at) =>
      newRig(`P${at + 1}`, 'relay', { elevationFt: one.elevationFt, ...strong }),
    );
    const plan = newPlan({
      title: 'Relay',
      scene: 'A1',
      drafts: [newDraft('D1', { waterElevationFt: -5 })],
      rigs: [...rigs, newRig('A1', 'attack', { elevationFt: 60 })],
      appliances: stations.flatMap(({ change }, at) =>
        change
          ? [
              newManifold(`J${at + 1}`, {
                elevationFt: 20,
                inlets: 1,
                outlets: 1,
                loss: adapterLoss,
              }),
            ]
          : [],
      ),
      lines: [
        newLine('suction', 'D1.water', 'P1.intake1', '6', 20),
        ...stations.flatMap(({ lines, alongFt, legFt, change }, at) => {
          const from = `P${at + 1}.discharge1`;
          const to = at + 1 < stations.length ? `P${at + 2}.intake1` : 'A1.intake1';
          if (!change) return [newLine(`leg${at + 1}`, from, to, lines[0]!, legFt)];
          const firstFt = change.alongFt - alongFt;
          return [
            newLine(`leg${at + 1}`, from, `J${at + 1}.inlet1`, lines[0]!, firstFt),
            newLine(`to${at + 1}`, `J${at + 1}.outlet1`, to, change.hose, legFt - firstFt),
          ];
        }),
      ],
    });
    const set = settingsFor(plan, 900);
    expect(set.possible).toBe(true);
    expect(mostWater(plan).flowGpm).toBeGreaterThanOrEqual(900);
    stations.forEach((one, at) => {
      const solved = set.state.rigs.find(({ id }) => id === `P${at + 1}`)!.pdpPsi;
      // A hill between two pumps may ask for more than the next intake does.
      expect(one.pdpPsi).toBeGreaterThanOrEqual(solved - 0.01);
    });
  });

  it('stands where its pumps share the work, with an adapter where the hose changes size', () => {
    // 1,000 gpm lose 8 psi in 100 ft of 5 in and 20 in 4 in: 128 and 80 psi, and 1 in the adapter.
    // At 1,300 ft the pumps hold 20 + 104 and 20 + 24 + 1 + 80; where the size changes 148 and 100.
    const hose = [...oneHose('5', 1600), ...oneHose('4', 400)];
    const pumps = [strong, strong];
    const stations = stationsOf({ ground: level(2000), hose, flowGpm: 1000, pumps })!;
    expect(stations.map(({ alongFt }) => alongFt)).toEqual([0, 1300]);
    expect(stations.map(({ pdpPsi }) => Math.round(pdpPsi * 1000) / 1000)).toEqual([124, 125]);
    expect(stations[1]!.change).toEqual({ hose: '4', alongFt: 1600 });
  });

  it('stands where two lines become one', () => {
    const hose = [...oneHose('5', 1600, 2), ...oneHose('5', 400)];
    const pumps = [strong, strong];
    const stations = stationsOf({ ground: level(2000), hose, flowGpm: 1000, pumps })!;
    expect(stations.map(({ alongFt }) => alongFt)).toEqual([0, 1600]);
  });

  it('keeps a hilltop between two pumps under pressure', () => {
    const ground: GroundLine = {
      ...level(1000),
      terrain: [{ alongFt: 500, elevationFt: 200 }],
    };
    const stations = stationsOf({
      ground,
      hose: oneHose('5', 1000),
      flowGpm: 500,
      pumps: [strong],
    });
    // 20 psi at the top, 86.8 of height, 0.08·5²·5 of friction to it.
    expect(stations?.[0]?.pdpPsi).toBeCloseTo(20 + 200 * PSI_PER_FT + 10, 6);
  });

  it('refuses what would burst hose at rest in a valley, and says so', () => {
    const ground: GroundLine = {
      ...level(2000),
      terrain: [{ alongFt: 1000, elevationFt: -380 }],
    };
    const asked = { ground, hose: oneHose('5', 2000), flowGpm: 500 };
    // 380 ft are 165 psi; with the 20 psi at the far end that is the whole limit, and friction asks for more.
    expect(relayPlan({ ...asked, pumps: [strong] })).toMatchObject({ possible: false });
  });

  it('counts what comes through from the pump before when nothing flows', () => {
    const over = (dropFt: number) =>
      relayPlan({
        ground: {
          lengthFt: 4000,
          fromElevationFt: dropFt,
          toElevationFt: 0,
          terrain: [{ alongFt: 2000, elevationFt: dropFt }],
        },
        hose: [...oneHose('5', 2000), ...oneHose('5', 2000, 2)],
        flowGpm: 900,
        pumps: [strong, strong],
      });
    // The first pump holds 20 + 0.08·9²·20 psi; at rest they stand on the second leg too, and its drop.
    const first = 20 + 0.08 * 81 * 20;
    const gentle = over(30);
    expect(gentle.possible && gentle.stations[1]!.restPsi).toBeCloseTo(first, 6);
    expect(first + 300 * PSI_PER_FT).toBeGreaterThan(185);
    expect(over(300)).toEqual({ possible: false, reason: 'hose at rest' });
  });

  it('asks no pump for more than it has: 1,000 gpm at 185 psi takes a 1,500 gpm pump ("Relay Pumping Operations" lesson p3, Firehouse)', () => {
    const carries = (ratedGpm: number) =>
      relayPlan({
        ground: level(2000),
        hose: oneHose('5', 2000),
        flowGpm: 1000,
        pumps: [{ ratedGpm }],
      }).possible;
    expect(carries(1500)).toBe(true);
    expect(carries(1000)).toBe(false);
  });

  it('refuses hose that is not as long as the ground', () => {
    const asked = { ground: level(900), hose: oneHose('5', 800), flowGpm: 500, pumps: [strong] };
    expect(() => relayPlan(asked)).toThrow('The hose is 800 ft and the ground 900 ft');
    expect(() => relayPlan({ ...asked, flowGpm: 0 })).toThrow('flowGpm is 0');
  });
});
