import { createDrill, evolutionOf, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { unitsIn } from '../../editing/use-units.ts';
import { gaugeReading, gaugeTicks, gaugeTop } from './gauge-scale.ts';
import { tankLamps } from './tank-lamps.ts';

describe('a tank’s lamps', () => {
  it('are eighths', () => {
    // 563 of 750 gal is 0.7507, six eighths.
    expect(tankLamps(563 / 750)).toEqual({ number: '¾', unit: 'full' });
    expect(tankLamps(0.88).number).toBe('⅞');
    expect(tankLamps(1)).toEqual({ number: 'full', unit: '' });
    expect(tankLamps(0.02)).toEqual({ number: 'empty', unit: '' });
    expect(tankLamps(1.2).number).toBe('full');
  });

  it.each(['us', 'si'] as const)('are no gallons or litres on the gauge, in %s', (system) => {
    const scene = evolutionOf('tank and hydrant')!.scene();
    const { state } = createDrill(scene, 1);
    state.tanks[0]!.gal = scene.tanks[0]!.capacityGal * 0.76;
    const { gauges } = viewFor('attack operator', scene, state);
    const tank = gauges.find(({ unit }) => unit === 'gal')!;
    const units = unitsIn(system);
    const top = gaugeTop(scene, tank);
    expect(gaugeReading(tank, tank.value, units, top)).toEqual({
      number: '¾',
      unit: 'full',
      vacuum: false,
    });
    const ticks = gaugeTicks(top, tank, units).map(({ text }) => text);
    expect(ticks).toEqual(['E', '¼', '½', '¾', 'F']);
  });
});
