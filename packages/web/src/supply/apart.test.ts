import fc from 'fast-check';
import { expect, it } from 'vitest';
import { apart } from './apart.ts';

const room = { left: 0, right: 2000 };

it('leaves dots that are apart where they are', () => {
  const places = [
    { x: 10, y: 10 },
    { x: 60, y: 10 },
  ];
  expect(apart(places, 20, room)).toEqual(places);
});

it('moves dots off each other sideways alone, whatever they are', () => {
  const place = fc.record({
    x: fc.integer({ min: 0, max: 2000 }),
    y: fc.integer({ min: 0, max: 300 }),
  });
  fc.assert(
    fc.property(fc.array(place, { maxLength: 20 }), (places) => {
      const moved = apart(places, 20, room);
      moved.forEach((one, i) => {
        expect(one.y).toBe(places[i]!.y);
        for (const other of moved.slice(0, i)) {
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(20 - 1e-6);
        }
      });
    }),
  );
});
