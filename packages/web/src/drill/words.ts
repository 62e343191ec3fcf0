/** The drill's words in the reader's units. */

import type { DrillScene, PlayedRole, Role, SceneHose } from '@plugside/drill';
import { hoseCatalogue, type PortRef, type Quantity, toInside } from '@plugside/fireground';
import type { Units } from '../editing/use-units.ts';

const written: Record<string, Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  gal: 'volume',
  ft: 'length',
};

/** Sentences are written in US units; a reader of SI has every quantity in them turned. */
export function inUnits(text: string, units: Units): string {
  if (units.system === 'us') return text;
  return text.replace(/(-?\d[\d,]*(?:\.\d+)?) (psi|gpm|gal|ft)\b/g, (_, number, unit) => {
    const quantity = written[unit as string]!;
    const value = Number(String(number).replaceAll(',', ''));
    return units.text(toInside(value, quantity, unit as string), quantity);
  });
}

export const roleWords: Readonly<Record<Role, string>> = {
  'hydrant operator': 'Hydrant operator',
  'attack operator': 'Attack operator',
  'nozzle crew': 'Nozzle crew',
  instructor: 'Instructor',
  observer: 'Observer',
};

/** What a crew calls a hose: by its work where that is plain, else by where it runs. */
export function hoseName({ id, label }: SceneHose): string {
  const [, stem, number = ''] = /^(suction|discharge|lay|attack|side)(\d*)$/.exec(id) ?? [];
  switch (stem) {
    case 'suction':
      return `Suction hose${number && ` ${number}`}`;
    case 'discharge':
      return `Discharge hose${number && ` ${number}`}`;
    case 'lay':
      return `Supply hose${number && ` ${number}`}`;
    case 'attack':
      return `Line ${number}`;
    case 'side':
      return `Side line ${number}`;
    default:
      return label;
  }
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

/** The role that stands at a port; nobody: undefined. */
export function roleAt(scene: DrillScene, port: PortRef): PlayedRole | undefined {
  const piece = port.slice(0, port.lastIndexOf('.'));
  return (Object.keys(scene.posts) as PlayedRole[]).find((role) =>
    scene.posts[role].includes(piece),
  );
}

/** `0:07`, `12:40`: the drill's own time. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
