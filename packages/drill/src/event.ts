/** What happens by itself in a drill. */
export type EventKind =
  | 'water at nozzle'
  | 'water lost at nozzle'
  | 'hose filled'
  | 'hose drained'
  | 'water thrown'
  | 'hose burst'
  | 'hose over its limit'
  | 'nozzle over its pressure'
  | 'shut fast'
  | 'opened fast'
  | 'more than asked'
  | 'air into pump'
  | 'cavitating'
  | 'prime lost'
  | 'primed'
  | 'tank empty'
  | 'tank full'
  | 'relief opens'
  | 'main under limit'
  | 'intake under limit'
  | 'clapper shuts'
  | 'clapper opens'
  | 'hose waits'
  | 'hose replaced'
  | 'pump heats'
  | 'air sucked in'
  | 'fault'
  | 'fault lifted'
  | 'not solved';

export interface DrillEvent {
  kind: EventKind;
  level: 'fact' | 'caution';
  /** The piece or hose that it concerns. */
  piece: string;
  /** For people. */
  text: string;
}
