import fc from 'fast-check';
import { expect, it } from 'vitest';
import { stacked } from './stacked.ts';

const room = { top: 0, bottom: 2000 };

it('leaves numbers on dots that are apart', () => {
  const dots = [
    { x: 10, y: 10 },
    { x: 10, y: 60 },
  ];
  expect(stacked(dots, 20, room)).toEqual(dots);
});

it('never moves a number in time, and none onto another while there is room', () => {
  const dot = fc.record({
    x: fc.integer({ min: 0, max: 300 }),
    y: fc.integer({ min: 0, max: 2000 }),
  });
  fc.assert(
    fc.property(fc.array(dot, { maxLength: 20 }), (dots) => {
      const numbers = stacked(dots, 20, room);
      numbers.forEach((one, i) => {
        expect(one.x).toBe(dots[i]!.x);
        expect(one.y).toBeGreaterThanOrEqual(room.top);
        expect(one.y).toBeLessThanOrEqual(room.bottom);
        for (const other of numbers.slice(0, i)) {
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(20 - 1e-6);
        }
      });
    }),
  );
});

it('puts a number nearest to its dot that is free', () => {
  const dots = [
    { x: 50, y: 100 },
    { x: 50, y: 100 },
  ];
  expect(Math.abs(stacked(dots, 20, room)[1]!.y - 100)).toBe(20);
});
