/** Several engines at the fire, where the plan draws every line to one. */
import { nameOf, type Plan, type RigOrder, type SupplyState } from '@plugside/fireground';
import type { Figures } from '../sheet/figures.ts';
import { listed } from './joints.ts';

/** Engines that take lines of a plan at the fire; none where one takes them all. */
export function enginesOf({ sceneEngines = [] }: Plan) {
  const told = sceneEngines.flatMap(({ name, lines }) => (lines ? [{ name, lines }] : []));
  return told.length > 1 && told.length === sceneEngines.length ? told : [];
}

/** What comes to each engine at the fire [gpm]. */
export function comesToGpm(lines: readonly string[], state: SupplyState): number {
  return state.lines
    .filter(({ id }) => lines.includes(id))
    .reduce((sum, { flowGpm }) => sum + flowGpm, 0);
}

/** The orders with each engine at the fire told its own water; one that the plan does not draw has its name as id. */
export function ordersAtFire(
  plan: Plan,
  orders: readonly RigOrder[],
  state: SupplyState,
  { full }: Figures,
): RigOrder[] {
  const scene = plan.rigs.find(({ id }) => id === plan.scene)!;
  const intakePsi = state.rigs.find(({ id }) => id === plan.scene)?.intakePsi;
  const own = enginesOf(plan).map(({ name, lines }): RigOrder => {
    const comes = `${full(comesToGpm(lines, state), 'flow')} coming`;
    const intake = intakePsi === undefined ? '' : `${full(intakePsi, 'pressure')} in; `;
    const id = name === nameOf(scene) ? scene.id : name;
    const drawn = orders.find((order) => order.id === id);
    const setting = drawn?.setting ?? { mode: 'idle' as const };
    const radio = `${intake}${comes}.`;
    return { id, setting, pdpPsi: drawn?.pdpPsi ?? 0, gate: drawn?.gate ?? [], radio };
  });
  const atScene = new Map(own.map((order) => [order.id, order]));
  return [
    ...orders.map((order) => atScene.get(order.id) ?? order),
    ...own.filter(({ id }) => orders.every((order) => order.id !== id)),
  ];
}

/** That several engines are needed there. */
export function manyAtFire(plan: Plan): string[] {
  const names = enginesOf(plan).map(({ name }) => name);
  if (names.length === 0) return [];
  const scene = nameOf(plan.rigs.find(({ id }) => id === plan.scene)!);
  return [
    `Needs ${names.length} engines at the fire: ${listed(names)}. The drawing has every line at ${scene}; the steps say whose each is.`,
  ];
}
