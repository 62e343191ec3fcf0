/** A valve that is shut in small moves hits back as one that is shut in one. */
import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { forwardLayAttack } from './evolutions/forward-lay-attack.ts';
import { judge } from './judge.ts';
import { playedBy } from './played-by.ts';
import { playedRoles } from './role.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';
import { allStepsDone } from './steps-standing.ts';
import { run } from './test-drill.ts';

/** Two lines of 150 gpm at 170 psi. */
function flowing(rules = 3): Drill {
  const scene = forwardLayAttack.scene();
  scene.settings.rules = rules;
  const drill = createDrill(scene, 3);
  for (let n = 0; n < 600 * TICKS_PER_S && !allStepsDone(scene, drill.state); n++)
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
    );
  run(drill, 10);
  return drill;
}

/** Shuts the first bale from open in so many moves, each at hand speed or in so many seconds, with rests between. */
function shuts(drill: Drill, moves: number, restS: number, overS?: number): void {
  for (let n = moves - 1; n >= 0; n--) {
    const opening = n / moves;
    const action = { do: 'set valve', valve: 'N1.bale', opening } as const;
    step(drill, [
      { role: 'nozzle crew', action: overS === undefined ? action : { ...action, overS } },
    ]);
    run(drill, restS);
  }
  run(drill, 3);
}

const surge = (drill: Drill) => judge(drill.scene, drill.state).find(({ key }) => key === 'surge')!;
const told = (drill: Drill) =>
  drill.log.flatMap((one) =>
    one.kind === 'event' && one.event.kind === 'shut fast' ? [one.event.text] : [],
  );

describe('a bale at 150 gpm and 170 psi', () => {
  it('shut in half a second by ten moves counts once, as by one; the estimate is as large', () => {
    const one = flowing();
    shuts(one, 1, 0);
    expect(surge(one).value).toBe(1);
    const ten = flowing();
    shuts(ten, 10, 0);
    expect(surge(ten).value).toBe(1);
    expect(told(ten).length).toBeGreaterThan(0);
    expect(told(ten).length).toBeLessThanOrEqual(2);
    expect(told(ten).at(-1)).toMatch(/over its limit/);
    expect(surge(ten).worst!.value / surge(one).worst!.value).toBeGreaterThan(0.7);
  });

  it('shut slowly by ten moves of a second counts nothing', () => {
    const drill = flowing();
    shuts(drill, 10, 1, 1);
    expect(surge(drill)).toMatchObject({ value: 0, met: true });
    expect(told(drill)).toEqual([]);
  });

  it('by older rules each move is taken alone, as it was', () => {
    const drill = flowing(2);
    shuts(drill, 10, 0);
    expect(surge(drill).value).toBe(0);
  });
});
