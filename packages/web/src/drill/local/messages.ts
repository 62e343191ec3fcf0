/** Between the page and the worker that runs its drill. */
import type { DrillAction, DrillState, PlayedRole, Role } from '@plugside/drill';
import type { LocalDrill, LocalTold } from './local-drill.ts';

export type ToDrill =
  | {
      tell: 'open';
      evolution: string;
      seed: number;
      role: Role;
      computer: PlayedRole[];
      /** Where it was left; left out: from its beginning. */
      left?: DrillState;
    }
  | { tell: 'act'; action: DrillAction }
  | { tell: 'take'; role: Role }
  | { tell: 'computer'; roles: PlayedRole[] }
  | { tell: 'clock'; action: Parameters<LocalDrill['clock']>[0] };

export type FromDrill = LocalTold[];
