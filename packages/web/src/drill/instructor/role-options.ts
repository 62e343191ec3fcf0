import { type DrillScene, type PlayedRole, rolesIn } from '@plugside/drill';
import { roleWords } from '../words.ts';

/** The roles of a scene, to choose one from within a sentence. */
export function roleOptions(scene: DrillScene): { value: PlayedRole; text: string }[] {
  return rolesIn(scene).map((role) => ({ value: role, text: roleWords[role].toLowerCase() }));
}
