import { crowFt, type LonLat } from '@plugside/records/streets';
import { describe, expect, it } from 'vitest';
import { middleOf } from './route-middle.ts';

describe('the middle of a lay', () => {
  it('is as far along the hose from either end, round corners too', () => {
    const path: LonLat[] = [
      [-30, 0],
      [-30, 0.001],
      [-29.997, 0.001],
      [-29.997, 0.001],
    ];
    const middle = middleOf(path);
    const before = crowFt(path[0]!, path[1]!) + crowFt(path[1]!, middle);
    expect(before).toBeCloseTo(crowFt(middle, path[3]!), 3);
  });

  it('of a lay without length is where it is', () => {
    expect(middleOf([[-30, 0]])).toEqual([-30, 0]);
  });
});
