import type { DrillScene, PlayedRole } from '@plugside/drill';
import { playedRoles } from '@plugside/drill';
import { Switcher } from '../../editing/Switcher.tsx';
import { roleWords } from '../words.ts';

/** Roles that have something to do in a scene. */
export function rolesIn(scene: DrillScene): PlayedRole[] {
  return playedRoles.filter((role) => scene.posts[role].length > 0);
}

interface RoleSwitchProps {
  scene: DrillScene;
  role: PlayedRole;
  onChange(role: PlayedRole): void;
}

/** Whose eyes and hands these are. */
export function RoleSwitch({ scene, role, onChange }: RoleSwitchProps) {
  return (
    <Switcher
      label="Your post"
      className="switcher role-switch"
      value={role}
      options={rolesIn(scene).map((one) => ({ value: one, text: roleWords[one] }))}
      onChange={onChange}
    />
  );
}
