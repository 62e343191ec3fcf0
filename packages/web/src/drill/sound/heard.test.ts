import type { DrillView, GaugeView, NoticedEvent, PumpView } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { heardIn, signalsAfter } from './heard.ts';

const pump = (rigId: string, sounds: PumpView['sounds']): PumpView => ({
  rigId,
  label: rigId,
  inGear: sounds !== 'quiet',
  setting: { mode: 'idle' } as never,
  sounds,
});
const gauge = (id: string, value: number): GaugeView => ({ id, label: id, value, unit: 'psi' });
const view = (pumps: PumpView[], gauges: GaugeView[], paused = false) =>
  ({ pumps, gauges, paused, role: 'attack operator', radio: [] }) as unknown as DrillView;

describe('what is heard', () => {
  it('is nothing of pumps out of gear, nor while the drill stands', () => {
    expect(heardIn(view([pump('A1', 'quiet')], []))).toEqual({ pump: null, rattle: false });
    const standing = view([pump('A1', 'rattling')], [gauge('A1.discharge', 90)], true);
    expect(heardIn(standing)).toEqual({ pump: null, rattle: false });
  });

  it('rises with the pressure of the loudest pump', () => {
    const at = (psi: number) =>
      heardIn(view([pump('A1', 'pumping')], [gauge('A1.discharge', psi)])).pump!;
    expect(at(150).hertz).toBeGreaterThan(at(80).hertz);
    expect(at(150).loudness).toBeGreaterThan(at(80).loudness);
    const two = view(
      [pump('A1', 'pumping'), pump('B1', 'pumping')],
      [gauge('A1.discharge', 80), gauge('B1.discharge', 150)],
    );
    expect(heardIn(two).pump).toEqual(at(150));
  });

  it('rattles where a pump starves', () => {
    expect(heardIn(view([pump('A1', 'no water')], [])).rattle).toBe(true);
    expect(heardIn(view([pump('A1', 'pumping')], [])).rattle).toBe(false);
  });
});

describe('signals', () => {
  const radio = [{ tick: 40, from: 'hydrant operator', text: 'Hooked up' }];
  const events = [{ tick: 60, level: 'caution' }] as unknown as NoticedEvent[];
  const said = { role: 'attack operator', radio } as unknown as DrillView;

  it('are given once, for what came after', () => {
    expect(signalsAfter(39, said, events)).toEqual(['radio', 'caution']);
    expect(signalsAfter(40, said, events)).toEqual(['caution']);
    expect(signalsAfter(60, said, events)).toEqual([]);
  });

  it('are none for one’s own words', () => {
    const own = { ...said, role: 'hydrant operator' } as unknown as DrillView;
    expect(signalsAfter(0, own, [])).toEqual([]);
  });
});
