/** Ports that are as good as one another: any intake of an engine, any discharge. */
import type { PortRef } from '@plugside/fireground';
import { hasRules } from './rules.ts';
import type { DrillScene } from './scene.ts';
import type { DrillState } from './state.ts';

/** What of a port's name says that there are others like it: all but its number; 0 where there are none. */
function stemLength(port: PortRef): number {
  let length = port.length;
  while (length > 0 && isDigit(port.charCodeAt(length - 1))) length--;
  if (length === port.length) return 0;
  return port.endsWith('.intake', length) || port.endsWith('.discharge', length) ? length : 0;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** Whether hose may be on either of two ports: the same, or both intakes, or discharges, of one engine. */
export function areEqualPorts(one: PortRef, other: PortRef): boolean {
  if (one === other) return true;
  const stem = stemLength(one);
  return stem > 0 && stem === stemLength(other) && other.startsWith(one.slice(0, stem));
}

/** By scene, which never changes: the hose that the plan has on each port that has its like. */
const known = new WeakMap<DrillScene, ReadonlyMap<PortRef, number>>();

function hosesByPort(scene: DrillScene): ReadonlyMap<PortRef, number> {
  const before = known.get(scene);
  if (before) return before;
  const byPort = new Map<PortRef, number>();
  scene.hoses.forEach(({ from, to }, at) => {
    for (const { plannedPort } of [from, to])
      if (stemLength(plannedPort) > 0) byPort.set(plannedPort, at);
  });
  known.set(scene, byPort);
  return byPort;
}

/**
 * Where a port of the plan is in a drill: the equal port that the hose meant for it is on, else itself.
 * What steps say of a port holds there.
 */
export function standsFor(scene: DrillScene, state: DrillState, planned: PortRef): PortRef {
  const at = hosesByPort(scene).get(planned);
  if (at === undefined || !hasRules(scene, 2)) return planned;
  const { from, to } = state.hoses[at]!;
  if (from.port !== null && areEqualPorts(from.port, planned)) return from.port;
  return to.port !== null && areEqualPorts(to.port, planned) ? to.port : planned;
}

/** As `standsFor`, for a valve or a bleeder named by its port. */
export function valveStandingFor(scene: DrillScene, state: DrillState, valve: string): string {
  if (!valve.endsWith('.bleeder')) return standsFor(scene, state, valve);
  return `${standsFor(scene, state, valve.slice(0, -'.bleeder'.length))}.bleeder`;
}

/** A port for a hose: the one that the plan has it on, or, where that is taken, a free equal one. */
export function freeEqualPort(
  state: DrillState,
  ports: readonly { port: PortRef; takesHose: boolean }[],
  planned: PortRef,
): PortRef {
  const taken = new Set(state.hoses.flatMap(({ from, to }) => [from.port, to.port]));
  if (!taken.has(planned)) return planned;
  const free = ports.find(
    ({ port, takesHose }) => takesHose && !taken.has(port) && areEqualPorts(port, planned),
  );
  return free?.port ?? planned;
}
