/** What gauges read over a whole drill, made again from its log. */
import { setImmediate } from 'node:timers/promises';
import {
  type Drill,
  type DrillLog,
  type DrillScene,
  type DrillState,
  replayThrough,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import { nameOf } from '@plugside/fireground';
import { pumpsFromFire } from './along-water.ts';
import type { ReportPanel } from './data.ts';

/** Whoever else is at work has a turn so often [ms]. */
const TURN_MS = 10;
const MOST_LINES = 3;

export interface Readings {
  timesS: number[];
  panels: ReportPanel[];
  /** As the drill stood at its end. */
  state: DrillState;
}

/**
 * Plays a drill again, one look each second of it.
 * @throws the signal's reason where it aborts
 */
export async function readingsOf(
  run: { scene: DrillScene; seed: number; log: DrillLog; tick: number },
  signal?: AbortSignal,
): Promise<Readings> {
  const { scene, seed, log, tick } = run;
  const timesS: number[] = [];
  const values = new Map<string, number[]>();
  const note = (id: string, value: number) => {
    const known = values.get(id);
    if (known) known.push(value);
    else values.set(id, [value]);
  };
  let last: Drill | undefined;
  let turnAtMs = performance.now();
  for (const drill of replayThrough(scene, seed, log, tick, TICKS_PER_S)) {
    last = drill;
    timesS.push(drill.state.tick / TICKS_PER_S);
    for (const { id, value } of viewFor('observer', scene, drill.state).gauges) note(id, value);
    for (const { id, mainPsi } of drill.state.hydrants) note(`${id}.main`, mainPsi);
    if (performance.now() - turnAtMs < TURN_MS) continue;
    await setImmediate();
    signal?.throwIfAborted();
    turnAtMs = performance.now();
  }
  const of = (id: string) => values.get(id) ?? [];
  return { timesS, panels: panelsOf(scene, of), state: last!.state };
}

/** The attack engine first, then the pumps towards the source, the nozzles, and the main. */
function panelsOf(scene: DrillScene, of: (id: string) => number[]): ReportPanel[] {
  const { plan, benchmarks } = scene;
  const pumps = pumpsFromFire(scene);
  // A line that lay ready and was never opened has nothing to show.
  const isShown = ({ id }: { id: string }) =>
    id !== scene.spareNozzle || of(`${id}.pressure`).some((psi) => psi > 0);
  return [
    ...pumps.map(
      ({ rigId, label }): ReportPanel => ({
        name: label,
        lines: [
          { label: 'discharge', valuesPsi: of(`${rigId}.discharge`) },
          { label: 'intake', valuesPsi: of(`${rigId}.intake`) },
        ],
        least: { psi: benchmarks.intakePsi, of: 'intake' },
      }),
    ),
    ...grouped(plan.nozzles.filter(isShown)).map(
      (nozzles): ReportPanel => ({
        name: 'At the nozzles',
        lines: nozzles.map((nozzle) => ({
          label: nameOf(nozzle),
          valuesPsi: of(`${nozzle.id}.pressure`),
        })),
      }),
    ),
    ...grouped(plan.hydrants).map(
      (hydrants): ReportPanel => ({
        name: 'In the main',
        lines: hydrants.map((hydrant) => ({
          label: nameOf(hydrant),
          valuesPsi: of(`${hydrant.id}.main`),
        })),
        least: { psi: benchmarks.mainPsi, of: 'main' },
      }),
    ),
  ];
}

/** No more to a panel than can be told apart in black and white. */
function grouped<T>(all: readonly T[]): T[][] {
  const groups: T[][] = [];
  for (let at = 0; at < all.length; at += MOST_LINES) groups.push(all.slice(at, at + MOST_LINES));
  return groups;
}
