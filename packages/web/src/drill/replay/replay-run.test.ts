import {
  createDrill,
  evolutionOf,
  judge,
  playedBy,
  playedRoles,
  type Submitted,
  step,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { marksIn } from './marks.ts';
import { type Played, type ReplayRecord, ReplayRun } from './replay-run.ts';

const DONE_S = 75;

/** The boost evolution as the computer plays it, paused for a while in the middle; readings kept as it ran. */
function ran() {
  const scene = evolutionOf('boost through valve')!.scene();
  const drill = createDrill(scene, 7);
  const seen = new Map<number, ReturnType<typeof viewFor>>();
  while (drill.state.tick < DONE_S * TICKS_PER_S) {
    seen.set(
      drill.state.tick,
      structuredClone(viewFor('observer', scene, drill.state, { faultsShown: true })),
    );
    const asked: Submitted[] = playedRoles.flatMap((role) => playedBy(role, scene, drill.state));
    if (drill.state.tick === 333 && !drill.state.paused) {
      step(drill, [{ role: 'instructor', action: { do: 'pause' } }]);
      step(drill);
      asked.push({ role: 'instructor', action: { do: 'resume' } });
    }
    step(drill, asked);
  }
  const { state, log } = drill;
  const record: ReplayRecord = { scene, seed: 7, tick: state.tick, log };
  return { record, seen, drill };
}

function played(run: ReplayRun): Played {
  const playing = run.play();
  const shares: number[] = [];
  for (;;) {
    const { done, value } = playing.next();
    if (done) {
      expect(shares).toEqual([...shares].sort((a, b) => a - b));
      expect(Math.max(...shares)).toBeLessThanOrEqual(1);
      return value;
    }
    shares.push(value);
  }
}

describe('a drill played again', () => {
  const { record, seen, drill } = ran();
  const run = new ReplayRun(record);
  const { series, ticks, judgements } = played(run);

  it('reads every gauge as it read then', () => {
    expect(ticks[0]).toBe(0);
    expect(ticks.at(-1)).toBe(record.tick);
    expect(series.length).toBe(seen.get(0)!.gauges.length);
    ticks.slice(0, -1).forEach((tick, at) => {
      const then = seen.get(tick)!.gauges.map(({ value }) => value);
      expect(
        series.map(({ values }) => values[at]),
        `tick ${tick}`,
      ).toEqual(then);
    });
  });

  it('shows any moment as it stood, wherever one jumps', () => {
    for (const tick of [1210, 5, 333, 1001, 640]) {
      const view = run.viewAt(tick);
      expect(view, `tick ${tick}`).toEqual(seen.get(tick));
    }
  });

  it('is judged as it was', () => {
    expect(judgements).toEqual(judge(record.scene, drill.state));
  });

  it('has a mark for every action and message, in order', () => {
    const marks = marksIn(record.log);
    const actions = record.log.filter((entry) => entry.kind === 'action');
    expect(marks.filter(({ kind }) => kind !== 'event')).toHaveLength(actions.length);
    expect(marks.map(({ tick }) => tick)).toEqual(
      marks.map(({ tick }) => tick).sort((a, b) => a - b),
    );
    const said = marks.filter(({ kind }) => kind === 'radio');
    expect(said.length).toBeGreaterThanOrEqual(record.scene.expectedMessages.length);
  });
});
