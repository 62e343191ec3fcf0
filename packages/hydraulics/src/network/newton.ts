/**
 * Newton's method on flows and heads together. Each pass replaces every element by its tangent at
 * the present flow, solves the node balances for the change of the heads, and reads the new flows
 * off the tangents. Checks, governors and nozzles switch between pieces as the new heads and flows
 * tell; where the pieces stop changing and every element holds to its law, all conditions are met
 * and the answer is the only one (see the theory page, "The network method").
 */
import { FARTHEST_PSI, FLOW_TOLERANCE_GPM } from './constants.ts';
import type { Core } from './core.ts';
import { eliminate } from './elimination.ts';
import { ANSWER, coldPassives, GUESSES, OUTCOME, passPassives, TANGENTS } from './passives-step.ts';
import { advancePump, coldPump, judgePump, LOAD_COUNT, writePump } from './pump-step.ts';

/** Sets flows and states for a solve that knows nothing yet. */
export function coldStart(core: Core): void {
  coldPassives(core);
  for (let k = 0; k < core.pumps; k++) coldPump(core, k);
}

/**
 * Runs passes until settled. No allocation.
 * @param limit greatest number of passes
 * @param cold flows are guesses: the first pass uses straight lines through zero instead of tangents
 * @returns true when every element holds to its law, no state changed and every node balances
 */
export function newton(core: Core, limit: number, cold: boolean): boolean {
  const { unknowns, head, right, step, values, pumps, elimination } = core;
  let mode = cold ? GUESSES : ANSWER;
  for (let pass = 0; pass < limit; pass++) {
    startRows(core);
    let settled = passPassives(core, mode, pass) && mode !== GUESSES;
    const load = (pass < 12 ? pass : (pass >> 1) + 1) % LOAD_COUNT;
    // After a while every piece gets two passes, so that its own curve is found before it is judged.
    const mayMove = mode !== OUTCOME && (pass < 12 || pass % 2 === 0);
    for (let k = 0; k < pumps; k++) {
      if (core.dead[k]) continue;
      if (mode >= OUTCOME) {
        if (!advancePump(core, k, load, mayMove)) settled = false;
      } else if (mode === ANSWER && !judgePump(core, k, core.pumpFlow[k]!, load, true)) {
        settled = false;
      }
      if (!writePump(core, k)) settled = false;
    }
    // A start may hold to its laws but not to its balances; after a pass of tangents it holds to both.
    const balanced = mode === TANGENTS || worstOf(right, unknowns) <= FLOW_TOLERANCE_GPM;
    if (settled && balanced) return true;
    core.iterations++;
    if (!eliminate(elimination, values, right, step)) return false;
    for (let i = 0; i < unknowns; i++) {
      const next = head[i]! + step[i]!;
      head[i] = Math.max(-FARTHEST_PSI, Math.min(FARTHEST_PSI, next));
    }
    mode = mode === GUESSES ? OUTCOME : TANGENTS;
  }
  return false;
}

/** Writes the tangents at the present flows, states staying as they are; for derivatives. */
export function writeTangents(core: Core): void {
  startRows(core);
  passPassives(core, ANSWER, 0);
  for (let k = 0; k < core.pumps; k++) if (!core.dead[k]) writePump(core, k);
}

/** Empties the matrix; the balances begin with the demands. */
function startRows({ unknowns, values, right, demand, dry }: Core): void {
  for (let s = 0; s < values.length; s++) values[s] = 0;
  for (let i = 0; i < right.length; i++) right[i] = -demand[i]!;
  for (let i = 0; i < unknowns; i++) if (dry[i]) values[i] = 1;
}

function worstOf(right: Float64Array, unknowns: number): number {
  let worst = 0;
  for (let i = 0; i < unknowns; i++) {
    const size = right[i]! < 0 ? -right[i]! : right[i]!;
    if (!(size <= worst)) worst = size;
  }
  return worst;
}
