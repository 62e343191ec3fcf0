import { mostWater, newHydrant } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { evolutionOf, evolutions } from './evolutions/index.ts';
import { judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { rolesIn } from './scene-posts.ts';
import { sceneWithHydrant } from './scene-with-hydrant.ts';
import { step } from './step.ts';

const strong = newHydrant('any', {
  name: 'Mill Lane 4',
  main: 'Mill Lane, 12 in',
  staticPsi: 72,
  residualPsi: 58,
  testGpm: 1400,
  sideOutlets: 2,
  elevationFt: 300,
});

describe.each(evolutions.map((one) => [one.title, one] as const))('%s', (_title, evolution) => {
  it('on another hydrant has its curve and main, and all else as before', () => {
    const own = evolution.scene();
    const scene = sceneWithHydrant(own, strong);
    const { id, elevationFt } = own.plan.hydrants[0]!;
    expect(scene.plan.hydrants[0]).toEqual({ ...strong, id, elevationFt });
    expect(scene.plan.hydrants.slice(1)).toEqual(own.plan.hydrants.slice(1));
    for (const part of [
      'steps',
      'posts',
      'pumps',
      'tanks',
      'expectedMessages',
      'spareNozzle',
    ] as const)
      expect(scene[part]).toEqual(own[part]);
    for (const valve of own.valves)
      expect(scene.valves.find((one) => one.id === valve.id)).toEqual(valve);
    // The drill begins at the new hydrant's pressure, as its test has it with no flow.
    const dry = createDrill(scene, 1);
    const still = dry.state.hydrants[0]!;
    if (still.flowGpm < 0.01) expect(still.mainPsi).toBeCloseTo(72, 1);
    // By its own test: the drop grows as flow to the power 1.85 (Hazen-Williams, as NFPA 291 has it).
    else expect(still.mainPsi).toBeCloseTo(72 - 14 * (still.flowGpm / 1400) ** 1.85, 0);
  });

  it('is played through by the computer on a hydrant that is strong enough', () => {
    const scene = sceneWithHydrant(evolution.scene(), strong);
    const drill = createDrill(scene, 1);
    const undone = () => judge(scene, drill.state).find(({ key }) => key === 'steps');
    for (let tick = 0; tick < 20 * 60 * 12; tick++)
      step(
        drill,
        rolesIn(scene).flatMap((role) => playedBy(role, scene, drill.state)),
      );
    expect(undone()).toMatchObject({ value: 0 });
  });
});

describe('a hydrant that an evolution cannot take', () => {
  it('is refused where it lacks an outlet, by name and with what to do', () => {
    const scene = evolutionOf('side suction lines')!.scene();
    expect(() => sceneWithHydrant(scene, { ...strong, sideOutlets: 0 })).toThrow(
      /Mill Lane 4 has no side outlet 1.*Pick another hydrant/,
    );
  });

  it('gives less where it is weak, and the scene says so to whoever asks', () => {
    const scene = evolutionOf('boost through valve')!.scene();
    const weak = sceneWithHydrant(scene, {
      ...strong,
      staticPsi: 40,
      residualPsi: 24,
      testGpm: 300,
    });
    expect(mostWater(weak.plan).flowGpm).toBeLessThan(mostWater(scene.plan).flowGpm);
  });
});
