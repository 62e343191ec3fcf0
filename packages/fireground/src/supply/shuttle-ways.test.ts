import { describe, expect, it } from 'vitest';
import {
  chooseSupply,
  newDraft,
  newHydrant,
  newRig,
  type RespondingRig,
  type Situation,
  simulateShuttle,
  tanksOfWay,
} from '../index.ts';

const engine = (number: number, arrivesMin: number, hoseFt = 0): RespondingRig => ({
  rig: newRig(`E${number}`, 'attack', { ratedGpm: 1500, name: `Engine ${number}`, tankGal: 500 }),
  kind: 'engine',
  arrivesMin,
  hose: hoseFt > 0 ? [{ hose: '5', lengthFt: hoseFt }] : [],
  assistValve: false,
});
const tender = (number: number, arrivesMin: number, tankGal = 3000): RespondingRig => ({
  rig: newRig(`T${number}`, 'relay', { name: `Tender ${number}`, tankGal }),
  kind: 'tender',
  arrivesMin,
  hose: [],
  assistValve: false,
});
const creek = { id: 'creek', name: 'Creek fill', roadMi: 2, fillGpm: 1000 };
const situation = (more: Partial<Situation>): Situation => ({
  title: 'Barn',
  invented: true,
  scene: { name: 'Barn', elevationFt: 0 },
  demandGpm: 250,
  rigs: [engine(1, 4), tender(1, 6)],
  hydrants: [],
  waters: [],
  fillPlaces: [creek],
  department: {},
  ...more,
});
const weak = (id: string, main?: string) => ({
  hydrant: newHydrant(id, {
    staticPsi: 50,
    residualPsi: 30,
    testGpm: 500,
    ...(main !== undefined && { main }),
  }),
  steamer: true,
  lengthFt: 400,
});

describe('a shuttle alone', () => {
  const [way] = chooseSupply(situation({})).ways;
  const { shuttle } = way!;

  // 0.65 + 1.7·2 = 4.05 min each way; 2 min and 2,700 gal at 1,000 gpm; 1 min and 2.7.
  it('tells of each tender’s round (by hand; "Water Shuttle Operations" lesson, Firehouse)', () => {
    const round = {
      rigName: 'Tender 1',
      loadGal: 2700,
      outMin: 4.05,
      fillMin: 4.7,
      backMin: 4.05,
      dumpMin: 3.7,
      roundTripMin: 16.5,
    };
    for (const [name, value] of Object.entries(round)) {
      const found = shuttle!.tenders[0]![name as keyof typeof round];
      if (typeof value === 'number') expect(found).toBeCloseTo(value, 9);
      else expect(found).toBe(value);
    }
    expect(shuttle!.gpm).toBeCloseTo(2700 / 16.5, 9);
    expect(shuttle!.limitedBy).toBe('tenders');
    // 2,700 gal in 16.5 min are 163.6 gpm: 250 gpm take two such tenders.
    expect(way!.bindingText).toBe(
      'The tenders are the limit: Tender 1 keeps up 164 gpm; two like it would meet the demand.',
    );
  });

  // The tender brings the tank at 6: unfolded at 7, dumped by 10.7; the prime is there 4 min after 6.
  it('tells when water is there and what is in the tank then (by hand)', () => {
    expect(way!.time.waterAtMin).toBeCloseTo(10, 9);
    expect(way!.time.fullAtMin).toBeCloseTo(10.7, 9);
    // One minute of handling, two of dumping at 1,000 gpm.
    const atDraw = shuttle!.level.find(({ atMin }) => Math.abs(atMin - 10) < 1e-9);
    expect(atDraw?.gal).toBeCloseTo(2000, 6);
    expect(shuttle!.tankGal.value).toBe(4200);
    expect(shuttle!.runsDryAtMin).toBeNull();
    expect(shuttle!.text).toContain('it never runs dry');
  });

  it('has the tank of the same shuttle played out', () => {
    const run = simulateShuttle({
      tenders: [{ id: 'T1', tankGal: 3000 }],
      road: { oneWayMi: 2 },
      fillSite: { points: 1, gpmEach: 1000 },
      dumpSite: { points: 1 },
      tankGal: 4200,
      drawGpm: 2700 / 16.5,
      drawFromMin: 10,
      untilMin: 100,
      firstAtMin: { T1: 7 },
    });
    expect(shuttle!.level).toEqual(run.level);
  });

  it('is drafted by the attack engine, whose lines set its pump', () => {
    expect(shuttle!.pump).toMatchObject({ rigId: 'E1', pdpPsi: null });
    expect(way!.duties[0]!.duty).toBe(
      'goes to the fire, sets up the portable tank, sets its suction in the tank, takes its prime and attacks',
    );
  });

  // 500 gal and 160 gpm from the fire at 4 and first water at 5.5: dry at 8.6, the tank there at 10.
  it('counts against the tank from its first water', () => {
    const of = situation({});
    const tanks = tanksOfWay(way!, of, { flowGpm: 160, firstWaterMin: 1.5 })!;
    expect(tanks.supplyAtMin).toBeCloseTo(10, 9);
    expect(tanks.runsDryAtMin).toBeCloseTo(5.5 + 500 / 160, 9);
  });

  it('draws no more than the demand', () => {
    const [less] = chooseSupply(situation({ demandGpm: 100 })).ways;
    expect(less!.shuttle!.drawGpm).toBe(100);
    expect(less!.meetsDemand).toBe(true);
  });
});

describe('a shuttle beside another way', () => {
  const rigs = [engine(1, 2, 500), engine(2, 3, 200), tender(1, 6), tender(2, 7)];
  const fillPlaces = [
    { id: 'H1', name: 'H1', roadMi: 0.1, fillGpm: 1000 },
    { id: 'H2', name: 'H2', roadMi: 0.3, fillGpm: 800 },
    creek,
  ];
  const beside = (hydrants: Situation['hydrants']) =>
    chooseSupply(situation({ demandGpm: 2500, rigs, hydrants, fillPlaces })).ways.filter(
      ({ shuttle, plan }) => shuttle && plan,
    );

  it('never fills at a hydrant that the way takes from', () => {
    const ways = beside([weak('H1', 'a'), weak('H2', 'b')]);
    expect(ways.length).toBeGreaterThan(0);
    for (const { shuttle, plan } of ways)
      expect(plan!.hydrants.map(({ id }) => id)).not.toContain(shuttle!.place.id);
  });

  it('nor at one on the same main', () => {
    for (const { shuttle } of beside([weak('H1', 'a'), weak('H2', 'a')]))
      expect(shuttle!.place.id).toBe('creek');
  });

  it('sets the pump at the portable tank for its line (by hand: 20 psi and 100 ft of 5 in)', () => {
    const [way] = beside([weak('H1', 'a')]);
    const { pump, drawGpm } = way!.shuttle!;
    expect(pump.pdpPsi).toBeCloseTo(20 + 0.08 * (drawGpm / 100) ** 2, 9);
    expect(pump.text).toContain('100 ft of 5 in');
  });

  it('has no tender both hauling and standing by, nor a rig at two tasks at once', () => {
    for (const { duties, standBy, time } of beside([weak('H1', 'a')])) {
      const hauling = duties.filter(({ duty }) => duty.includes('hauls')).map(({ rigId }) => rigId);
      expect(hauling).toEqual(['T1', 'T2']);
      expect((standBy ?? []).filter(({ rigId }) => hauling.includes(rigId))).toEqual([]);
      for (const { rig } of rigs) {
        const own = time.steps.filter(
          ({ rigId, text }) => rigId === rig.id && !text.includes('leaves a crew'),
        );
        own.slice(1).forEach((step, at) => {
          expect(step.startMin).toBeGreaterThanOrEqual(own[at]!.endMin - 1e-9);
        });
      }
    }
  });
});

describe('open water to fill at', () => {
  const pond = {
    draft: newDraft('W1', { name: 'Pond', waterElevationFt: -10 }),
    liftFt: 10,
    lengthFt: 3168,
    access: 'Gate off the lane.',
  };

  it('takes an engine that drafts there', () => {
    const rigs = [engine(1, 4), engine(2, 5), tender(1, 6)];
    const way = chooseSupply(situation({ rigs, fillPlaces: [], waters: [pond] })).ways.find(
      ({ kind }) => kind === 'tender shuttle',
    )!;
    expect(way.shuttle!.place).toMatchObject({
      name: 'Pond',
      kind: 'open water',
      roadMi: 0.6,
      fillingRig: { rigId: 'E2', rigName: 'Engine 2' },
    });
    expect(way.rigsUsed).toBe(3);
    expect(way.duties.find(({ rigId }) => rigId === 'E2')!.duty).toBe(
      'sets up at draft at Pond to fill tenders',
    );
    expect(way.notices.map(({ text }) => text)).toContain('Access to Pond: Gate off the lane.');
  });

  // Dumped at 10.7 and 0.65 + 1.7·0.6 min down the road: there at 12.37, 4 min before the engine is ready.
  it('says where a tender waits for the engine that fills it (by hand)', () => {
    const rigs = [engine(1, 4), engine(2, 12.37), tender(1, 6)];
    const way = chooseSupply(situation({ rigs, fillPlaces: [], waters: [pond] })).ways.find(
      ({ kind }) => kind === 'tender shuttle',
    )!;
    expect(way.shuttle!.text).toContain(
      'Engine 2 is ready to fill at Pond at 16:22; the first tender is there at 12:22 and waits.',
    );
  });

  it('is none where the one engine is at the portable tank', () => {
    const ways = chooseSupply(situation({ fillPlaces: [], waters: [pond] })).ways;
    expect(ways.filter(({ kind }) => kind === 'tender shuttle')).toEqual([]);
  });
});
