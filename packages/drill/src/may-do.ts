import { portOf, splitPortRef } from '@plugside/fireground';
import type { DrillAction, Problem } from './action.ts';
import type { PlayedRole, Role } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';

/**
 * Whether a role may do an action: each may do only what a person could do at that place. What the
 * action names must be in the scene; whether it can be done just now, the step says.
 * @returns undefined where it may, else why not
 */
export function mayDo(role: Role, scene: DrillScene, action: DrillAction): Problem | undefined {
  if (role === 'observer')
    return { field: 'role', message: 'An observer watches. Take another role to act.' };
  switch (action.do) {
    case 'radio':
      return undefined;
    case 'arm fault':
    case 'lift fault':
    case 'pause':
    case 'resume':
    case 'set speed':
    case 'say':
    case 'heard':
    case 'mark':
    case 'overrule':
      if (role !== 'instructor')
        return { field: 'role', message: `Only the instructor may do this, not the ${role}.` };
      if (action.do === 'say' && action.to !== undefined && scene.posts[action.to] === undefined)
        return { field: 'to', message: `Nobody is the ${action.to} in this drill.` };
      if (action.do === 'heard' && scene.posts[action.from] === undefined)
        return { field: 'from', message: `Nobody is the ${action.from} in this drill.` };
      if (
        action.do === 'mark' &&
        action.about !== undefined &&
        scene.posts[action.about] === undefined
      )
        return { field: 'about', message: `Nobody is the ${action.about} in this drill.` };
      return action.do === 'arm fault' ? faultIn(scene, action) : undefined;
  }
  if (role === 'instructor')
    return {
      field: 'role',
      message: 'The instructor stands at no pump, valve or hose. Say it to the crew instead.',
    };
  switch (action.do) {
    case 'couple': {
      const problem = hoseIn(scene, action.hose);
      if (problem) return problem;
      return atPost(scene, role, splitPortRef(action.port).pieceId, 'port');
    }
    case 'uncouple':
      return hoseIn(scene, action.hose);
    case 'set valve': {
      const valve = scene.valves.find((one) => one.id === action.valve);
      if (!valve) return unknownName('valve', action.valve);
      return atPost(scene, role, valve.pieceId, 'valve');
    }
    default:
      if (!scene.pumps.some((pump) => pump.rigId === action.rig))
        return unknownName('rig', action.rig);
      return atPost(scene, role, action.rig, 'rig');
  }
}

function atPost(
  scene: DrillScene,
  role: PlayedRole,
  pieceId: string,
  field: string,
): Problem | undefined {
  const post = postOf(scene, role);
  if (post.includes(pieceId)) return undefined;
  const known = post.join(', ') || 'nothing';
  return { field, message: `${pieceId} is out of the ${role}'s reach, who stands at ${known}.` };
}

function hoseIn(scene: DrillScene, hose: string): Problem | undefined {
  return scene.hoses.some((one) => one.id === hose) ? undefined : unknownName('hose', hose);
}

function faultIn(
  scene: DrillScene,
  { fault }: Extract<DrillAction, { do: 'arm fault' }>,
): Problem | undefined {
  const known = (ids: readonly { id: string }[], id: string) => ids.some((one) => one.id === id);
  const { plan } = scene;
  switch (fault.kind) {
    case 'hydrant weak':
      return known(plan.hydrants, fault.hydrant)
        ? undefined
        : unknownName('hydrant', fault.hydrant);
    case 'clapper stuck':
    case 'clapper stuck open':
      return plan.appliances.some((one) => one.kind === 'assist-valve' && one.id === fault.valve)
        ? undefined
        : unknownName('valve', fault.valve);
    case 'hose burst':
    case 'hose kinked':
      return hoseIn(scene, fault.hose);
    case 'wrong port':
      return (
        hoseIn(scene, fault.hose) ??
        (portOf(plan, fault.port) ? undefined : unknownName('port', fault.port))
      );
    case 'line called':
      return known(plan.nozzles, fault.nozzle) ? undefined : unknownName('nozzle', fault.nozzle);
    case 'pump dies':
      return known(plan.rigs, fault.rig) ? undefined : unknownName('rig', fault.rig);
  }
}

function unknownName(field: string, name: string): Problem {
  return { field, message: `The drill has no ${field} "${name}".` };
}
