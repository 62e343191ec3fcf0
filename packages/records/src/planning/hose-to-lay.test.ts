import { describe, expect, it } from 'vitest';
import { hoseToLay } from './hose-to-lay.ts';

const engine = (name: string, hose: [size: string, lengthFt: number, where?: string][]) => ({
  name,
  hose: hose.map(([size, lengthFt, where]) => ({ size, lengthFt, where })),
});

describe('hose for a lay', () => {
  it('is the largest that the first rig carries enough of', () => {
    const rigs = [
      engine('Engine 1', [
        ['5', 600],
        ['4', 1000],
        ['3', 1200],
      ]),
    ];
    expect(hoseToLay(580, rigs)).toMatchObject({ hose: '5', carriedFt: 600, shortFt: 0 });
    expect(hoseToLay(700, rigs)).toMatchObject({ hose: '4', carriedFt: 1000, notices: [] });
  });

  it('is made up of two rigs before it is smaller', () => {
    const rigs = [
      engine('Engine 1', [
        ['5', 800],
        ['3', 2000],
      ]),
      engine('Engine 2', [['5', 800]]),
    ];
    const found = hoseToLay(1500, rigs);
    expect(found).toMatchObject({ hose: '5', rigNames: ['Engine 1', 'Engine 2'], shortFt: 0 });
    expect(found.notices[0]!.text).toContain('Engine 1 and Engine 2 together');
  });

  it('is two lines of 3 in where there is no large hose but enough of that', () => {
    const found = hoseToLay(600, [engine('Engine 1', [['3', 1400]])]);
    expect(found).toMatchObject({ hose: '3', count: 2, shortFt: 0 });
    expect(found.notices[0]!.code).toBe('no-large-hose');
    expect(hoseToLay(900, [engine('Engine 1', [['3', 1400]])]).count).toBe(1);
  });

  it('says how much is missing where nothing reaches', () => {
    const found = hoseToLay(1700, [engine('Engine 1', [['5', 1000]]), engine('E 2', [['5', 400]])]);
    expect(found).toMatchObject({ hose: '5', carriedFt: 1400, shortFt: 300 });
    expect(found.notices[0]!.text).toMatch(/1,?700 ft.*1,?400 ft.*300 ft are missing/);
  });

  it('leaves attack hose on its bed, and says where nothing is on record', () => {
    const found = hoseToLay(150, [engine('Engine 1', [['2-1/2', 200, 'crosslay']])]);
    expect(found).toMatchObject({ hose: '5', shortFt: 0 });
    expect(found.notices[0]!.code).toBe('no-hose-on-record');
  });
});
