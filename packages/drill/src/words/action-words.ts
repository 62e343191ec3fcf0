/** What was done in a drill, in words. */
import type { DrillAction } from '../action.ts';
import type { Fault } from '../fault.ts';
import { radioText } from '../radio.ts';
import type { DrillScene } from '../scene.ts';
import { inUnits, type WordUnits } from './in-units.ts';
import { hoseWords, pieceName, portName, valveName } from './piece-words.ts';

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
export function actionWords(scene: DrillScene, action: DrillAction, units: WordUnits): string {
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
