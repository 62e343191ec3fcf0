/** An evolution on a department's own hydrant. */
import { describeLine, type Hydrant, nameOf, type Plan, portOf } from '@plugside/fireground';
import type { DrillScene } from './scene.ts';
import { valvesOf } from './scene-valves.ts';

/**
 * A scene on another hydrant than its own: name, main, supply curve, outlets and their losses are the given
 * one's, in the place and at the height of the scene's first hydrant. Where valves stand at the start,
 * hose and steps stay.
 *
 * @param hydrant from a flow test [psi, gpm]; its id and height are left out of account
 * @returns a new scene; the given one is left as it was
 * @throws RangeError where the scene has no hydrant, or takes from an outlet that the given one has not
 */
export function sceneWithHydrant(scene: DrillScene, hydrant: Hydrant): DrillScene {
  const [own, ...others] = scene.plan.hydrants;
  if (!own)
    throw new RangeError(`${scene.title} takes no water from a hydrant. Drill another evolution.`);
  const { id, elevationFt } = own;
  const plan: Plan = {
    ...scene.plan,
    hydrants: [{ ...hydrant, id, elevationFt }, ...others],
  };
  const taken = [
    ...plan.lines.map(({ from }) => from),
    ...plan.appliances.flatMap((one) => (one.kind === 'assist-valve' ? [one.on] : [])),
  ].filter((port) => port.startsWith(`${id}.`));
  const missing = taken.find((port) => !portOf(plan, port));
  if (missing !== undefined) {
    const { label } = portOf(scene.plan, missing)!.port;
    throw new RangeError(
      `${nameOf(hydrant)} has no ${label.toLowerCase()}, and ${scene.title} takes water there. Pick another hydrant, or another evolution.`,
    );
  }
  const before = new Map(scene.valves.map((valve) => [valve.id, valve.opening]));
  return {
    ...structuredClone(scene),
    plan,
    hoses: scene.hoses.map((hose) => {
      const line = plan.lines.find((one) => one.id === hose.id);
      return { ...structuredClone(hose), label: line ? describeLine(plan, line) : hose.label };
    }),
    valves: valvesOf(plan).map((valve) => ({ ...valve, opening: before.get(valve.id) ?? 0 })),
  };
}
