import { type DrillView, evolutions, type PlayedRole, playedRoles } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { openLocalDrill } from '../local/local-drill.ts';
import type { Progress } from '../local/progress.ts';
import { firstOpen, stepNow, tooEarly, wrongPort } from './order.ts';

/** Longest that an evolution may take who does each step as it comes up [s]. */
const MOST_S = 900;

describe('every evolution, learned by doing what each step says', () => {
  for (const evolution of evolutions) {
    it(`${evolution.key}: comes to its end, nothing called out of order on the way`, () => {
      const scene = evolution.scene();
      let role: PlayedRole = scene.steps[0]!.role;
      const drill = openLocalDrill(scene, 1, role);
      let view: DrillView | undefined;
      let progress: Progress = { done: [], judgements: [] };
      const begun = new Set<string>();
      const done = () => new Set(progress.done.map(({ step }) => step));
      for (let second = 0; second < MOST_S && firstOpen(scene, done()); second++) {
        for (const one of drill.advance(1000)) {
          if (one.told === 'view') view = one.view;
          else if (one.told === 'progress') progress = one.progress;
          else if (one.told === 'refused') throw new Error(one.problem.message);
        }
        const step = stepNow(scene, done(), playedRoles);
        if (!step || begun.has(step.id)) continue;
        if (step.role !== role) drill.take(step.role);
        role = step.role;
        begun.add(step.id);
        for (const action of step.how) {
          expect(tooEarly(scene, done(), role, action)).toBeUndefined();
          expect(wrongPort(scene, action)).toBeUndefined();
          drill.act(action);
        }
      }
      expect(firstOpen(scene, done())?.id).toBeUndefined();
      expect(view?.role).toBeDefined();
      const met = (key: string) => progress.judgements.find((one) => one.key === key)?.met;
      expect([met('order'), met('connections'), met('messages')]).toEqual([true, true, true]);
    });
  }
});
