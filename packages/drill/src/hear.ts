import type { RadioEntry } from './radio.ts';
import type { DrillState } from './state.ts';

/** Messages kept in the state; the log has them all. */
const radioKept = 50;

/** Puts a message into what everyone hears. */
export function hear(state: DrillState, entry: RadioEntry): void {
  state.radio.push(entry);
  if (state.radio.length > radioKept) state.radio.shift();
}
