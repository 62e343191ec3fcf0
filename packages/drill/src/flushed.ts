/** A hydrant that is run clear before hose goes on: what stones it holds would end in a pump. */
import { splitPortRef } from '@plugside/fireground';
import { waterIn } from './hose-front.ts';
import type { HoseEnd } from './names.ts';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import { type DrillState, TICKS_PER_S } from './state.ts';

/** So far open, and for so long, it runs clear [s]; common practice is until it does, the numbers are ours. */
const FLUSHES_FROM = 0.2;
const FLUSHES_S = 5;

/** A hose with less in it is dry [gal]; ours. */
const DRY_UNDER_GAL = 0.1;

/** Whether hose, or a valve that hose goes on, is on a hydrant: then it cannot be flushed. */
export function hasHoseOn(scene: DrillScene, state: DrillState, hydrant: string): boolean {
  const isOf = (port: string | null) => port !== null && splitPortRef(port).pieceId === hydrant;
  return (
    state.hoses.some(({ from, to }) => isOf(from.port) || isOf(to.port)) ||
    scene.plan.appliances.some((one) => one.kind === 'assist-valve' && isOf(one.on))
  );
}

/** Hose ends on a hydrant that nothing has come through yet: they can be taken off again to flush it. */
export function dryEndsOn(state: DrillState, hydrant: string): { hose: string; end: HoseEnd }[] {
  return state.hoses.flatMap((hose) =>
    (['from', 'to'] as const).flatMap((end) => {
      const { port } = hose[end];
      const isOn = port !== null && splitPortRef(port).pieceId === hydrant;
      return isOn && waterIn(hose) < DRY_UNDER_GAL ? [{ hose: hose.id, end }] : [];
    }),
  );
}

/** Whether it is too late to flush a hydrant: hose on it has water, or a valve sits on it. */
export function isPastFlushing(scene: DrillScene, state: DrillState, hydrant: string): boolean {
  return hasHoseOn(scene, state, hydrant) && dryEndsOn(state, hydrant).length === 0;
}

/** Whether a hydrant has been flushed. */
export function wasFlushed({ tally }: DrillState, hydrant: string): boolean {
  const { ticks = 0 } = tally.flushed?.find((one) => one.hydrant === hydrant) ?? {};
  return ticks >= FLUSHES_S * TICKS_PER_S;
}

/** One tick of hydrants that stand open with nothing on: what runs out on the ground is not played. */
export function countFlushing(scene: DrillScene, state: DrillState): void {
  if (!hasRules(scene, 3)) return;
  for (const { id } of scene.plan.hydrants) {
    const stem = state.valves.find((valve) => valve.id === `${id}.stem`);
    if ((stem?.opening ?? 0) < FLUSHES_FROM || wasFlushed(state, id)) continue;
    if (hasHoseOn(scene, state, id)) continue;
    state.tally.flushed ??= [];
    const own = state.tally.flushed.find((one) => one.hydrant === id);
    if (own) own.ticks++;
    else state.tally.flushed.push({ hydrant: id, ticks: 1 });
  }
}
