import { describe, expect, it } from 'vitest';
import { createDrill } from './drill.ts';
import { evolutionOf } from './evolutions/index.ts';
import { playedBy } from './played-by.ts';
import { replayThrough, replayTo } from './replay.ts';
import { playedRoles } from './role.ts';
import { TICKS_PER_S } from './state.ts';
import { step } from './step.ts';

const SEED = 11;
const LAST_TICK = 45 * TICKS_PER_S;

/** Played by the computer; stopped and set going again at one tick, and stopped for good at the end. */
function ran() {
  const scene = evolutionOf('boost through valve')!.scene();
  const drill = createDrill(scene, SEED);
  while (drill.state.tick < LAST_TICK) {
    if (drill.state.tick === 415 && !drill.state.paused) {
      step(drill, [{ role: 'instructor', action: { do: 'pause' } }]);
      step(drill, [{ role: 'instructor', action: { do: 'resume' } }]);
      continue;
    }
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, scene, drill.state)),
    );
  }
  step(drill, [{ role: 'instructor', action: { do: 'pause' } }]);
  return { scene, drill };
}

describe('a drill played through again', () => {
  const { scene, drill } = ran();

  it('stands at each look as one that is replayed to that tick', () => {
    const ticks: number[] = [];
    for (const again of replayThrough(scene, SEED, drill.log, LAST_TICK, 130)) {
      const { tick } = again.state;
      ticks.push(tick);
      expect(again.state, `tick ${tick}`).toEqual(replayTo(scene, SEED, drill.log, tick).state);
    }
    expect(ticks).toEqual([0, 130, 260, 390, 520, 650, 780, LAST_TICK]);
  });

  it('ends where the log leaves it paused', () => {
    const ticks = [...replayThrough(scene, SEED, drill.log, LAST_TICK + 500, 400)].map(
      ({ state }) => state.tick,
    );
    expect(ticks.at(-1)).toBe(LAST_TICK);
  });
});
