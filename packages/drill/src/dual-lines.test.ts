/** One of two lines side by side bursts: for how long the nozzles are without water, by hand. */
import { dualLines } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import type { DrillAction } from './action.ts';
import { createDrill } from './drill.ts';
import { judge } from './judge.ts';
import type { PlayedRole } from './role.ts';
import type { Drill } from './running-drill.ts';
import { sceneFromPlan } from './scene-from-plan.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

function act(drill: Drill, role: PlayedRole | 'instructor', action: DrillAction): void {
  const refused = step(drill, [{ role, action }]).find(({ kind }) => kind === 'refused');
  expect(refused).toBeUndefined();
}

function runTo(drill: Drill, seconds: number): void {
  while (drill.state.tick < seconds * TICKS_PER_S) step(drill);
}

const interrupted = (drill: Drill) =>
  judge(drill.scene, drill.state).find(({ key }) => key === 'water interrupted')!;

/** 300 ft of 5 in from the steamer, 300 ft of a smaller hose from a side outlet, two lines of 150 gpm. */
const flowing = (secondHose: '2-1/2' | '3') =>
  createDrill(
    sceneFromPlan(
      dualLines({
        hydrant: { staticPsi: 62, residualPsi: 44, testGpm: 1060 },
        lay: { hose: '5', lengthFt: 300 },
        secondHose,
        attack: { pdpPsi: 210 },
        attackLines: [{}, {}],
      }),
      { start: 'water flowing' },
    ),
    1,
  );

describe('a burst of one of two lines', () => {
  it('the smaller: the larger carries both nozzles, and nobody loses water', () => {
    const drill = flowing('3');
    runTo(drill, 1);
    act(drill, 'instructor', {
      do: 'arm fault',
      fault: { id: 'b', kind: 'hose burst', hose: 'lay2' },
    });
    runTo(drill, 30);
    expect(drill.state.hoses.find(({ id }) => id === 'lay2')!.phase).toBe('burst');
    expect(interrupted(drill).value).toBe(0);
  });

  /**
   * By hand, Q in gpm, C of 0.08 and 2, k in psi/gpm². Burst in its middle, the 5 in hose is 150 ft to each
   * side: k = 0.08·150/10⁶ + 1/(29.84·5²)² = 1.38·10⁻⁵, with the steamer's 5 psi at 1,000 gpm 1.88·10⁻⁵.
   * The 2½ in has 2·300/10⁶ + 6/500² = 6.24·10⁻⁴. At 29 psi in the main they take 1,242 and 214 gpm, and
   * 1,456 gpm leave 62 − 18·(1456/1060)^1.852 = 29 psi.
   *
   * Lost: the two nozzles draw the intake to −2 psi and get 223 gpm, 74 % each, which counts as supplied. The
   * intake lets in 12·0.1·29.84·5²·√2/1200 = 1.055 gal of air a tick, of which a fortieth leaves: the fifth
   * tick brings it to 5 gal, and after 1 s of that the prime is lost: 1.2 s after the burst. Set to 210 psi
   * (141 gpm a nozzle at 150), half of it still asks for √½·141·√(210/150) = 118 each: the air goes on.
   *
   * Found again: 214 gpm through the engine's intake to the break leave 0.63 psi, too little to keep air out
   * until a closing valve makes it 1: (1/x² − 1)/(29.84·5²)² = 1/214² − 1.38·10⁻⁵ at x = 0.43, which is 2.3 s
   * of 4 s. Then it primes for 3 s. Shut from 10 s on: 10 − 1.2 + 2.3 + 3 = 14.1 s.
   */
  it('the larger: nozzles are dry from when the pump draws air until its intake is shut and it has primed', () => {
    const drill = flowing('2-1/2');
    runTo(drill, 1);
    act(drill, 'instructor', {
      do: 'arm fault',
      fault: { id: 'b', kind: 'hose burst', hose: 'lay' },
    });
    const burstTick = drill.state.tick;
    runTo(drill, 11);
    act(drill, 'attack operator', {
      do: 'set valve',
      valve: 'A1.intake1',
      opening: 0,
      overS: 4,
    });
    runTo(drill, 60);
    const judged = interrupted(drill);
    expect(judged.moments[0]!.fromTick - burstTick).toBeGreaterThanOrEqual(1.1 * TICKS_PER_S);
    expect(judged.moments[0]!.fromTick - burstTick).toBeLessThanOrEqual(1.3 * TICKS_PER_S);
    expect(Math.abs(judged.value! - 14.1)).toBeLessThan(0.3);
    // Two nozzles at once are one second, and all of it was the instructor's doing.
    expect(judged.pieces).toEqual([
      { piece: 'N1', s: judged.value },
      { piece: 'N2', s: judged.value },
    ]);
    expect(judged.duringFaultsS).toBe(judged.value);
    for (const { flowGpm } of drill.state.nozzles)
      expect(Math.abs(flowGpm - 223 / 2)).toBeLessThan(4);
  });
});
