import { createDrill, evolutions, playedRoles, viewFor } from '@plugside/drill';
import { describe, expect, it } from 'vitest';
import { layoutStage, leastWidthPx } from './layout.ts';

/** Content widths of a phone, a tablet, a desktop [px]. */
const widths = [leastWidthPx, 764, 984] as const;

/** Least size of a target ("Target Size (Enhanced)", WCAG 2.2 success criterion 2.5.5) [px]. */
const targetPx = 44;

describe('the drawing of every role of every evolution', () => {
  for (const evolution of evolutions) {
    const scene = evolution.scene();
    const { state } = createDrill(scene, 1);
    for (const role of playedRoles) {
      const view = viewFor(role, scene, state);
      for (const width of widths) {
        it(`keeps targets apart and inside: ${evolution.key}, ${role}, ${width} px`, () => {
          const layout = layoutStage(scene, view, width, false);
          const spots = [
            ...layout.valves.map(({ valve, x, y }) => ({ name: valve, x, y })),
            ...layout.ports.map(({ port, x, y }) => ({ name: `port ${port}`, x, y })),
            ...layout.ends
              .filter(({ port }) => port === null)
              .map(({ hose, end, x, y }) => ({ name: `${hose} ${end}`, x, y })),
          ];
          const close = spots.flatMap((a, at) =>
            spots
              .slice(at + 1)
              .filter((b) => Math.abs(a.x - b.x) < targetPx && Math.abs(a.y - b.y) < targetPx)
              .map((b) => `${a.name} / ${b.name}`),
          );
          expect(close).toEqual([]);
          const outside = spots.filter(
            ({ x, y }) =>
              x < targetPx / 2 || x > width - targetPx / 2 || y < 22 || y > layout.height - 10,
          );
          expect(outside).toEqual([]);
        });
      }

      it(`draws every hose end at hand: ${evolution.key}, ${role}`, () => {
        const layout = layoutStage(scene, view, 984, false);
        expect(layout.ends.length).toBe(view.hoseEnds.length);
        for (const { hose } of view.hoseEnds)
          expect(layout.hoses.filter((run) => run.hose === hose)).toHaveLength(1);
      });
    }
  }
});
