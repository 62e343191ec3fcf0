/** What devices and server say to each other in a drill: JSON, one object a message. See docs/drill-rooms.md. */
import type {
  DrillScene,
  DrillView,
  Judgement,
  NoticedEvent,
  PlayedRole,
  Problem,
  Role,
} from '@plugside/drill';
import { isRole, playedRoles } from '@plugside/drill';
import { isPlainText } from './plain-text.ts';

/** Goes up where an older device could not follow. */
export const PROTOCOL = 1;

export type ClientMessage =
  /** The first one. Without a role it watches. */
  | { type: 'hello'; v: number; role?: Role; key?: string; device?: string }
  /** `clientSeq` rises with each action of a device. */
  | { type: 'action'; clientSeq: number; action: unknown }
  /**
   * Instructor: lets the computer play a role, or not; frees a role whose device is lost; shows roles
   * their next step, or not; ends.
   */
  | { type: 'computer'; role: PlayedRole; plays: boolean }
  | { type: 'free'; role: PlayedRole }
  | { type: 'guide'; on: boolean }
  | { type: 'end' }
  /** Gives one's own role back. */
  | { type: 'leave' }
  | { type: 'ping'; at?: number };

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

export type ServerMessage =
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
  /** Parts that have changed since view n − 1, null for one that has gone; or, with `whole`, all of it. */
  | { type: 'view'; n: number; whole?: true; view: Parts }
  | { type: 'event'; event: NoticedEvent }
  /** The action was done, and is on the disk. */
  | { type: 'taken'; clientSeq: number; tick: number }
  /** Nothing was done. */
  | { type: 'refused'; clientSeq: number; problem: Problem }
  | ({ type: 'roles' } & RoomRoles)
  | { type: 'paused'; paused: boolean; by?: HeldBy }
  | { type: 'ended'; result: Judgement[] }
  | { type: 'error'; code: ErrorCode; message: string }
  | { type: 'pong'; at?: number };

type Parts = { [part in keyof DrillView]?: DrillView[part] | null };

export type ErrorCode =
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

const kinds = ['hello', 'action', 'computer', 'free', 'guide', 'end', 'leave', 'ping'] as const;

/** A message as it came, or why it is none. What an action holds is looked at when it is done. */
export function readMessage(text: string): ClientMessage | { problem: string } {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return { problem: 'The message is no JSON. Send one object as text.' };
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return { problem: 'The message is no object. Send one with "type".' };
  }
  const given = value as Record<string, unknown>;
  const shown = String(given.type).slice(0, 40);
  switch (given.type) {
    case 'hello':
      return hello(given);
    case 'action': {
      const { clientSeq, action } = given;
      if (!isCount(clientSeq) || clientSeq < 1) {
        return {
          problem: `clientSeq is ${show(clientSeq)}. Give a whole number from 1 to 2147483647 that rises with each action.`,
        };
      }
      return { type: 'action', clientSeq, action };
    }
    case 'computer': {
      const { plays } = given;
      const role = playedRoles.find((one) => one === given.role);
      if (!role) return badRole(given.role);
      if (typeof plays !== 'boolean') {
        return { problem: `plays is ${show(plays)}. Give true or false.` };
      }
      return { type: 'computer', role, plays };
    }
    case 'free': {
      const role = playedRoles.find((one) => one === given.role);
      return role ? { type: 'free', role } : badRole(given.role);
    }
    case 'guide': {
      const { on } = given;
      if (typeof on !== 'boolean') return { problem: `on is ${show(on)}. Give true or false.` };
      return { type: 'guide', on };
    }
    case 'end':
    case 'leave':
      return { type: given.type };
    case 'ping':
      return typeof given.at === 'number' && Number.isFinite(given.at)
        ? { type: 'ping', at: given.at }
        : { type: 'ping' };
    default:
      return { problem: `type is "${shown}". Give one of: ${kinds.join(', ')}.` };
  }
}

function hello(given: Record<string, unknown>): ClientMessage | { problem: string } {
  const { v, role, key, device } = given;
  if (!isCount(v)) {
    return { problem: `v is ${show(v)}. Give the protocol's version, ${PROTOCOL}.` };
  }
  const said: ClientMessage = { type: 'hello', v };
  if (role !== undefined) {
    if (!isRole(role)) return { problem: `role is ${show(role)}. Give a role, or leave it out.` };
    said.role = role;
  }
  for (const [field, value, longest] of [
    ['key', key, 64],
    ['device', device, 60],
  ] as const) {
    if (value === undefined) continue;
    if (typeof value !== 'string' || value.length === 0 || value.length > longest) {
      return { problem: `${field} is ${show(value)}. Give text of 1 to ${longest} characters.` };
    }
    if (!isPlainText(value)) {
      return { problem: `${field} holds a character that is none. Give plain text.` };
    }
    said[field] = value;
  }
  return said;
}

function badRole(role: unknown): { problem: string } {
  return { problem: `role is ${show(role)}. Give one of: ${playedRoles.join(', ')}.` };
}

function isCount(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) >= 0 && (value as number) <= 0x7fffffff;
}

function show(value: unknown): string {
  if (typeof value === 'string') return `"${value.slice(0, 40)}"`;
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}
