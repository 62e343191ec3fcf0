import { createDrill, evolutionOf, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { unitsIn } from '../../editing/use-units.ts';
import { addReadings, type GaugeHistory, KEPT_S } from './gauge-history.ts';
import { gaugeLimits, gaugeReading, gaugeShare, gaugeTicks, isOut } from './gauge-scale.ts';

const scene = evolutionOf('boost through valve')!.scene();
const { state } = createDrill(scene, 1);
const at = (timeS: number) => ({ ...viewFor('attack operator', scene, state), timeS });

describe('a gauge’s last minutes', () => {
  it('are one reading a second, no older than they are kept', () => {
    let history: GaugeHistory = {};
    for (let tenth = 0; tenth <= 4000; tenth++) history = addReadings(history, at(tenth / 10));
    const readings = history['A1.intake']!;
    expect(readings.length).toBeLessThanOrEqual(KEPT_S + 1);
    expect(readings.length).toBeGreaterThan(KEPT_S * 0.8);
    expect(readings[0]!.timeS).toBeGreaterThanOrEqual(400 - KEPT_S - 1);
  });

  it('begin anew with a drill that does', () => {
    const history = addReadings(addReadings({}, at(60)), at(0));
    expect(history['A1.intake']).toHaveLength(1);
  });
});

describe('limits on a scale', () => {
  it('are the intake’s 20 psi and the attack hose’s 250 psi', () => {
    const view = at(0);
    const limits = (id: string) =>
      gaugeLimits(scene, view, view.gauges.find((gauge) => gauge.id === id)!);
    // 20 psi at a hose-fed intake: "Relay Pumping Operations", Firehouse.
    expect(limits('A1.intake').map(({ value }) => value)).toEqual([20]);
    // 250 psi operating pressure of attack hose: from memory, service test 300 psi over 1.1.
    expect(limits('A1.discharge').map(({ value }) => value)).toEqual([250]);
    expect(isOut(19, limits('A1.intake')[0]!)).toBe(true);
    expect(isOut(251, limits('A1.discharge')[0]!)).toBe(true);
  });

  it('stand on round numbers of the shown unit', () => {
    for (const system of ['us', 'si'] as const)
      for (const id of ['A1.discharge', 'A1.intake'])
        for (const { text } of gaugeTicks(300, { id, unit: 'psi' }, unitsIn(system)))
          expect(text).toMatch(/^\d+$/);
  });

  it('of an intake go below zero, and tell a vacuum in inHg or kPa without a minus', () => {
    const intake = { id: 'A1.intake', unit: 'psi' } as const;
    // By hand: 5 psi are 10.2 inHg, 34.5 kPa.
    expect(gaugeReading(intake, -5, unitsIn('us'))).toMatchObject({
      number: '10',
      unit: 'inHg',
      vacuum: true,
    });
    expect(gaugeReading(intake, -5, unitsIn('si'))).toMatchObject({ number: '34', unit: 'kPa' });
    expect(gaugeReading(intake, 46, unitsIn('us'))).toMatchObject({ unit: 'psi', vacuum: false });
    const [zero] = gaugeTicks(150, intake, unitsIn('us'));
    expect(zero).toMatchObject({ text: '0', at: gaugeShare(intake, 0, 150) });
    expect(gaugeShare(intake, -5, 150)).toBeLessThan(zero!.at);
    expect(gaugeShare({ id: 'A1.discharge' }, 0, 300)).toBe(0);
    expect(gaugeShare({ id: 'A1.discharge' }, -5, 300)).toBe(0);
  });
});
