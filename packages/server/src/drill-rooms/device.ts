import type { FromRoom, Role } from '@plugside/drill';

/** A device that is in a room: one connection. */
export interface Device {
  role: Role;
  /** Its own name, by which its actions are told from another's of the same role. */
  readonly name: string;
  /** Number of the last frame that it has. */
  frame: number;
  readonly isOpen: boolean;
  /** Sent and not yet gone [bytes]. */
  readonly waitingBytes: number;
  send(message: FromRoom): void;
  /** Text that is ready, for many devices at once. */
  sendText(text: string): void;
  /** Says why and closes. */
  end(why: FromRoom): void;
  /** Closes once all that was sent has gone. */
  close(): void;
}

/** Whose action: its numbers rise. */
export function senderOf(role: Role, name: string): string {
  return `${role}/${name}`;
}
