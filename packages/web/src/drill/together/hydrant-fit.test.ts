import { boostedAtHydrant, readPlan } from '@plugside/fireground';
import type { Fields } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { hydrantFit, isShort } from './hydrant-fit.ts';
import { asked, type DrillSource, type RoomWish, sourceProblem } from './new-room.ts';

const record: Fields<'hydrants'> = {
  name: 'Mill Lane 4',
  longitude: -90.5,
  latitude: 40.5,
  status: 'in service',
  steamerIn: 4.5,
  sideOutlets: 2,
  sideOutletIn: 2.5,
  origins: {},
};
const test = (staticPsi: number, residualPsi: number, flowGpm: number) =>
  ({
    hydrantId: 'h',
    testedOn: '2026-05-06',
    staticPsi,
    residualPsi,
    flowing: [{ flowGpm }],
  }) as unknown as Fields<'flow-tests'>;
const today = '2026-06-01';
const boost = 'boost through valve';
const strong = test(72, 52, 1400);

describe('an evolution on a hydrant of the records', () => {
  it('fits where the test gives a curve', () => {
    const fit = hydrantFit(boost, record, strong, today);
    expect(fit).toMatchObject({ fits: true });
    // Two lines of 150 gpm and one of 250 at their rated pressure.
    expect(fit.lines!.demandGpm).toBe(550);
    expect(isShort(fit.lines!)).toBe(false);
  });

  it('is told of where its lines will be short of water', () => {
    const { fits, lines } = hydrantFit(boost, record, test(40, 24, 200), today);
    expect(fits).toBe(true);
    expect(isShort(lines!)).toBe(true);
  });

  it('without a test says why not and what to do', () => {
    const { fits, notices } = hydrantFit(boost, record, undefined, today);
    expect(fits).toBe(false);
    expect(notices).toMatchObject([{ code: 'no-flow-test', level: 'error' }]);
    expect(notices[0]!.text).toMatch(/Enter one, or pick another hydrant/);
  });

  it('without a large outlet, or the outlets that are used, says so by name', () => {
    const { steamerIn: _, ...small } = record;
    expect(hydrantFit(boost, small, strong, today)).toMatchObject({
      fits: false,
      problem: expect.stringMatching(/Mill Lane 4 has no large outlet/),
    });
    expect(
      hydrantFit('side suction lines', { ...record, sideOutlets: 0 }, strong, today),
    ).toMatchObject({ fits: false, problem: expect.stringMatching(/no side outlet 1/) });
  });

  it('tells the doubts of an old test, and that it is out of service', () => {
    const out = { ...record, status: 'out of service', statusReason: 'frozen' } as const;
    const codes = hydrantFit(boost, out, strong, '2036-06-01').notices.map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['old-test', 'out-of-service']));
  });
});

describe('what the server is asked for', () => {
  const plan = boostedAtHydrant({ title: 'A way' });
  const wish: Omit<RoomWish, 'source'> = {
    start: 'hose laid',
    crew: '',
    guided: true,
    benchmarks: {},
    seed: '',
  };

  it('on a hydrant: the evolution with it, its steps shown', () => {
    const source: DrillSource = { from: 'hydrant', key: boost, hydrantId: '01', fits: true };
    expect(asked({ ...wish, source }, plan)).toEqual({
      evolution: boost,
      hydrantId: '01',
      guided: true,
    });
  });

  it('for a building: the way’s plan, named for both', () => {
    const way = { id: 'w', plan, title: 'Hotel: boosted' };
    const source: DrillSource = { from: 'building', buildingId: '02', way };
    const request = asked({ ...wish, source }, boostedAtHydrant({ title: 'In the lay' }));
    expect(request).toMatchObject({ title: 'Hotel: boosted', start: 'hose laid' });
    const read = readPlan(request.plan!);
    expect(read.ok && read.plan.title).toBe('A way');
  });

  it.each([
    [{ from: 'hydrant', key: boost, hydrantId: '', fits: false }, /a hydrant first/],
    [{ from: 'hydrant', key: boost, hydrantId: '01', fits: false }, /see above/],
    [{ from: 'building', buildingId: '', way: null }, /a building first/],
    [{ from: 'building', buildingId: '02', way: null }, /a way first/],
    [{ from: 'record', planId: '' }, /a plan first/],
  ] as [DrillSource, RegExp][])('waits for what is missing: %o', (source, words) => {
    expect(sourceProblem(source)).toMatch(words);
  });
});
