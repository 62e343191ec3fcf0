import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BuildingField, BuildingForDemand } from './building.ts';
import { buildingFields } from './building-fields.ts';
import { demandByMethods, demandMethods } from './demand-by-methods.ts';
import { demandFromLines } from './demand-from-lines.ts';
import { governingDemand } from './governing-demand.ts';

describe('side by side', () => {
  test('nothing known: every method says what it needs', () => {
    const answers = demandByMethods({});
    expect(answers.map(({ method }) => method)).toEqual(demandMethods.map(({ method }) => method));
    for (const { neededGpm, unanswered } of answers) {
      expect(neededGpm).toBeNull();
      expect(unanswered!.fields.length).toBeGreaterThan(0);
      expect(unanswered!.text).toMatch(/^Give /);
    }
  });

  test('an input out of its range stops only the methods that use it', () => {
    const answers = demandByMethods({ lengthFt: 50, widthFt: 30, storeys: 0, standpipes: 1 });
    const by = (method: string) => answers.find((answer) => answer.method === method)!;
    expect(by('area and involvement').unanswered?.problem).toEqual({
      field: 'storeys',
      value: 0,
      allowed: 'a whole number, 1 or more',
      remedy: 'Check the number and its unit, or leave it out.',
    });
    expect(by('standpipe').neededGpm).toBe(500);
  });

  test('says a missing list as a sentence, and that a building without sprinklers has none', () => {
    const [, , , rural, , sprinklers] = demandByMethods({ areaFt2: 900, sprinklers: 'none' });
    expect(rural!.unanswered!.text).toBe(
      'Give the number of storeys, the height of a storey, the hazard number of the occupancy and the type of construction.',
    );
    expect(sprinklers!.unanswered).toEqual({ fields: [], text: 'The building has no sprinklers.' });
  });

  test('a building without standpipes has none to work', () => {
    const standpipe = demandByMethods({ standpipes: 0 }).find(
      ({ method }) => method === 'standpipe',
    );
    expect(standpipe!.unanswered).toEqual({
      fields: [],
      text: 'The building has no standpipes.',
    });
  });

  test('each names all that it takes: what it waits for is among it, and nothing else moves it', () => {
    const whole: BuildingForDemand = {
      ...{ lengthFt: 80, widthFt: 40, storeys: 2, storeyHeightFt: 12, exposures: 1 },
      ...{ constructionClass: 'frame', contents: 'C-3', constructionType: 'V-B' },
      ...{ occupancyHazard: 5, codeTableGpm: 2000, codeTableHours: 2, sprinklers: 'NFPA 13' },
      ...{ sprinklerHazard: 'ordinary 1', standpipes: 1, dwelling: false, involvedShare: 0.5 },
    };
    const other: BuildingForDemand = {
      ...{
        lengthFt: 90,
        widthFt: 50,
        areaFt2: 5000,
        storeys: 3,
        storeyHeightFt: 14,
        ridgeRiseFt: 9,
      },
      ...{ storeysInvolved: 1, involvedShare: 0.2, largestSpaceFt3: 9000, exposures: 3 },
      ...{ constructionClass: 'fire-resistive', contents: 'C-5', exposureFactor: 0.2 },
      ...{ communicationFactor: 0.3, constructionType: 'I-A', occupancyHazard: 3 },
      ...{ constructionNumber: 1.5, sprinklers: 'NFPA 13R', codeTableGpm: 3000, codeTableHours: 3 },
      ...{ codeSprinkleredLeastGpm: 1000, sprinklerHazard: 'extra 2', sprinklerDensity: 0.5 },
      ...{ sprinklerAreaFt2: 2500, hoseStreamGpm: 750, dryPipe: true, standpipes: 3 },
    };
    for (const { inputs, unanswered } of demandByMethods({}))
      expect(inputs).toEqual(expect.arrayContaining(unanswered!.fields));
    const before = demandByMethods(whole);
    for (const field of Object.keys(other) as BuildingField[]) {
      const after = demandByMethods({ ...whole, [field]: other[field] });
      after.forEach((answer, at) => {
        if (!answer.inputs.includes(field)) expect(answer, field).toEqual(before[at]);
      });
    }
  });

  test('no more storeys burn than there are', () => {
    const [area] = demandByMethods({ areaFt2: 900, storeys: 2, storeysInvolved: 3 });
    expect(area!.unanswered!.problem!.field).toBe('storeysInvolved');
  });

  const value = (field: BuildingField): fc.Arbitrary<unknown> => {
    const row = buildingFields[field];
    if (row.kind === 'choice') return fc.constantFrom<unknown>(...row.choices, 'none of them');
    if (row.kind === 'yes or no') return fc.boolean();
    const { least, greatest } = row;
    return row.kind === 'count'
      ? fc.integer({ min: least - 1, max: greatest })
      : fc.oneof(fc.double({ min: least, max: greatest, noNaN: true }), fc.constant(Number.NaN));
  };
  const anyBuilding = fc.record(
    Object.fromEntries(
      (Object.keys(buildingFields) as BuildingField[]).map((field) => [field, value(field)]),
    ),
    { requiredKeys: [] },
  ) as fc.Arbitrary<BuildingForDemand>;

  test('anything at all is answered with a flow above 0 or with what to give, and the same each time', () => {
    let flows = 0;
    fc.assert(
      fc.property(anyBuilding, fc.constantFrom('us' as const, 'si' as const), (building, units) => {
        const answers = demandByMethods(building, { units });
        for (const answer of answers) {
          const { neededGpm, durationMin, totalGal, unanswered } = answer;
          if (neededGpm === null) expect(unanswered?.text).toBeTruthy();
          else {
            flows++;
            expect(unanswered).toBeUndefined();
            expect(Number.isFinite(neededGpm) && neededGpm >= 0).toBe(true);
            expect(answer.steps.map(({ text }) => text).join(' ')).not.toMatch(/NaN|—|undefined/);
            if (units === 'si') {
              const words = [...answer.steps, ...answer.notices].map(({ text }) => text).join(' ');
              expect(words).not.toMatch(/\d (gpm|ft|ft²|gal)\b/);
            }
            if (totalGal !== undefined) {
              expect(neededGpm * durationMin!).toBeCloseTo(totalGal, 3);
            }
          }
        }
        expect(demandByMethods(building, { units })).toEqual(answers);
      }),
      { numRuns: 300 },
    );
    expect(flows).toBeGreaterThan(100);
  });
});

describe('which governs', () => {
  const answers = demandByMethods({
    lengthFt: 60,
    widthFt: 40,
    storeys: 1,
    storeyHeightFt: 10,
    involvedShare: 0.25,
    dwelling: true,
    nearestBuildingFt: 20,
  });

  // By hand: 60·40/3·0.25 = 200; 24,000/100 = 240; 1,000 by spacing; 1,000 by the code.
  test('the greatest where nothing is chosen, the first of equals', () => {
    const governing = governingDemand(answers);
    expect(governing.answer?.method).toBe('insurance rating');
    expect(governing).toMatchObject({
      neededGpm: 1000,
      by: 'greatest',
      rangeGpm: { least: 200, greatest: 1000 },
    });
  });

  test('the department’s choice, with a word where another asks for more', () => {
    const governing = governingDemand(answers, 'volume');
    expect(governing.neededGpm).toBe(240);
    expect(governing.notices).toHaveLength(1);
  });

  test('a choice without an answer is not replaced', () => {
    const governing = governingDemand(answers, 'standpipe');
    expect(governing.neededGpm).toBeNull();
    expect(governing.notices[0]!.text).toBe(
      'The department goes by standpipe, which has no answer here. Give the standpipes in use at once.',
    );
  });
});

describe('lines in use', () => {
  // Nozzle maker instruction manual LIN-050, tip flow table: 15/16 in at 50 psi, 185 gpm; 1¼ in at 80 psi, 415.
  test('two 15/16 in tips and a master stream (published: tip flow table)', () => {
    const answer = demandFromLines([
      {
        name: 'Hand lines',
        count: 2,
        nozzle: { kind: 'smooth-bore', tipIn: 15 / 16, ratedPsi: 50 },
      },
      { nozzle: { kind: 'smooth-bore', tipIn: 1.25, ratedPsi: 80 } },
    ]);
    expect(Math.abs(answer.neededGpm! - (2 * 185 + 415))).toBeLessThanOrEqual(2);
    expect(answer.steps.map(({ text }) => text)).toEqual([
      'Hand lines: 2 × 185 gpm = 369 gpm.',
      'Line 2: 415 gpm.',
      'Together: 784 gpm.',
    ]);
  });

  test('a metered flow, a fog and an automatic add up', () => {
    const answer = demandFromLines([
      { flowGpm: 160 },
      { nozzle: { kind: 'fog', ratedGpm: 150, ratedPsi: 75 } },
      { nozzle: { kind: 'automatic', ratedPsi: 100, leastGpm: 70, greatestGpm: 200 } },
    ]);
    expect(answer.neededGpm).toBe(510);
    expect(answer.notices).toHaveLength(1);
  });

  test('refuses what cannot be, and asks where there is nothing', () => {
    expect(() => demandFromLines([{ flowGpm: -1 }])).toThrow('lines[0].flowGpm is -1; allowed: 0');
    expect(() => demandFromLines([{ flowGpm: 100, count: 0 }])).toThrow('lines[0].count is 0');
    expect(demandFromLines([]).unanswered?.text).toMatch(/^Add the lines/);
  });
});
