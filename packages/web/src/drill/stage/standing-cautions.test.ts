import { createDrill, evolutionOf, step, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { cautionNow } from './standing-cautions.ts';

const scene = evolutionOf('boost through valve')!.scene();
const hydrant = 'hydrant operator' as const;

describe('the caution of the moment', () => {
  it('is none while nothing moves', () => {
    const { state } = createDrill(scene, 1);
    expect(cautionNow(scene, viewFor(hydrant, scene, state))).toBeUndefined();
  });

  it('keeps people clear of large hose that fills', () => {
    const drill = createDrill(scene, 1);
    step(drill, [
      {
        role: hydrant,
        action: { do: 'couple', hose: 'suction', end: 'from', port: 'V1.pump-suction' },
      },
      { role: hydrant, action: { do: 'couple', hose: 'suction', end: 'to', port: 'B1.intake1' } },
      { role: hydrant, action: { do: 'set valve', valve: 'V1.handle', opening: 0.3, overS: 20 } },
    ]);
    let told: string | undefined;
    for (let tick = 0; tick < 400 && !told; tick++) {
      step(drill);
      told = cautionNow(scene, viewFor(hydrant, scene, drill.state));
    }
    expect(told).toMatch(/stand clear/);
  });

  it('asks to shut slowly while a hydrant is being shut', () => {
    const drill = createDrill(scene, 1);
    step(drill, [
      { role: hydrant, action: { do: 'set valve', valve: 'H1.stem', opening: 0, overS: 20 } },
    ]);
    for (let tick = 0; tick < 20; tick++) step(drill);
    expect(cautionNow(scene, viewFor(hydrant, scene, drill.state))).toMatch(/Shut slowly/);
  });
});
