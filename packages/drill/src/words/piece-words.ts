/** What crews call the pieces of a drill, and one another. */
import { nameOf, pieceOf, portOf } from '@plugside/fireground';
import type { Role } from '../role.ts';
import type { DrillScene, SceneHose } from '../scene.ts';

export const roleWords: Readonly<Record<Role, string>> = {
  'hydrant operator': 'Hydrant operator',
  'relay operator': 'Relay operator',
  'second relay operator': 'Second relay operator',
  'third relay operator': 'Third relay operator',
  'attack operator': 'Attack operator',
  'nozzle crew': 'Nozzle crew',
  instructor: 'Instructor',
  observer: 'Observer',
};

/** What a crew calls a hose: by its work where that is plain, else by where it runs. */
export function hoseName({ id, label }: SceneHose): string {
  const [, stem, number = ''] = /^(suction|discharge|lay|leg|attack|side)(\d*)$/.exec(id) ?? [];
  switch (stem) {
    case 'suction':
      return `Suction hose${number && ` ${number}`}`;
    case 'discharge':
      return `Discharge hose${number && ` ${number}`}`;
    case 'lay':
    // One hose of a relay after another.
    case 'leg':
      return `Supply hose${number && ` ${number}`}`;
    case 'attack':
      return `Line ${number}`;
    case 'side':
      return `Side line ${number}`;
    default:
      return label;
  }
}

/** What a crew calls a piece of the plan. */
export function pieceName({ plan }: DrillScene, id: string): string {
  const piece = pieceOf(plan, id);
  return piece ? nameOf(piece) : id;
}

/** `Booster, intake 1`. */
export function portName({ plan }: DrillScene, ref: string): string {
  const found = portOf(plan, ref);
  return found ? `${nameOf(found.piece)}, ${found.port.label.toLowerCase()}` : ref;
}

/** `Discharge 1, Booster`. */
export function valveName(scene: DrillScene, id: string): string {
  const valve = scene.valves.find((one) => one.id === id);
  if (!valve) return id;
  return `${valve.label}, ${pieceName(scene, valve.pieceId)}`;
}

export function hoseWords(scene: DrillScene, id: string): string {
  const hose = scene.hoses.find((one) => one.id === id);
  return hose ? hoseName(hose) : id;
}
