/**
 * Roles that stand at pieces of the plan, and that the computer can play, from the water to the fire.
 * A scene has those that there is a post for: relay operators only where engines stand between the
 * source and the scene, one each; where there are more than three, the third has the rest.
 */
export const playedRoles = [
  'hydrant operator',
  'relay operator',
  'second relay operator',
  'third relay operator',
  'attack operator',
  'nozzle crew',
] as const;

export type PlayedRole = (typeof playedRoles)[number];

/** By role: ids of the pieces that it stands at. A role that is left out is nobody's in the scene. */
export type Posts = Partial<Record<PlayedRole, string[]>>;

/** Those who pump between the source and the scene, the one nearest to the source first. */
export const relayRoles = [
  'relay operator',
  'second relay operator',
  'third relay operator',
] as const satisfies readonly PlayedRole[];

/** Who takes part in a drill. Persons at a place see and do only what is in reach there. */
export const roles = [...playedRoles, 'instructor', 'observer'] as const;

export type Role = (typeof roles)[number];

/** Whether a word is a role. */
export function isRole(word: unknown): word is Role {
  return (roles as readonly unknown[]).includes(word);
}
