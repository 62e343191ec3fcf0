/** What a device and the server say to each other in a drill: JSON, one object a message (docs/drill-rooms.md). */
import type {
  DrillAction,
  DrillScene,
  DrillView,
  Judgement,
  NoticedEvent,
  PlayedRole,
  Problem,
  Role,
} from '@plugside/drill';

/** Version that this app speaks. */
export const PROTOCOL = 1;

/** What only an instructor may ask for, and leaving. None of it is part of the drill's log. */
export type RoomRequest =
  | { type: 'computer'; role: PlayedRole; plays: boolean }
  | { type: 'free'; role: PlayedRole }
  | { type: 'guide'; on: boolean }
  | { type: 'end' }
  | { type: 'leave' };

export type ToRoom =
  | { type: 'hello'; v: number; role: Role; key?: string; device: string }
  | { type: 'action'; clientSeq: number; action: DrillAction }
  | { type: 'ping' }
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

/** Why the clock stands. */
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

export type FromRoom =
  | {
      type: 'welcome';
      role: Role;
      key?: string;
      roomId: string;
      code: string;
      crew?: string;
      scene: DrillScene;
      lastSeq: number;
      roles: RoomRoles;
      n: number;
      view: DrillView;
    }
  | { type: 'view'; n: number; whole?: true; view: ViewParts }
  | { type: 'event'; event: NoticedEvent }
  | { type: 'taken'; clientSeq: number; tick: number }
  | { type: 'refused'; clientSeq: number; problem: Problem }
  | ({ type: 'roles' } & RoomRoles)
  | { type: 'paused'; paused: boolean; by?: HeldBy }
  | { type: 'ended'; result: Judgement[] }
  | { type: 'error'; code: RoomErrorCode; message: string }
  | { type: 'pong' };
