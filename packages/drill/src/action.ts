/** What a person can do in a drill: plain JSON, read from outside by `readAction`, allowed by `mayDo`. */
import type { PortRef } from '@plugside/fireground';
import type { CriterionKey } from './criteria.ts';
import type { Fault } from './fault.ts';
import type { HoseEnd, ValveId } from './names.ts';
import type { RadioMessage, RadioPresetKey } from './radio.ts';
import type { PlayedRole, Role } from './role.ts';

export type DrillAction =
  /** Couples a loose hose end to a free port of a piece at hand. */
  | { do: 'couple'; hose: string; end: HoseEnd; port: PortRef }
  | { do: 'uncouple'; hose: string; end: HoseEnd }
  /**
   * Moves any valve, handle or bale to an opening, 0 shut to 1 open. It moves at hand speed;
   * `overS` asks for slower: seconds for the whole of this move [0 … 120].
   */
  | { do: 'set valve'; valve: ValveId; opening: number; overS?: number }
  | { do: 'pump in gear'; rig: string; inGear: boolean }
  /** Governor to a discharge pressure [psi, 0 … 400]. */
  | { do: 'set governor'; rig: string; pdpPsi: number }
  /** Throttle to a share of full speed [0.3 … 1.1]. */
  | { do: 'set throttle'; rig: string; speedFraction: number }
  | { do: 'radio'; message: RadioMessage }
  /** Instructor alone, from here on. */
  | { do: 'arm fault'; fault: Fault }
  | { do: 'lift fault'; fault: string }
  | { do: 'pause' }
  | { do: 'resume' }
  /** How fast the drill's clock runs against the wall's [0.5 … 8]; a room's business, kept in the log. */
  | { do: 'set speed'; speed: number }
  /** Instructor to all, or to one role: up to 200 characters. */
  | { do: 'say'; text: string; to?: PlayedRole }
  /** A message that a role gave on a real radio counts as given. */
  | { do: 'heard'; from: PlayedRole; preset: RadioPresetKey }
  /** Something seen, good or a fault, up to 200 characters. */
  | { do: 'mark'; verdict: 'good' | 'fault'; text: string; about?: PlayedRole }
  /** A criterion is met, or is not, whatever was counted, for a reason. */
  | { do: 'overrule'; criterion: CriterionKey; met: boolean; reason: string };

/** An action with who does it. */
export interface Submitted {
  role: Role;
  action: DrillAction;
  /** Done by the computer that plays the role. */
  byComputer?: true;
}

/** Why an action was refused: in words, naming the field, the value and the remedy. */
export interface Problem {
  field: string;
  message: string;
}
