import { type DrillScene, type PlayedRole, rolesIn } from '@plugside/drill';
import { Switcher } from '../../editing/Switcher.tsx';
import { roleWords } from '../words.ts';

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
