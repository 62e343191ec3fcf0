import { boostedAtHydrant, relay, solveNow, twoHydrants } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { elevationOf, laysInto, riseOf, setLayLength, setRise } from './lay.ts';

describe('the lay', () => {
  const boosted = boostedAtHydrant({
    lay: { lengthFt: 900, riseFt: 35 },
    booster: { sideLines: [{ hose: '3' }] },
    attackLines: [{ riseFt: 20 }],
  });
  const lay = laysInto(boosted, 'A1')[0]!;

  it('is what comes to the attack engine, not the short hoses at the hydrant', () => {
    expect(lay.lines.map((line) => line.id)).toEqual(['lay']);
    expect(lay.fromId).toBe('H1');
    expect(riseOf(boosted, lay)).toBe(35);
  });

  it('moves the attack engine and its nozzles together when it climbs more', () => {
    const higher = setRise(boosted, lay, 50);
    expect(elevationOf(higher, 'A1')).toBe(50);
    expect(elevationOf(higher, 'N1')).toBe(elevationOf(boosted, 'N1') + 15);
    expect(elevationOf(higher, 'H1')).toBe(0);
    expect(setRise(higher, lay, 35)).toEqual(boosted);
  });

  it('costs 0.434 psi for each foot that it climbs, nothing else changing (static water column)', () => {
    const shut = {
      ...setRise(boosted, lay, 0),
      nozzles: boosted.nozzles.map((one) => ({ ...one, open: false })),
    };
    const low = solveNow(shut).sceneIntakePsi;
    const high = solveNow(setRise(shut, laysInto(shut, 'A1')[0]!, 40)).sceneIntakePsi;
    expect(low - high).toBeCloseTo(40 * 0.434, 3);
  });

  it('keeps parallel lines as long as each other', () => {
    const plan = relay({ lay: { count: 2 } });
    const leg = laysInto(plan, 'P2')[0]!;
    const longer = setLayLength(plan, leg, 1450);
    expect(longer.lines.find((line) => line.id === 'leg1')?.lengthFt).toBe(1450);
    expect(longer.lines.find((line) => line.id === 'leg2')?.lengthFt).toBe(1000);
  });

  it('stretches heights along the line with its length', () => {
    const hilly = {
      ...boosted,
      lines: boosted.lines.map((line) =>
        line.id === 'lay' ? { ...line, terrain: [{ alongFt: 450, elevationFt: 60 }] } : line,
      ),
    };
    const longer = setLayLength(hilly, laysInto(hilly, 'A1')[0]!, 1800);
    const terrain = longer.lines.find((line) => line.id === 'lay')?.terrain;
    expect(terrain).toEqual([{ alongFt: 900, elevationFt: 60 }]);
  });

  it('knows each of two lays into one engine, and moves the second hydrant rather than the engine', () => {
    const plan = twoHydrants({ second: { lengthFt: 800 } });
    const [first, second] = laysInto(plan, 'A1');
    expect([first?.fromId, second?.fromId]).toEqual(['H1', 'H2']);
    const moved = setRise(plan, second!, 25);
    expect(riseOf(moved, laysInto(moved, 'A1')[0]!)).toBe(riseOf(plan, first!));
    expect(riseOf(moved, laysInto(moved, 'A1')[1]!)).toBe(25);
    expect(elevationOf(moved, 'A1')).toBe(elevationOf(plan, 'A1'));
  });
});
