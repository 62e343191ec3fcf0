import {
  createDrill,
  type DrillScene,
  type DrillStart,
  evolutions,
  playedBy,
  playedRoles,
  readAction,
  replayTo,
  restoreDrill,
  sceneFromPlan,
  step,
} from '@plugside/drill';
import { sharedMains } from '@plugside/fireground';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyAction } from './any-action.ts';
import { anyPlan } from './any-plan.ts';
import { isBooked, isSound } from './sound-state.ts';

const scenes = evolutions.map((one) => one.scene());

/** Twenty plans at random, each at one of the three starts. */
const starts: readonly DrillStart[] = ['water flowing', 'hose connected', 'hose laid'];
const planned = fc
  .sample(anyPlan, { numRuns: 20, seed: 24 })
  .map((plan, at) => sceneFromPlan(plan, { start: starts[at % 3]! }));

describe('whatever is done in a drill', () => {
  it('is tried on plans of which some have two hydrants on one main flowing from the start', () => {
    const shared = planned.filter(
      ({ plan, start }) => start === 'water flowing' && sharedMains(plan).length > 0,
    );
    expect(shared.length).toBeGreaterThan(1);
  });

  it.each([
    ['every evolution that ships', scenes, 120, 20],
    ['plans at random', planned, 80, 25],
  ] as const)(
    'it never throws, every number stays sound, every gallon is booked, and its log makes it again: %s',
    (_, of, numRuns, seed) => {
      let acted = 0;
      let solved = 0;
      let unsolved = 0;
      const seen = new Set<DrillScene>();
      fc.assert(
        fc.property(
          fc.constantFrom(...of).chain((scene) =>
            fc.record({
              scene: fc.constant(scene),
              acts: fc.array(fc.tuple(anyAction(scene), fc.integer({ min: 1, max: 50 })), {
                minLength: 5,
                maxLength: 20,
              }),
            }),
          ),
          ({ scene, acts }) => {
            const drill = createDrill(scene, 1);
            const before = structuredClone(drill.state);
            seen.add(scene);
            for (const [submitted, ticks] of acts) {
              for (let n = 0; n < ticks; n++) {
                const entries = step(drill, n === 0 ? [submitted] : []);
                solved++;
                for (const entry of entries) {
                  if (entry.kind === 'action') acted++;
                  if (entry.kind === 'event' && entry.event.kind === 'not solved') unsolved++;
                }
              }
              isSound(drill.state, scene);
            }
            isBooked(drill.state, before);
            const again = replayTo(scene, 1, drill.log, drill.state.tick);
            expect(JSON.stringify(again.state)).toBe(JSON.stringify(drill.state));
          },
        ),
        { numRuns, seed },
      );
      // The test did its work: each scene was played, actions were taken, next to nothing went unsolved.
      expect(seen.size).toBe(of.length);
      expect(acted).toBeGreaterThan(4 * numRuns);
      expect(unsolved).toBeLessThan(solved / 1000);
    },
  );

  it('while the computer plays every role, it stays so, and goes on alike from any state written down', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...scenes).chain((scene) =>
          fc.record({
            scene: fc.constant(scene),
            acts: fc.array(fc.tuple(anyAction(scene), fc.integer({ min: 20, max: 200 })), {
              minLength: 3,
              maxLength: 10,
            }),
            breakAt: fc.integer({ min: 1, max: 600 }),
          }),
        ),
        ({ scene, acts, breakAt }) => {
          const run = (broken: boolean) => {
            let drill = createDrill(scene, 9);
            for (const [submitted, ticks] of acts) {
              for (let n = 0; n < ticks; n++) {
                if (broken && drill.state.tick === breakAt)
                  drill = restoreDrill(scene, JSON.parse(JSON.stringify(drill.state)));
                const played = playedRoles.flatMap((role) => playedBy(role, scene, drill.state));
                step(drill, n === 0 ? [...played, submitted] : played);
              }
              isSound(drill.state, scene);
            }
            return drill;
          };
          const drill = run(false);
          expect(JSON.stringify(run(true).state)).toBe(JSON.stringify(drill.state));
          isBooked(drill.state, createDrill(scene, 9).state);
        },
      ),
      { numRuns: 30, seed: 23 },
    );
  });

  it('what is refused changes nothing but the log', () => {
    fc.assert(
      fc.property(
        fc
          .constantFrom(...scenes)
          .chain((scene) =>
            fc.tuple(
              fc.constant(scene),
              fc.array(anyAction(scene), { minLength: 10, maxLength: 40 }),
            ),
          ),
        ([scene, acts]) => {
          const drill = createDrill(scene, 1);
          step(drill, [{ role: 'instructor', action: { do: 'pause' } }]);
          for (const one of acts) {
            const { seq, ...was } = structuredClone(drill.state);
            const [entry] = step(drill, [one]);
            if (entry?.kind !== 'refused') continue;
            expect(entry.problem.message).toMatch(/\S/);
            const { seq: now, ...is } = drill.state;
            expect(JSON.stringify(is)).toBe(JSON.stringify(was));
            expect(now).toBe(seq + 1);
          }
        },
      ),
      { numRuns: 60, seed: 21 },
    );
  });

  it('anything at all can be read, or is refused with field and message', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        const read = readAction(value);
        if ('problem' in read) expect(read.problem.message.length).toBeGreaterThan(5);
        else expect(readAction(read.action)).toEqual(read);
      }),
      { numRuns: 2000, seed: 22 },
    );
  });
});
