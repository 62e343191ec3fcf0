/** What was done in a drill, in words. */
import { type DrillAction, type DrillScene, type Fault, radioText } from '@plugside/drill';
import { nameOf, pieceOf, portOf } from '@plugside/fireground';
import type { Units } from '../../editing/use-units.ts';
import { hoseName, inUnits } from '../words.ts';

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

/** What goes wrong: `Supply hose kinked`. */
export function faultWords(scene: DrillScene, fault: Fault): string {
  switch (fault.kind) {
    case 'hydrant weak': {
      const left = Math.round(fault.share * 100);
      return `${pieceName(scene, fault.hydrant)} gives ${left} % of its tested flow`;
    }
    case 'clapper stuck':
      return `Clapper stuck shut in ${pieceName(scene, fault.valve)}`;
    case 'hose burst':
      return `${hoseWords(scene, fault.hose)} burst`;
    case 'hose kinked':
      return `${hoseWords(scene, fault.hose)} kinked`;
    case 'pump dies':
      return `${pieceName(scene, fault.rig)}: engine dead`;
  }
}

const share = (opening: number) => `${Math.round(opening * 100)} %`;

function openingWords(opening: number): string {
  if (opening <= 0) return 'shut';
  return opening >= 1 ? 'open' : `${share(opening)} open`;
}

/** One action as a line of a drill's record. */
export function actionWords(scene: DrillScene, action: DrillAction, units: Units): string {
  switch (action.do) {
    case 'couple':
      return `${hoseWords(scene, action.hose)} coupled to ${portName(scene, action.port)}`;
    case 'uncouple':
      return `${hoseWords(scene, action.hose)} uncoupled`;
    case 'set valve':
      return `${valveName(scene, action.valve)}: ${openingWords(action.opening)}`;
    case 'pump in gear':
      return `${pieceName(scene, action.rig)}: pump ${action.inGear ? 'in' : 'out of'} gear`;
    case 'set governor':
      return `${pieceName(scene, action.rig)}: governor to ${units.text(action.pdpPsi, 'pressure')}`;
    case 'set throttle':
      return `${pieceName(scene, action.rig)}: throttle to ${share(action.speedFraction)}`;
    case 'radio':
      return `“${inUnits(radioText(action.message), units)}”`;
    case 'arm fault':
      return `Fault: ${faultWords(scene, action.fault)}`;
    case 'lift fault':
      return `Fault lifted: ${action.fault}`;
    case 'pause':
      return 'Clock stopped';
    case 'resume':
      return 'Clock runs';
    case 'set speed':
      return `Speed × ${action.speed}`;
    case 'say':
      return `“${inUnits(action.text, units)}”`;
  }
}
