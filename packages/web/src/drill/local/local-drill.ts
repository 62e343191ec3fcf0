/** A drill played in this browser alone: one person, the computer in the other roles. */
import {
  createDrill,
  type Drill,
  type DrillAction,
  type DrillScene,
  type DrillState,
  judge,
  keyframeOf,
  notices,
  type PlayedRole,
  playedBy,
  type Role,
  restoreDrill,
  type Submitted,
  step,
  stepsStanding,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import type { Told } from '../link.ts';
import type { Progress } from './progress.ts';

export type LocalTold =
  | Told
  | { told: 'progress'; progress: Progress }
  /** The drill as it stands, to be kept: after each action, and once a second. */
  | { told: 'place'; state: DrillState };

export interface LocalDrill {
  /** Does an action in the role that is looked through, at the next tick. */
  act(action: DrillAction): void;
  /** Looks through another role from now on. */
  take(role: Role): void;
  /** Roles that the computer plays from now on. */
  giveToComputer(roles: readonly PlayedRole[]): void;
  /** Pause, resume and speed, which no played role may ask for. */
  clock(action: Extract<DrillAction, { do: 'pause' | 'resume' | 'set speed' }>): void;
  /**
   * Lets time pass.
   * @param elapsedMs by the wall's clock [ms]; the drill's runs faster or slower by its speed
   * @returns what there is to tell
   */
  advance(elapsedMs: number): LocalTold[];
}

/** Most of the drill's own time that one advance makes up for [s]: a tab that slept does not rush after. */
const MOST_AT_ONCE_S = 2;

/**
 * Opens a drill at its first tick, or where it was left: its clock stands there until somebody lets it go on.
 * @param seed of the gauges' restlessness [whole number 0 … 2³²−1]
 * @param left state that was kept of the same scene
 * @throws RangeError for a seed out of range
 */
export function openLocalDrill(
  scene: DrillScene,
  seed: number,
  first: Role,
  left?: DrillState,
): LocalDrill {
  const drill = left ? restoreDrill(scene, { ...left, paused: true }) : createDrill(scene, seed);
  let role = first;
  let computer: readonly PlayedRole[] = [];
  let waiting: Submitted[] = [];
  let owedTicks = 0;
  let changed = true;
  let stepsTold = -1;
  let secondTold = -1;
  let begun = left !== undefined;
  return {
    act: (action) => void waiting.push({ role, action }),
    take: (next) => {
      role = next;
      changed = true;
    },
    giveToComputer: (roles) => {
      computer = roles;
    },
    clock: (action) => void waiting.push({ role: 'instructor', action }),
    advance: (elapsedMs) => {
      const { state } = drill;
      if (!state.paused) {
        const most = MOST_AT_ONCE_S * TICKS_PER_S;
        owedTicks = Math.min(most, owedTicks + (elapsedMs / 1000) * TICKS_PER_S * state.speed);
      }
      const told: LocalTold[] = [];
      const events: Extract<Told, { told: 'noticed' }>['events'] = [];
      let acted = false;
      // An action counts at once, even while the drill is paused.
      while (owedTicks >= 1 || waiting.length > 0) {
        owedTicks = Math.max(0, owedTicks - 1);
        const own = waiting;
        waiting = [];
        for (const entry of step(drill, [...own, ...playedByComputer(drill, computer)])) {
          if (entry.kind === 'action') acted = true;
          if (entry.kind === 'refused' && !entry.byComputer)
            told.push({ told: 'refused', action: entry.action, problem: entry.problem });
          if (entry.kind === 'event' && notices(role, scene, state, entry))
            events.push({ ...entry.event, tick: entry.tick });
        }
        // What was done is in the state; a log that nobody reads would only grow.
        drill.log.length = 0;
        changed = true;
        if (state.paused) owedTicks = 0;
      }
      if (events.length > 0) told.push({ told: 'noticed', events });
      if (changed) told.push({ told: 'view', view: viewFor(role, scene, state) });
      const done = state.tally.stepTicks;
      const second = Math.floor(state.tick / TICKS_PER_S);
      if (done.length !== stepsTold || second !== secondTold) {
        stepsTold = done.length;
        secondTold = second;
        told.push({ told: 'progress', progress: progressOf(drill) });
        if (begun) acted = true;
      }
      if (acted) {
        begun = true;
        told.push({ told: 'place', state: keyframeOf(drill).state });
      }
      changed = false;
      return told;
    },
  };
}

function playedByComputer({ scene, state }: Drill, roles: readonly PlayedRole[]): Submitted[] {
  return roles.flatMap((role) => playedBy(role, scene, state));
}

function progressOf({ scene, state }: Drill): Progress {
  const standing = stepsStanding(scene, state);
  const done = state.tally.stepTicks.filter(({ step: id }) => standing.has(id));
  return { done: structuredClone(done), judgements: judge(scene, state) };
}
