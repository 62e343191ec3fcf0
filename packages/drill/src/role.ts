/** Who takes part in a drill. Persons at a place see and do only what is in reach there. */
export const roles = [
  'hydrant operator',
  'attack operator',
  'nozzle crew',
  'instructor',
  'observer',
] as const;

export type Role = (typeof roles)[number];

/** Roles that stand at pieces of the plan, and that the computer can play. */
export const playedRoles = ['hydrant operator', 'attack operator', 'nozzle crew'] as const;

export type PlayedRole = (typeof playedRoles)[number];

/** Whether a word is a role. */
export function isRole(word: unknown): word is Role {
  return (roles as readonly unknown[]).includes(word);
}
