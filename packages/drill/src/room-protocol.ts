/** What devices and the server say to each other in a shared drill: JSON, one object a message. */
import type { DrillAction, Problem } from './action.ts';

import type { Judgement } from './judge.ts';
import type { PlayedRole, Role } from './role.ts';
import type { DrillScene } from './scene.ts';
import type { DrillView, NoticedEvent } from './view-shape.ts';

/** Goes up where an older device could not follow. */
export const PROTOCOL = 1;

/**
 * Instructor: lets the computer play a role, or not; frees a role whose device is lost; shows roles
 * their next step, or not; ends. Anyone: gives one's own role back. None of it is in the drill's log.
 */
export type RoomRequest =
  | { type: 'computer'; role: PlayedRole; plays: boolean }
  | { type: 'free'; role: PlayedRole }
  | { type: 'guide'; on: boolean }
  | { type: 'end' }
  | { type: 'leave' };

/** From a device; `Action` is unknown until it has been read. */
export type ToRoom<Action = DrillAction> =
  /** The first one. Without a role it watches. */
  | { type: 'hello'; v: number; role?: Role; key?: string; device?: string }
  /** `clientSeq` rises with each action of a device. */
  | { type: 'action'; clientSeq: number; action: Action }
  | { type: 'ping'; at?: number }
  | RoomRequest;

export interface RoleStanding {
  role: PlayedRole;
  seat: 'free' | 'taken' | 'computer';
  /** Its device is here now. */
  connected: boolean;
}

export interface RoomRoles {
  roles: RoleStanding[];
  instructors: number;
  observers: number;
}

/** Whose doing it is that the clock stands: nobody is here, or what happens cannot be written. */
export type HeldBy = 'instructor' | 'nobody here' | 'not kept';

export type RoomErrorCode =
  | 'not understood'
  | 'version'
  | 'role taken'
  | 'wrong key'
  | 'not allowed'
  | 'too fast'
  | 'full'
  | 'replaced'
  | 'freed'
  | 'gone';

/** Parts of a view; null for one that has gone. */
export type ViewParts = { [part in keyof DrillView]?: DrillView[part] | null };

/** From the server. */
export type FromRoom =
  | {
      type: 'welcome';
      v: number;
      role: Role;
      /** To be kept by the device: only it may act in the role. */
      key?: string;
      roomId: string;
      code: string;
      crew?: string;
      /** What of the scene the role may know. */
      scene: DrillScene;
      /** Greatest `clientSeq` of this device and role that is on the disk; 0: none. */
      lastSeq: number;
      roles: RoomRoles;
      /** The first view, whole. */
      n: number;
      view: DrillView;
    }
  /** Parts that have changed since view n − 1; or, with `whole`, all of it. */
  | { type: 'view'; n: number; whole?: true; view: ViewParts }
  | { type: 'event'; event: NoticedEvent }
  /** The action was done, and is on the disk. */
  | { type: 'taken'; clientSeq: number; tick: number }
  /** Nothing was done. */
  | { type: 'refused'; clientSeq: number; problem: Problem }
  | ({ type: 'roles' } & RoomRoles)
  | { type: 'paused'; paused: boolean; by?: HeldBy }
  | { type: 'ended'; result: Judgement[] }
  | { type: 'error'; code: RoomErrorCode; message: string }
  | { type: 'pong'; at?: number };
