/** Reads what a device says (docs/drill-rooms.md). */
import { isPlainText, isRole, PROTOCOL, playedRoles, type ToRoom } from '@plugside/drill';

/** As read from the wire: what an action holds is looked at when it is done. */
export type ClientMessage = ToRoom<unknown>;

const kinds = [
  'hello',
  'action',
  'computer',
  'free',
  'guide',
  'show faults',
  'new watch key',
  'end',
  'leave',
  'ping',
] as const;

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
    case 'guide':
    case 'show faults': {
      const { on } = given;
      if (typeof on !== 'boolean') return { problem: `on is ${show(on)}. Give true or false.` };
      return { type: given.type, on };
    }
    case 'new watch key':
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
      return {
        problem: `${field} holds a line break, a control character or a mark of direction. Give plain text.`,
      };
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
