/** The drill's words in the reader's units. */
import { hoseName, type SceneHose } from '@plugside/drill';
import { hoseCatalogue } from '@plugside/fireground';
import type { Units } from '../editing/use-units.ts';

export { clockText, hoseName, inUnits, roleWords } from '@plugside/drill';

/** A hose's name where there is little room; its size where it has none of its own. */
export function hoseCaption(hose: SceneHose, units: Units): string {
  const name = hoseName(hose);
  return name === hose.label ? units.hose(hose.hose) : name.replace(' hose', '');
}

/** "5 in, 900 ft", with the count where lines lie side by side. */
export function hoseSizeWords(hose: SceneHose, units: Units): string {
  const count = hose.count > 1 ? `${hose.count} × ` : '';
  return `${count}${units.hose(hose.hose)}, ${units.text(hose.lengthFt, 'length')}`;
}

/** Hose of 3½ in and larger. */
export function isLargeHose(hose: SceneHose): boolean {
  return hoseCatalogue[hose.hose].diameterIn >= 3.5;
}
