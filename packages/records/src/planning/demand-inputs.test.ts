import { describe, expect, it } from 'vitest';
import { demandInputs } from './demand-inputs.ts';

describe('what a record tells the demand methods', () => {
  it('takes figures as they are and words as they are meant', () => {
    const { inputs, assumed } = demandInputs({
      areaFt2: 2400,
      storeys: 2,
      exposures: 1,
      sprinklered: false,
      construction: 'wood frame',
      occupancy: 'dwelling',
    });
    expect(inputs).toEqual({
      areaFt2: 2400,
      storeys: 2,
      exposures: 1,
      sprinklers: 'none',
      constructionClass: 'frame',
      constructionType: 'V-B',
      dwelling: true,
    });
    expect(Object.keys(assumed).sort()).toEqual([
      'constructionClass',
      'constructionType',
      'dwelling',
    ]);
  });

  it('takes a type of the building code where one is written', () => {
    const { inputs, assumed } = demandInputs({ construction: 'steel, type IIB' });
    expect(inputs).toMatchObject({
      constructionClass: 'non-combustible',
      constructionType: 'II-B',
    });
    expect(assumed.constructionType).toBeUndefined();
  });

  it('never guesses the standard of sprinklers, nor what is not on record', () => {
    expect(demandInputs({ sprinklered: true }).inputs).toEqual({});
    expect(demandInputs({ sprinklered: true }).assumed.sprinklers).toMatch(/by which standard/);
    expect(demandInputs({ standpipe: false }).inputs).toEqual({ standpipes: 0 });
    expect(demandInputs({ standpipe: true }).assumed.standpipes).toMatch(/how many/);
    expect(demandInputs({ construction: 'unheard of' }).inputs).toEqual({});
  });
});
