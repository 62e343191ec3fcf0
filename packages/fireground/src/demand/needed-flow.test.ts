import { misses, titled } from '@plugside/hydraulics';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DemandAnswer } from './answer.ts';
import { areaAndInvolvement } from './area-involvement.ts';
import type { BuildingForDemand } from './building.ts';
import { fireCodeFlow } from './fire-code.ts';
import { insuranceRating } from './insurance-rating.ts';
import {
  areaInvolvementRows,
  fireCodeRows,
  insuranceRows,
  ruralRows,
  sprinklerRows,
  standpipeRows,
  volumeRows,
} from './published/needed-flow.ts';
import { deliveryRateGpm, ruralSupply } from './rural-supply.ts';
import { sprinklerDemand } from './sprinkler-demand.ts';
import { standpipeDemand } from './standpipe-demand.ts';
import { volumeRule } from './volume-rule.ts';

const figures = ({ neededGpm, durationMin, totalGal }: DemandAnswer) =>
  ({ neededGpm, durationMin, totalGal }) as {
    neededGpm: number;
    durationMin: number;
    totalGal: number;
  };

describe('area and involvement', () => {
  test.each(titled(areaInvolvementRows))('%s', (_, row) => {
    expect(misses(row, figures(areaAndInvolvement(row.given)))).toEqual([]);
  });

  test('says each line of the arithmetic, in either system', () => {
    const building = {
      lengthFt: 60,
      widthFt: 40,
      storeysInvolved: 2,
      involvedShare: 0.5,
      exposures: 2,
    };
    expect(areaAndInvolvement(building).steps.map(({ text }) => text)).toEqual([
      'Floor: 60 ft × 40 ft = 2,400 ft².',
      'All of 2 floors: 2,400 ft² ÷ 3 × 2 = 1,600 gpm.',
      '2 exposed sides, a quarter of that for each: 800 gpm; together 2,400 gpm.',
      '50 % of it burns: 1,200 gpm.',
    ]);
    // 223 m² × 13.58 L/min × 2 by hand: 6,056; the flow as converted is 1,600 × 3.785 = 6,057.
    expect(areaAndInvolvement(building, { units: 'si' }).steps[1]!.text).toBe(
      'All of 2 floors: 223 m² × 13.6 L/min for each m² × 2 = 6,057 L/min.',
    );
  });

  test('warns past half involved (published limit: FirefighterNation)', () => {
    const at = (involvedShare: number) =>
      areaAndInvolvement({ areaFt2: 3000, involvedShare, exposures: 0 }).notices;
    expect(at(0.5)).toEqual([]);
    expect(at(0.51).map(({ level }) => level)).toEqual(['caution']);
  });
});

describe('volume', () => {
  test.each(titled(volumeRows))('%s', (_, row) => {
    expect(misses(row, figures(volumeRule(row.given)))).toEqual([]);
  });

  test('the largest space goes before a whole floor', () => {
    const building = { areaFt2: 3000, storeyHeightFt: 10, largestSpaceFt3: 12_000 };
    expect(volumeRule(building).neededGpm).toBe(120);
  });
});

describe('insurance rating', () => {
  test.each(titled(insuranceRows))('%s', (_, row) => {
    expect(misses(row, figures(insuranceRating(row.given)))).toEqual([]);
  });

  test('a dwelling of three storeys goes by the formula', () => {
    const answer = insuranceRating({ dwelling: true, storeys: 3, nearestBuildingFt: 200 });
    expect(answer.unanswered?.fields).toEqual([
      'lengthFt',
      'widthFt',
      'constructionClass',
      'contents',
    ]);
  });

  test('factors that sum past 0.6 are refused', () => {
    expect(() =>
      insuranceRating({
        areaFt2: 5000,
        storeys: 1,
        constructionClass: 'frame',
        contents: 'C-3',
        exposureFactor: 0.26,
      }),
    ).toThrow('exposureFactor is 0.26; allowed: 0 to 0.25');
  });

  test('lies on its steps of 250 and 500, and never falls as the building grows', () => {
    const any = fc.record({
      areaFt2: fc.integer({ min: 100, max: 500_000 }),
      storeys: fc.integer({ min: 1, max: 12 }),
      constructionClass: fc.constantFrom(
        'frame',
        'joisted masonry',
        'non-combustible',
        'fire-resistive',
      ),
      contents: fc.constantFrom('C-1', 'C-2', 'C-3', 'C-4', 'C-5'),
      exposureFactor: fc.double({ min: 0, max: 0.25, noNaN: true }),
    });
    fc.assert(
      fc.property(any, fc.integer({ min: 0, max: 200_000 }), (building, moreFt2) => {
        const one = insuranceRating(building as BuildingForDemand).neededGpm!;
        const two = insuranceRating({
          ...(building as BuildingForDemand),
          areaFt2: building.areaFt2 + moreFt2,
        }).neededGpm!;
        expect(one % (one <= 2500 ? 250 : 500)).toBe(0);
        expect(two).toBeGreaterThanOrEqual(one);
      }),
    );
  });
});

describe('rural supply', () => {
  test.each(titled(ruralRows))('%s', (_, row) => {
    expect(misses(row, figures(ruralSupply(row.given)))).toEqual([]);
  });

  test.each([
    [2499, 250],
    [2500, 500],
    [9999, 500],
    [10_000, 750],
    [19_999, 750],
    [20_000, 1000],
  ])('%i gal at %i gpm (recalled: NFPA 1142)', (gal, gpm) => {
    expect(deliveryRateGpm(gal)).toBe(gpm);
  });

  test('lasts as long as its water at its rate', () => {
    const { neededGpm, durationMin, totalGal } = figures(ruralSupply(ruralRows[3]!.given));
    expect(neededGpm * durationMin).toBeCloseTo(totalGal, 6);
  });
});

describe('fire code', () => {
  test.each(titled(fireCodeRows))('%s', (_, row) => {
    expect(misses(row, figures(fireCodeFlow(row.given)))).toEqual([]);
  });

  test('asks for the table where print does not confirm it', () => {
    const answer = fireCodeFlow({ areaFt2: 3601, storeys: 1, dwelling: true });
    expect(answer.neededGpm).toBeNull();
    expect(answer.unanswered).toEqual({
      fields: ['codeTableGpm', 'codeTableHours'],
      text: "The code's table could not be confirmed in print for this building. Read your adopted code, table B105.1(2), for 3,601 ft², and give its flow (1,500 gpm or more) and hours.",
    });
  });

  test('counts the area of all floors: two of 1,900 ft² are past 3,600', () => {
    const home = { areaFt2: 1900, dwelling: true };
    expect(fireCodeFlow({ ...home, storeys: 1 }).neededGpm).toBe(1000);
    expect(fireCodeFlow({ ...home, storeys: 2 }).neededGpm).toBeNull();
  });

  test('a dwelling’s sprinkler standard takes nothing off another building', () => {
    const shop = { areaFt2: 5000, storeys: 1, codeTableGpm: 4000, codeTableHours: 4 };
    expect(fireCodeFlow({ ...shop, sprinklers: 'NFPA 13D' }).neededGpm).toBe(4000);
    expect(fireCodeFlow({ ...shop, dwelling: true, sprinklers: 'NFPA 13D' }).neededGpm).toBe(2000);
  });

  test('sprinklers never raise the flow', () => {
    const building = { areaFt2: 5000, storeys: 1, codeTableGpm: 1250, codeTableHours: 2 };
    const all = ['NFPA 13', 'NFPA 13R', 'NFPA 13D'] as const;
    for (const sprinklers of all) {
      expect(fireCodeFlow({ ...building, sprinklers }).neededGpm).toBeLessThanOrEqual(1250);
    }
  });
});

describe('sprinklers', () => {
  test.each(titled(sprinklerRows))('%s', (_, row) => {
    expect(misses(row, figures(sprinklerDemand(row.given)))).toEqual([]);
  });

  test('the plate on the riser goes before the class of hazard', () => {
    const answer = sprinklerDemand({
      sprinklerHazard: 'ordinary 2',
      sprinklerDensity: 0.25,
      sprinklerAreaFt2: 2000,
      dryPipe: true,
    });
    expect(answer.neededGpm).toBe(750);
  });

  test.each([
    ['light', 175, 230],
    ['ordinary 1', 260, 340],
    ['ordinary 2', 350, 460],
    ['extra 1', 875, 1140],
    ['extra 2', 1150, 1500],
  ] as const)(
    '%s: dry against wet as %i to %i gpm, within 2 %% (published: Maine rule 407-640, appendix B)',
    (sprinklerHazard, wetGpm, dryGpm) => {
      const building = { sprinklerHazard, hoseStreamGpm: 0 };
      const wet = sprinklerDemand(building).neededGpm!;
      const dry = sprinklerDemand({ ...building, dryPipe: true }).neededGpm!;
      expect(Math.abs(dry / wet / (dryGpm / wetGpm) - 1)).toBeLessThan(0.02);
      // A designed system takes about 16 % more than density times area by that table.
      expect(wet).toBeLessThan(wetGpm * 1.001);
    },
  );
});

describe('standpipe', () => {
  test.each(titled(standpipeRows))('%s', (_, row) => {
    expect(misses(row, figures(standpipeDemand(row.given)))).toEqual([]);
  });
});
