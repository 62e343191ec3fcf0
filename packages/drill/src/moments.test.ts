import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { boostThroughValve } from './evolutions/boost-through-valve.ts';
import { step } from './step.ts';
import { countTick } from './tally.ts';

describe('moments', () => {
  const make = () => createDrill(boostThroughValve.scene(), 1);

  it('that stop for less than a second are one; a longer stop makes another, told again after a minute', () => {
    const drill = make();
    const { state } = drill;
    const line = state.tally.lines['main under'];
    const hydrant = state.hydrants[0]!;
    const tick = (mainPsi: number, ticks: number) => {
      let told = 0;
      for (let n = 0; n < ticks; n++) {
        hydrant.mainPsi = mainPsi;
        told += countTick(drill).filter(({ kind }) => kind === 'main under limit').length;
        state.tick++;
      }
      return told;
    };
    expect(tick(15, 10) + tick(25, 5) + tick(12, 10)).toBe(1);
    expect(line).toMatchObject({
      ticks: 20,
      anyTicks: 20,
      moments: [{ piece: 'H1', fromTick: 0, worst: 12 }],
    });
    expect(tick(25, 30) + tick(18, 1)).toBe(0);
    expect(line.moments.length).toBe(2);
    expect(line.moments[0]).toEqual({ piece: 'H1', fromTick: 0, toTick: 25, worst: 12 });
    expect(tick(25, 61 * 20) + tick(18, 1)).toBe(1);
    expect(line.moments.length).toBe(3);
  });

  it('of a pump that starves on and on fill no log', () => {
    const drill = make();
    step(drill, [
      { role: 'hydrant operator', action: { do: 'set valve', valve: 'H1.stem', opening: 0.03 } },
    ]);
    for (let n = 0; n < 1200; n++) step(drill);
    const told = drill.log.filter(
      (entry) => entry.kind === 'event' && entry.event.kind === 'cavitating',
    );
    expect(told.length).toBeGreaterThan(0);
    expect(told.length).toBeLessThan(12);
  });
});
