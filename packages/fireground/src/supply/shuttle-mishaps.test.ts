import { describe, expect, it } from 'vitest';
import { mishaps, shuttleFlow } from '../index.ts';
import type { ShuttlePart, SupplyWay, TenderRound } from './choice.ts';
import { keptUpGpm, shuttleMishaps } from './shuttle-mishaps.ts';

// A round by hand: 5 min out, 3 filling, 5 back, 2 dumping, 1,800 gal of load: 1,800 / 15 = 120 gpm.
const round = (number: number, more: Partial<TenderRound> = {}): TenderRound => ({
  rigId: `T${number}`,
  rigName: `Tender ${number}`,
  tankGal: 2000,
  loadGal: 1800,
  outMin: 5,
  fillMin: 3,
  backMin: 5,
  dumpMin: 2,
  roundTripMin: 15,
  gpm: 120,
  firstAtMin: 10,
  ...more,
});

const part = (tenders: TenderRound[], gpm: number): ShuttlePart => ({
  place: { id: 'H-9', name: 'H-9', kind: 'hydrant', roadMi: 2, fillGpm: 1000 },
  tenders,
  gpm,
  limitedBy: 'tenders',
  tankGal: { value: 2800, origin: { kind: 'default', text: 'Two fifths more' } },
  drawGpm: gpm,
  drawFromMin: 12,
  level: [],
  runsDryAtMin: null,
  pump: { rigId: 'E1', rigName: 'Engine 1', pdpPsi: null, text: '' },
  text: '',
});

describe('a shuttle when something goes wrong', () => {
  const two = part([round(1), round(2)], 240);
  const asked = { wantedGpm: 240, besideGpm: 0, moreGpm: 150 };
  const found = shuttleMishaps(two, asked, 'us');
  const of = (words: string) => found.find(({ what }) => what.includes(words))!;

  it('keeps up half without one of two tenders', () => {
    expect(of('Tender 2 drops out')).toMatchObject({ flowGpm: 120, shortfallGpm: 120 });
    expect(of('Tender 2 drops out').text).toContain('120 gpm short');
  });

  it('is slower to fill where the place gives a fifth less: 1.8 min at 1,000 gpm become 2.25', () => {
    expect(of('slower').flowGpm).toBeCloseTo((2 * 1800) / 15.45, 6);
  });

  it('takes 5 min more a round on a road that takes half as long again', () => {
    expect(of('half as long again').flowGpm).toBeCloseTo((2 * 1800) / 20, 6);
  });

  it('is as much short of one more line as it had no more', () => {
    expect(of('more hand line')).toMatchObject({ flowGpm: 240, wantedGpm: 390, shortfallGpm: 150 });
  });

  it('brings nothing without its only tender', () => {
    const [gone] = shuttleMishaps(part([round(1)], 120), { ...asked, wantedGpm: 100 }, 'us');
    expect(gone).toMatchObject({ flowGpm: 0, shortfallGpm: 100 });
    expect(gone!.text).toContain('the shuttle brings nothing');
  });

  it('counts what hose brings beside it', () => {
    const [gone] = shuttleMishaps(two, { wantedGpm: 900, besideGpm: 660, moreGpm: 150 }, 'us');
    expect(gone).toMatchObject({ flowGpm: 780, shortfallGpm: 120 });
    expect(gone!.text).toContain('with 660 gpm by hose beside it');
  });

  it('keeps up what the shuttle was reckoned with: tenders and either site as the limit', () => {
    for (const [count, gpmEach, oneWayMi] of [
      [1, 1000, 2],
      [3, 1000, 1],
      [12, 250, 0.2],
      [20, 1000, 0.1],
    ] as const) {
      const tenders = Array.from({ length: count }, (_, at) => ({
        id: `T${at}`,
        name: `Tender ${at}`,
        tankGal: 2000 + 100 * at,
      }));
      const flow = shuttleFlow({
        tenders,
        road: { oneWayMi },
        fillSite: { points: 1, gpmEach },
        dumpSite: { points: 1 },
      });
      const rounds = flow.trips.map((trip) => ({
        loadGal: trip.loadGal,
        fillMin: trip.fillSiteMin,
        dumpMin: trip.dumpSiteMin,
        outMin: trip.roundTripMin - trip.fillSiteMin - trip.dumpSiteMin,
        backMin: 0,
      }));
      expect(keptUpGpm(rounds)).toBeCloseTo(flow.gpm, 6);
    }
  });

  it('is told of a way that is a shuttle alone', () => {
    const way: Pick<SupplyWay, 'plan' | 'shuttle'> = { plan: null, shuttle: two };
    expect(mishaps(way, 240).map(({ what }) => what)).toEqual([
      'Tender 1 drops out of the shuttle',
      'Tender 2 drops out of the shuttle',
      'H-9 fills 20 % slower',
      'The road takes half as long again',
      'One more hand line (150 gpm) is wanted',
    ]);
  });
});
