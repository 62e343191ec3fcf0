/** What a device knows of the drill it takes part in. */
import type {
  DrillAction,
  DrillScene,
  DrillView,
  HeldBy,
  Judgement,
  Role,
  RoomErrorCode,
  RoomRoles,
  RoomSettingsNow,
} from '@plugside/drill';

export type Connection =
  | { is: 'joining' }
  | { is: 'here' }
  /** Dropped, or the server does not answer: it is tried again by itself. */
  | { is: 'away'; sinceMs: number; nextTryMs: number }
  /** Not tried again by itself: why, in words. */
  | { is: 'out'; code: RoomErrorCode | 'ended' | 'unknown'; why: string };

export interface RoomState {
  code: string;
  role: Role;
  connection: Connection;
  roomId?: string;
  crew?: string;
  /** What of it the role may know. */
  scene?: DrillScene;
  view?: DrillView;
  roles?: RoomRoles;
  /** To the instructor: what is set for the room. */
  settings?: RoomSettingsNow;
  /** To the instructor: the key to watch with, where it was made anew just now. */
  watchKey?: string;
  /** Why the clock stands, but for the instructor's pause, which is in the view. */
  heldBy?: HeldBy;
  /** Tapped, and not answered yet. */
  waiting: number;
  /** Tapped while the connection was away, and never done. */
  notDone: DrillAction[];
  /** What the server would not do, in words. */
  trouble?: string;
  /** How it went, once it has ended. */
  result?: Judgement[];
}

/** Whether the clock stands, and why; of a drill that one is out of, or that has ended, nothing any more. */
export function heldIn({
  view,
  heldBy,
  connection,
}: Pick<RoomState, 'view' | 'heldBy' | 'connection'>): HeldBy | undefined {
  if (connection.is === 'out') return undefined;
  if (heldBy === 'not kept' || heldBy === 'nobody here') return heldBy;
  return view?.paused ? 'instructor' : undefined;
}
