/** What a guide points at: names of the things on the stage. */
import type { DrillAction, DrillStep, HoseEnd } from '@plugside/drill';

export const endMark = (hose: string, end: HoseEnd) => `end:${hose}:${end}`;
export const portMark = (port: string) => `port:${port}`;
export const valveMark = (valve: string) => `valve:${valve}`;
export const gearMark = (rig: string) => `gear:${rig}`;
export const governorMark = (rig: string) => `governor:${rig}`;
export const radioMark = (preset: string) => `radio:${preset}`;

/** The marks of everything that a step asks to be touched. */
export function marksOf(step: DrillStep | undefined): ReadonlySet<string> {
  return new Set(step?.how.flatMap(marksOfAction));
}

/** What an action touches. */
export function marksOfAction(action: DrillAction): string[] {
  switch (action.do) {
    case 'couple':
      return [endMark(action.hose, action.end), portMark(action.port)];
    case 'uncouple':
      return [endMark(action.hose, action.end)];
    case 'set valve':
      return [valveMark(action.valve)];
    case 'pump in gear':
      return [gearMark(action.rig)];
    case 'set governor':
    case 'set throttle':
      return [governorMark(action.rig)];
    case 'radio':
      return 'preset' in action.message ? [radioMark(action.message.preset)] : [radioMark('free')];
    default:
      return [];
  }
}
