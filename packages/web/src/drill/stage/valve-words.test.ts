/** "Slowly" is slow enough: in no evolution that ships is a valve moved so told or judged as too fast. */
import {
  allStepsDone,
  createDrill,
  type Drill,
  evolutions,
  judge,
  playedBy,
  playedRoles,
  restoreDrill,
  step,
  TICKS_PER_S,
} from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { slowMoveS } from './valve-words.ts';

/** Brought to its end by the computer, all its water flowing. */
function atItsEnd(drill: Drill): void {
  const { scene, state } = drill;
  for (let n = 0; n < 900 * TICKS_PER_S && !allStepsDone(scene, state); n++)
    step(
      drill,
      playedRoles.flatMap((role) => playedBy(role, scene, state)),
    );
  for (let n = 0; n < 20 * TICKS_PER_S; n++) step(drill);
}

const toldFast = ({ log }: Drill) =>
  log.flatMap((one) =>
    one.kind === 'event' && (one.event.kind === 'shut fast' || one.event.kind === 'opened fast')
      ? [one.event.text]
      : [],
  );

describe.each(evolutions.map((one) => [one.title, one] as const))('%s', (_, evolution) => {
  it('lets every valve be shut slowly, all of it or half, and opened again', () => {
    const drill = createDrill(evolution.scene(), 1);
    atItsEnd(drill);
    const { scene } = drill;
    const open = scene.valves.filter(({ kind }, at) => {
      const { opening } = drill.state.valves[at]!;
      return opening > 0 && kind !== 'bleeder';
    });
    expect(open.length).toBeGreaterThan(3);
    for (const { id, kind, pieceId } of open) {
      const role = playedRoles.find((one) => scene.posts[one]?.includes(pieceId))!;
      for (const share of [0.5, 0]) {
        const once = restoreDrill(scene, drill.state);
        const from = once.state.valves.find((valve) => valve.id === id)!.opening;
        for (const to of [share * from, from]) {
          const now = once.state.valves.find((valve) => valve.id === id)!.opening;
          const overS = slowMoveS(kind, now, to);
          step(once, [{ role, action: { do: 'set valve', valve: id, opening: to, overS } }]);
          for (let n = 0; n < 2 * TICKS_PER_S; n++) step(once);
          const valve = once.state.valves.find((one) => one.id === id)!;
          valve.opening = to;
        }
        expect(toldFast(once), `${id} to ${share}`).toEqual([]);
      }
    }
    const surge = judge(scene, drill.state).find(({ key }) => key === 'surge')!;
    expect(surge.value).toBe(0);
  });
});
