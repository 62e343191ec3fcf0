/** Actions tapped without a connection, kept over a page that is closed: to be told of, never to be done late. */
import type { DrillAction, Role } from '@plugside/drill';
import { keep, kept } from '../../plan-store/device-memory.ts';

const nameOf = (code: string, role: Role) => `plugside.drill-unsent ${code} ${role}`;

/** Keeps what has not been sent; nothing is kept where there is none. */
export function keepUnsent(code: string, role: Role, unsent: readonly DrillAction[]): void {
  const name = nameOf(code, role);
  const text = unsent.length === 0 ? '' : JSON.stringify(unsent);
  if ((kept(name) ?? '') !== text) keep(name, text);
}

/** What an earlier page of this device never sent; it is forgotten from here on. */
export function unsentBefore(code: string, role: Role): DrillAction[] {
  const text = kept(nameOf(code, role));
  if (!text) return [];
  keepUnsent(code, role, []);
  try {
    const read: unknown = JSON.parse(text);
    return Array.isArray(read) ? (read as DrillAction[]) : [];
  } catch {
    return [];
  }
}
