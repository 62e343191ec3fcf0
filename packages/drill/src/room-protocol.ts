/** What devices and the server say to each other in a shared drill: JSON, one object a message. */
import type { DrillAction, Problem } from './action.ts';
import type { Judgement } from './judge.ts';
import type { PlayedRole, Role } from './role.ts';
import type { DrillScene } from './scene.ts';
import type { DrillView, NoticedEvent } from './view-shape.ts';

/** Goes up where an older device could not follow. */
export const PROTOCOL = 2;

/**
 * Instructor: lets the computer play a role, or not; frees a role whose device is lost; shows roles
 * their next step, or not; shows those who watch what was made to go wrong, or not; wants a new key to
 * watch with; ends. Anyone: gives one's own role back. None of it is in the drill's log.
 */
export type RoomRequest =
  | { type: 'computer'; role: PlayedRole; plays: boolean }
  | { type: 'free'; role: PlayedRole }
  | { type: 'guide'; on: boolean }
  | { type: 'show faults'; on: boolean }
  | { type: 'new watch key' }
  | { type: 'end' }
  | { type: 'leave' };

/** From a device; `Action` is unknown until it has been read. */
export type ToRoom<Action = DrillAction> =
  /** The first one. Without a role it watches, by the key to watch with. */
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

/** What the instructor has set for the room. */
export interface RoomSettingsNow {
  /** Roles are shown their next step. */
  guided: boolean;
  /** Those who watch are shown the faults that have come into effect. */
  faultsShown: boolean;
  /** There is a key to watch with; a room that was made before there were such has none. */
  hasWatchKey: boolean;
}

/** Whose doing it is that the clock stands: nobody is here, or what happens cannot be written. */
export type HeldBy = 'instructor' | 'nobody here' | 'not kept';

export type RoomErrorCode =
  | 'not understood'
  | 'version'
  | 'role taken'
  | 'wrong key'
  | 'no such role'
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
      /** To the instructor alone. */
      settings?: RoomSettingsNow;
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
  /** To instructors. */
  | ({ type: 'settings' } & RoomSettingsNow)
  /** To the instructor who asked for it: those who watched by the one before are out. */
  | { type: 'watch key'; key: string }
  | { type: 'paused'; paused: boolean; by?: HeldBy }
  | { type: 'ended'; result: Judgement[] }
  | { type: 'error'; code: RoomErrorCode; message: string }
  | { type: 'pong'; at?: number };
