import { createDrill, evolutionOf, type Submitted, step, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { unitsIn } from '../../../editing/use-units.ts';
import { pieceFacts } from './piece-facts.ts';
import { sitsLooks } from './sits-looks.ts';

function after(key: string, seconds: number, asked: Submitted[] = []) {
  const scene = evolutionOf(key)!.scene();
  const drill = createDrill(scene, 1);
  step(drill, asked);
  while (drill.state.tick < seconds * 20) step(drill);
  return { scene, view: viewFor('instructor', scene, drill.state) };
}

describe('facts in the drawing of the whole', () => {
  it('do not warn of the vacuum with which a pump lifts from its tank', () => {
    const { scene, view } = after('tank and hydrant', 10);
    const pump = view.truth!.state.pumps[0]!;
    // The tank stands hardly above the pump, so that there is friction alone: a little under nothing.
    expect(pump.flowGpm).toBeGreaterThan(50);
    expect(pump.intakePsi).toBeLessThan(scene.benchmarks.intakePsi);
    const facts = pieceFacts(pump.rigId, view, scene.benchmarks.intakePsi, unitsIn('us'));
    expect(facts.find(({ label }) => label === 'intake')?.warns).toBe(false);
  });

  it('warn of an intake that hose feeds with too little', () => {
    const { scene, view } = after('boost through valve', 30, [
      {
        role: 'instructor',
        action: {
          do: 'arm fault',
          fault: { id: 'kink', kind: 'hose kinked', hose: 'lay', factor: 100 },
        },
      },
    ]);
    const pump = view.truth!.state.pumps.find(({ rigId }) => rigId === 'A1')!;
    expect(pump.intakePsi).toBeLessThan(scene.benchmarks.intakePsi);
    const facts = pieceFacts('A1', view, scene.benchmarks.intakePsi, unitsIn('us'));
    expect(facts.find(({ label }) => label === 'intake')?.warns).toBe(true);
  });
});

describe('a piece that sits on another', () => {
  it('is seen to flow while water goes through it, and to be full once its lines are shut', () => {
    const flowing = after('boost through valve', 2);
    expect(flowing.view.truth!.state.hydrants[0]!.flowGpm).toBeGreaterThan(50);
    expect(sitsLooks(flowing.view.truth!, 'V1', 'H1')).toBe('flows');
    const shut = after('boost through valve', 20, [
      {
        role: 'attack operator',
        action: { do: 'set valve', valve: 'A1.intake1', opening: 0, overS: 5 },
      },
    ]);
    expect(shut.view.truth!.state.hydrants[0]!.flowGpm).toBeLessThan(1);
    expect(sitsLooks(shut.view.truth!, 'V1', 'H1')).toBe('full');
  });
});
