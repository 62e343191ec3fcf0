/** A step of an evolution: what to do, as something that can be checked on the state, and why. */
import type { PortRef } from '@plugside/fireground';
import type { DrillAction } from './action.ts';
import type { HoseEnd, ValveId } from './names.ts';
import type { RadioPresetKey } from './radio.ts';
import type { PlayedRole } from './role.ts';

/** Something that holds of a state or does not: plain JSON. */
export type Condition =
  | { is: 'coupled'; hose: string; end: HoseEnd; port: PortRef }
  | { is: 'valve at least'; valve: ValveId; opening: number }
  | { is: 'valve at most'; valve: ValveId; opening: number }
  | { is: 'hose full'; hose: string }
  | { is: 'in gear'; rig: string; inGear: boolean }
  /** Discharge pressure [psi]. */
  | { is: 'discharge at least'; rig: string; psi: number; asked?: AskedFor }
  | { is: 'intake at least'; rig: string; psi: number }
  /** What its governor is set to, within 2 psi. */
  | { is: 'governor set'; rig: string; psi: number; asked?: AskedFor }
  | { is: 'tank at least'; rig: string; gal: number }
  /** Flow of a nozzle as a share of its rating [-]. */
  | { is: 'nozzle flows'; nozzle: string; share: number }
  /** Pressure at the near end of a hose that flows [psi]. */
  | { is: 'line flows at'; hose: string; psi: number; withinPsi: number }
  /** `since`: the step that it tells of; said before that was done it does not count. */
  | { is: 'said'; role: PlayedRole; preset: RadioPresetKey; since?: string }
  /** Run out of an open outlet until it was clear, before hose went on. */
  | { is: 'flushed'; hydrant: string }
  | { is: 'all'; of: Condition[] };

/**
 * A pressure that follows what was last asked for on the radio, its `psi` standing until then: all of it, or as
 * far as that at most.
 */
export type AskedFor = 'in full' | 'up to';

export interface DrillStep {
  /** Unique in its evolution. */
  id: string;
  role: PlayedRole;
  /** What to do, to the one who does it. */
  what: string;
  why: string;
  /** What the water does then. */
  water: string;
  hazard?: string;
  done: Condition;
  /** Steps that must come first; left out: the one before it in the list. A scene has it filled in. */
  after?: string[];
  /** What does it: shown by a teacher, done by the computer. */
  how: DrillAction[];
}
