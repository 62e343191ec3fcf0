import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { boostedAtHydrant, mostWater, unassistedPlan } from '@plugside/fireground';
import {
  type HydrantCard,
  type HydrantCardRequest,
  hydrantCardFor,
  hydrantCardsFrom,
  type PaperOptions,
  pumpChartFor,
  renderHydrantCard,
  renderHydrantCards,
  writePdf,
} from '@plugside/paper';
import { type Fields, recordSchemas } from '@plugside/records/model';
import { testsAhead } from '@plugside/records/planning';
import { buildStreetNetwork } from '@plugside/records/streets';
import { describe, expect, it } from 'vitest';
import { demoRecords } from './demo-records.ts';
import { outside, overlaps, readBack, textOf } from './read-back.ts';

const printed: PaperOptions = { printedAt: new Date('2026-11-25T12:00:00Z') };
const engine = (name: string, given: Partial<Fields<'rigs'>> = {}) =>
  recordSchemas.rigs.parse({
    name,
    ratedGpm: 1500,
    hose: [{ size: '5', lengthFt: 1000, where: 'supply bed' }],
    ...given,
  });
const hydrant = recordSchemas.hydrants.parse({
  name: 'H-114',
  longitude: -123.4,
  latitude: -48.9,
  steamerIn: 4.5,
  mainIn: 8,
  steamerLoss: { lossPsi: 0, atGpm: 1000 },
});
const test = recordSchemas['flow-tests'].parse({
  hydrantId: '01JZ0000000000000000000000',
  testedOn: '2024-05-20',
  staticPsi: 80,
  residualPsi: 60,
  statedFlowGpm: 1200,
});
const request: HydrantCardRequest = {
  hydrant,
  test,
  attack: { rig: engine('Engine 1') },
  booster: { rig: engine('Engine 3') },
  today: '2026-11-25',
};

describe('a hydrant card', () => {
  it('has the flow at 20 psi of the standard’s formula (NFPA 291: Q·((S − 20)/(S − R))^0.54)', () => {
    const { q20Gpm } = hydrantCardFor(request).test!;
    expect(q20Gpm).toBeCloseTo(1200 * (60 / 20) ** 0.54, 6);
  });

  it('has what hydrant pressure alone brings, by the hand formula', () => {
    const [table] = hydrantCardFor(request).lays;
    for (const { lengthFt, alone } of table!.rows) {
      // Main, then 5 in hose at C 0.08 from an outlet without loss, to 20 psi at the intake.
      const left = (gpm: number) =>
        80 - 20 * (gpm / 1200) ** (1 / 0.54) - 0.08 * (gpm / 100) ** 2 * (lengthFt / 100) - 20;
      expect(Math.abs(left(alone.flowGpm))).toBeLessThan(0.05);
      expect(alone.stoppedBy).toEqual(['attack intake']);
    }
  });

  it('has what a boost brings, as asked of a plan of its own', () => {
    const valved = { rig: engine('Engine 3', { assistValve: true }) };
    const [table] = hydrantCardFor({ ...request, booster: valved }).lays;
    const at = table!.rows.find(({ lengthFt }) => lengthFt === 800)!;
    const drawn = boostedAtHydrant({
      hydrant: { staticPsi: 80, residualPsi: 60, testGpm: 1200 },
      lay: { hose: '5', lengthFt: 800 },
    });
    const steamerLoss = { lossPsi: 0, atGpm: 1000 };
    const plan = { ...drawn, hydrants: drawn.hydrants.map((one) => ({ ...one, steamerLoss })) };
    const fresh = mostWater(plan);
    expect(at.boosted.flowGpm).toBeCloseTo(fresh.flowGpm, 1);
    expect(at.boosted.pdpPsi).toBeCloseTo(fresh.orders.find(({ id }) => id === 'B1')!.pdpPsi, 1);
    expect(at.alone.flowGpm).toBeCloseTo(mostWater(unassistedPlan(plan)).flowGpm, 1);
  });

  it('marks a booster’s pressure past what the attack engine’s intake stands at rest, as pump charts do', async () => {
    const relief = (intakeReliefPsi: number | undefined) =>
      hydrantCardFor({
        ...request,
        attack: { ...request.attack, rig: { ...request.attack.rig, intakeReliefPsi } },
      });
    const pressures = relief(undefined).lays.flatMap(({ rows }) =>
      rows.map(({ boosted }) => boosted.pdpPsi),
    );
    const [least, most] = [Math.min(...pressures), Math.max(...pressures)];
    expect(most).toBeGreaterThan(least + 10);
    const marks = async (psi: number) => {
      const pages = await readBack(renderHydrantCard(relief(psi), printed));
      const runs = pages.flatMap((page) => page.runs.map(({ text }) => text));
      return { count: runs.filter((text) => text === 'I').length, all: runs.join(' ') };
    };
    const between = (least + most) / 2;
    const some = await marks(between);
    expect(some.count).toBe(pressures.filter((psi) => psi > between + 0.5).length);
    expect(some.all).toContain('intake relief');
    const none = await marks(most + 1);
    expect(none.count).toBe(0);
    expect(none.all).not.toContain('intake relief');
    // Without a relief on record the limit stands in: 150 psi, common practice, no source.
    expect(relief(undefined).intakeMost).toEqual({ psi: 150, relief: false });
  });

  it('is for the hose that it names, whatever the booster carries', () => {
    const attack = { rig: engine('Engine 2', { hose: [{ size: '4', lengthFt: 800 }] }) };
    const valved = { rig: engine('Engine 3', { assistValve: true }) };
    const [table] = hydrantCardFor({ ...request, attack, booster: valved }).lays;
    expect(table!.hose).toBe('4');
    const plan = boostedAtHydrant({
      hydrant: { staticPsi: 80, residualPsi: 60, testGpm: 1200 },
      lay: { hose: '4', lengthFt: 1000 },
    });
    const steamerLoss = { lossPsi: 0, atGpm: 1000 };
    const fresh = mostWater({
      ...plan,
      hydrants: plan.hydrants.map((one) => ({ ...one, steamerLoss })),
    });
    const at = table!.rows.find(({ lengthFt }) => lengthFt === 1000)!;
    expect(at.boosted.flowGpm).toBeCloseTo(fresh.flowGpm, 1);
    // 185 psi in 4 in hose at C 0.2: friction alone keeps it under what 5 in would bring.
    expect(0.2 * (at.boosted.flowGpm / 100) ** 2 * 10).toBeLessThan(185);
  });

  it('counts the clapper of the department’s own assist valve, and says so, by the hand formula', async () => {
    const valve = {
      name: 'Assist valve, Engine 3',
      losses: { clapperLoss: { lossPsi: 15, atGpm: 1000 } },
    };
    const booster = { rig: engine('Engine 3', { assistValve: true }), valve };
    const card = hydrantCardFor({ ...request, booster });
    for (const { lengthFt, alone } of card.lays[0]!.rows) {
      // Main, 15 psi at 1,000 gpm by the square of flow, then 5 in hose at C 0.08, to 20 psi.
      const left = (gpm: number) =>
        80 -
        20 * (gpm / 1200) ** (1 / 0.54) -
        15 * (gpm / 1000) ** 2 -
        0.08 * (gpm / 100) ** 2 * (lengthFt / 100) -
        20;
      expect(Math.abs(left(alone.flowGpm))).toBeLessThan(0.05);
    }
    const [page] = await readBack(renderHydrantCard(card, printed));
    expect(textOf(page!)).toContain('15 psi at 1,000 gpm is counted');
    expect(textOf(page!)).toContain('“Assist valve, Engine 3” on record');
  });

  it('doubts a flow that its main can hardly bring', () => {
    const of = (mainIn: number) =>
      hydrantCardFor({ ...request, hydrant: { ...hydrant, mainIn } }).cautions;
    // 1200·(60/20)^0.54 = 2,172 gpm; 0.4085·2172/36 = 24.6 ft/s in 6 in, 55.4 in 4 in, 13.9 in 8 in.
    expect(of(8)).toEqual([]);
    expect(of(6)[0]).toMatch(/24\.6 ft\/s through the 6 in main\. Not likely unless .* both ways/);
    expect(of(4)[0]).toMatch(/55\.4 ft\/s through the 4 in main\. Not likely, even fed from both/);
  });

  it('tells of a drop under the percent of the standard’s 2010 edition, and where it stands', async () => {
    // 80 to 66 psi: 17.5 %, under 25 (NFPA 291, 2010, 4.3.6).
    const small = recordSchemas['flow-tests'].parse({ ...test, residualPsi: 66 });
    const card = hydrantCardFor({ ...request, test: small, street: 'Alder Street' });
    const [page] = await readBack(renderHydrantCard(card, printed));
    expect(textOf(page!)).toContain('under the 25 % of the 2010 edition');
    expect(textOf(page!)).toContain('Alder Street');
    expect(textOf(page!)).toContain('scale bent so that the curve is straight');
  });

  it('says when the test is overdue, and shows no class without one', () => {
    expect(hydrantCardFor(request).test).toMatchObject({ retestOn: '2029-05-20', overdue: false });
    expect(hydrantCardFor({ ...request, today: '2030-01-01' }).test!.overdue).toBe(true);
    const untested = hydrantCardFor({ ...request, test: undefined });
    expect(untested.test).toBeNull();
    expect(untested.lays).toEqual([]);
    expect(untested.noLays).toContain('no flow test on record');
  });

  it('counts no hose that is retired or failed its newest test, and says what is out', () => {
    const id = '01JZ00000000000000000000R1';
    const rig = {
      ...engine('Engine 1', {
        hose: [
          { size: '5', lengthFt: 1000, where: 'supply bed' },
          { size: '4', lengthFt: 600, where: 'supply bed' },
        ],
      }),
      id,
    };
    const length = (more: object) =>
      recordSchemas.hose.parse({ name: 'L', size: '5', lengthFt: 100, rigId: id, ...more });
    const tested = (passed: boolean) => [
      { testedOn: '2025-04-01', psi: 200, passed: true },
      { testedOn: '2026-04-01', psi: 200, passed },
    ];
    const cardOf = (lengths: ReturnType<typeof length>[]) =>
      hydrantCardFor({ ...request, attack: { rig, lengths } });
    // 10 lengths of 100 ft by the rig's record: 1 retired and 2 failed leave 700 ft.
    const some = cardOf([
      length({ retiredOn: '2026-04-14' }),
      ...[0, 1].map(() => length({ serviceTests: tested(false) })),
      ...Array.from({ length: 7 }, () => length({ serviceTests: tested(true) })),
    ]);
    expect(some.lays[0]).toMatchObject({ hose: '5', carriedFt: 700 });
    expect(some.cautions.join()).toContain('3 of 10 retired or failed');
    // What reaches the engine is a matter of the hose's size: the same as with all of it.
    expect(some.lays[0]!.rows[4]!.alone).toEqual(
      hydrantCardFor({ ...request, attack: { rig } }).lays[0]!.rows[4]!.alone,
    );
    const none = cardOf(Array.from({ length: 10 }, () => length({ retiredOn: '2026-04-14' })));
    expect(none.lays[0]).toMatchObject({ hose: '4', carriedFt: 600 });
  });

  it('tells whose hose a length takes, the fewest rigs first', async () => {
    const carriers = [
      engine('Engine 5', { hose: [{ size: '5', lengthFt: 500 }] }),
      engine('Engine 1', { hose: [{ size: '5', lengthFt: 800 }] }),
      engine('Ladder 2', { hose: [{ size: '4', lengthFt: 900 }] }),
    ];
    const attack = { rig: carriers[1]! };
    const card = hydrantCardFor({ ...request, attack, carriers });
    // 800 ft, then 800 and 500 are 1,300 ft; nobody else has 5 in.
    expect(card.lays[0]!.rows.map(({ lengthFt, rigs }) => [lengthFt, rigs])).toEqual([
      [200, 1],
      [400, 1],
      [600, 1],
      [800, 1],
      [1000, 2],
      [1200, 2],
      [1500, null],
    ]);
    const [page] = await readBack(renderHydrantCard(card, printed));
    const text = textOf(page!);
    expect(text).toContain('Engine 1 carries 800 ft of it');
    expect(text).toContain('Past 800 ft: hose of two rigs (Engine 1 800 ft, Engine 5 500 ft)');
    expect(text).toContain('Past 1,300 ft: more of this hose than all rigs carry together');
    expect(overlaps(page!)).toEqual([]);
    const si = hydrantCardFor({ ...request, attack, carriers, units: 'si' });
    const [metric] = await readBack(renderHydrantCard(si, { ...printed, units: 'si' }));
    // 800 ft is 243.8 m (NIST SP 811, B.8): 240 m is still one rig's.
    expect(textOf(metric!)).toContain('Past 244 m: hose of two rigs');
    expect(si.lays[0]!.rows[3]).toMatchObject({ rigs: 1 });
  });

  it('tells of tests dated ahead of today, and names none of them as its source', () => {
    const pumpTest = (testedOn: string) =>
      recordSchemas['pump-tests'].parse({
        rigId: '01JZ00000000000000000000R1',
        testedOn,
        points: [
          { flowGpm: 0, netPsi: 300 },
          { flowGpm: 1500, netPsi: 150 },
        ],
      });
    const pumpTests = [pumpTest('2026-03-01'), pumpTest('2031-03-01')];
    const card = hydrantCardFor({
      ...request,
      attack: { rig: engine('Engine 1'), pumpTests },
      notices: testsAhead('The flow test of H-114', [{ testedOn: '2030-05-06' }], '2026-11-25'),
    });
    expect(card.cautions.join()).toContain('The pump test of Engine 1 dated 2031-03-01');
    expect(card.cautions.join()).toContain('The flow test of H-114 dated 2030-05-06');
    const pump = card.sources.find(({ what }) => what === 'Pump of Engine 1');
    expect(pump!.from).toBe('its own pump test, 2026-03-01');
    const chart = pumpChartFor({ rig: engine('Engine 1'), pumpTests, today: '2026-11-25' });
    expect(chart.pump.origin.date).toBe('2026-03-01');
    expect(chart.cautions.join()).toContain('2031-03-01');
  });

  it('refuses hose that is not laid for supply', () => {
    expect(() => hydrantCardFor({ ...request, hose: ['1-3/4'] })).toThrow(
      /hose has 1-3\/4; allowed/,
    );
  });
});

const long =
  'Hydrant behind the long wholesale market hall by the river bank, second of three '.repeat(2);
const burdened: HydrantCardRequest = {
  ...request,
  hydrant: recordSchemas.hydrants.parse({
    ...hydrant,
    name: long.slice(0, 120),
    type: 'dry barrel with a break-away flange and a left-hand thread, as found'.slice(0, 80),
    owner: `${long}${long}`.slice(0, 200),
    status: 'out of service',
    statusReason: `${long}${long}${long}`.slice(0, 500),
    elevationFt: 12345,
  }),
  test: recordSchemas['flow-tests'].parse({
    ...test,
    testedOn: '2011-05-20',
    residualPsi: 76,
    statedFlowGpm: undefined,
    by: long.slice(0, 200),
    flowing: [{ outletIn: 2.5, pitotPsi: 3 }],
  }),
  attack: { rig: engine(long.slice(0, 120), { assistValve: true }) },
  booster: { rig: engine(long.slice(0, 120)) },
  neighbours: Array.from({ length: 6 }, (_, index) => ({
    name: long.slice(0, 120),
    alongFt: 1234 * (index + 1),
    q20Gpm: 1234,
    outOfService: index % 2 === 0,
  })),
  invented: true,
};

describe('a hydrant card on paper', () => {
  it.each([
    ['letter', 'us', 'a plain one', request, 1],
    ['a4', 'si', 'a plain one', request, 1],
    ['letter', 'us', 'one with the longest names', burdened, 2],
    ['a4', 'si', 'one with the longest names', burdened, 2],
    ['letter', 'si', 'one never tested', { ...request, test: undefined }, 1],
  ] as const)(
    'keeps every text in its place: %s, %s, %s',
    async (paper, units, _what, given, most) => {
      const card = hydrantCardFor({ ...given, units });
      const pages = await readBack(renderHydrantCard(card, { ...printed, paper, units }));
      expect(pages.length).toBeLessThanOrEqual(most);
      for (const page of pages) {
        expect(overlaps(page)).toEqual([]);
        expect(outside(page)).toEqual([]);
        expect(page.images).toBe(0);
        expect(textOf(page)).toContain('Defer to your department');
        for (const { text, sizePt } of page.runs) expect(sizePt, text).toBeGreaterThanOrEqual(7.99);
      }
    },
  );

  it('has OUT OF SERVICE as its largest words', async () => {
    const card = hydrantCardFor({
      ...request,
      hydrant: { ...hydrant, status: 'out of service', statusReason: 'Stem broken' },
    });
    const [page] = await readBack(renderHydrantCard(card, printed));
    const sizeOf = (text: string) => page!.runs.find((run) => run.text === text)!.sizePt;
    expect(sizeOf('OUT OF SERVICE')).toBe(Math.max(...page!.runs.map(({ sizePt }) => sizePt)));
    expect(textOf(page!)).toContain('Stem broken');
  });

  it('prints the numbers of the card', async () => {
    const card = hydrantCardFor(request);
    const [page] = await readBack(renderHydrantCard(card, printed));
    const texts = page!.runs.map(({ text }) => text);
    for (const { alone, boosted } of card.lays[0]!.rows) {
      expect(texts).toContain(Math.round(alone.flowGpm).toLocaleString('en-US'));
      expect(texts).toContain(`${Math.round(boosted.pdpPsi)}`);
    }
    expect(texts).toContain(Math.round(card.test!.q20Gpm).toLocaleString('en-US'));
  });
});

describe('cards of the invented district', () => {
  it.each([
    ['letter', 'us'],
    ['letter', 'si'],
  ] as const)(
    'take one page each: %s, %s',
    async (paper, units) => {
      const records = await demoRecords();
      const hydrants = (await records.all('hydrants')).slice(0, 60);
      const tests = await records.all('flow-tests');
      const cards = hydrantCardsFrom({
        records: {
          rigs: await records.all('rigs'),
          pumpTests: await records.all('pump-tests'),
          nozzles: [],
          appliances: await records.all('appliances'),
          hose: await records.all('hose'),
          department: records.department,
        },
        hydrants,
        around: hydrants,
        testOf: ({ id }) => tests.find(({ hydrantId }) => hydrantId === id),
        streets: buildStreetNetwork(await records.all('streets')),
        today: '2026-12-01',
        invented: true,
        units,
      });
      const pages = await readBack(renderHydrantCards(cards, { ...printed, paper, units }));
      expect(pages).toHaveLength(hydrants.length);
      for (const page of pages) expect(overlaps(page)).toEqual([]);
      // The valve on record is used, by the booster whose it is.
      expect(textOf(pages[0]!)).toContain('“Assist valve, Engine 1” on record');
      expect(textOf(pages[0]!)).toMatch(/Street|Avenue|Road|Drive|Lane|Court|Way/);
      if (units === 'si')
        for (const page of pages) expect(textOf(page)).not.toMatch(/\d (psi|gpm|ft|in)\b/);
    },
    120_000,
  );
});

describe('a stack of cards', () => {
  const stack = (count: number): HydrantCard[] =>
    Array.from({ length: count }, (_, index) =>
      hydrantCardFor({ ...request, hydrant: { ...hydrant, name: `H-${index + 1}` } }),
    );

  it('is one file, each card on a page of its own and told as one of so many', async () => {
    const told: number[] = [];
    const pdf = renderHydrantCards(stack(12), {
      ...printed,
      total: 12,
      onProgress: (done) => told.push(done),
    });
    const pages = await readBack(pdf);
    expect(pages).toHaveLength(12);
    pages.forEach((page, index) => {
      expect(textOf(page)).toContain(`Card ${index + 1} of 12`);
      expect(page.runs.some(({ text }) => text === `H-${index + 1}`)).toBe(true);
      expect(overlaps(page)).toEqual([]);
    });
    expect(told).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('that is cancelled leaves nothing half-written, and what was there before', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'plugside-paper-'));
    const path = join(folder, 'cards.pdf');
    writeFileSync(path, 'before');
    const cancel = new AbortController();
    const onProgress = (done: number) => done === 4 && cancel.abort();
    const pdf = renderHydrantCards(stack(8), { ...printed, signal: cancel.signal, onProgress });
    await expect(writePdf(path, pdf, cancel.signal)).rejects.toThrow(/abort/i);
    expect(readFileSync(path, 'utf8')).toBe('before');
    expect(readdirSync(folder)).toEqual(['cards.pdf']);
    rmSync(folder, { recursive: true });
  });

  it('of none is refused', async () => {
    await expect(readBack(renderHydrantCards([], printed))).rejects.toThrow(/no hydrant to print/);
  });

  it('fails as its cards fail', async () => {
    async function* broken(): AsyncGenerator<HydrantCard> {
      yield* stack(2);
      throw new Error('the records are gone');
    }
    await expect(readBack(renderHydrantCards(broken(), printed))).rejects.toThrow(
      'records are gone',
    );
  });
});
