/** What was done in a drill, in words. */
import type { DrillAction } from '../action.ts';
import type { Fault } from '../fault.ts';
import { radioPresets, radioText } from '../radio.ts';
import { hasRules } from '../rules.ts';
import type { DrillScene } from '../scene.ts';
import { criterionWords } from './criterion-words.ts';
import { inUnits, type WordUnits } from './in-units.ts';
import { hoseWords, pieceName, portName, roleWords, valveName } from './piece-words.ts';

/** What goes wrong: `Supply hose kinked`. */
export function faultWords(scene: DrillScene, fault: Fault): string {
  switch (fault.kind) {
    case 'hydrant weak': {
      const left = Math.round(fault.share * 100);
      return `${pieceName(scene, fault.hydrant)} gives ${left} % of its tested flow`;
    }
    case 'clapper stuck':
      return hasRules(scene, 2)
        ? `Clapper stuck where it stands in ${pieceName(scene, fault.valve)}`
        : `Clapper stuck shut in ${pieceName(scene, fault.valve)}`;
    case 'clapper stuck open':
      return `Clapper stuck open in ${pieceName(scene, fault.valve)}`;
    case 'wrong port':
      return `${hoseWords(scene, fault.hose)} found on ${portName(scene, fault.port)}`;
    case 'line called': {
      const line = scene.hoses.find(({ to }) => to.plannedPort === `${fault.nozzle}.inlet`);
      return `Extra line called: ${line ? hoseWords(scene, line.id) : pieceName(scene, fault.nozzle)}`;
    }
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

/** An assist valve's handle stands at hydrant or at boost, not shut or open. */
function valveWords(scene: DrillScene, id: string, opening: number): string {
  const valve = scene.valves.find((one) => one.id === id);
  if (valve?.kind !== 'assist handle') return openingWords(opening);
  if (opening <= 0) return 'to hydrant';
  return opening >= 1 ? 'to boost' : `${share(opening)} of the way to boost`;
}

/** One action as a line of a drill's record. */
export function actionWords(scene: DrillScene, action: DrillAction, units: WordUnits): string {
  switch (action.do) {
    case 'couple':
      return `${hoseWords(scene, action.hose)} coupled to ${portName(scene, action.port)}`;
    case 'uncouple':
      return `${hoseWords(scene, action.hose)} uncoupled`;
    case 'set valve':
      return `${valveName(scene, action.valve)}: ${valveWords(scene, action.valve, action.opening)}`;
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
    case 'heard': {
      const preset = radioPresets.find(({ key }) => key === action.preset);
      const text = (preset?.text ?? action.preset).replace(/\{\w+\}/, '…');
      return `Heard from the ${roleWords[action.from].toLowerCase()}: “${text}”`;
    }
    case 'mark': {
      const about = action.about === undefined ? '' : ` (${roleWords[action.about]})`;
      const verdict = action.verdict === 'good' ? 'Good' : 'Fault';
      return `${verdict}${about}: ${inUnits(action.text, units)}`;
    }
    case 'overrule':
      return `${criterionWords[action.criterion]}: ${action.met ? 'met' : 'not met'}, by the instructor: ${inUnits(action.reason, units)}`;
    case 'say':
      return `“${inUnits(action.text, units)}”`;
  }
}
