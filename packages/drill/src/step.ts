import type { Submitted } from './action.ts';
import { applyAction } from './apply-action.ts';
import { moveHeat } from './dead-ended.ts';
import type { DrillEvent } from './event.ts';
import { followFaults, strike } from './fault-strikes.ts';
import { layNewHose } from './hose-replaced.ts';
import type { LogEntry } from './log.ts';
import { moveGauges, moveHands, movePumps } from './move-hands.ts';
import { movePrime } from './move-prime.ts';
import { moveWater } from './move-water.ts';
import { watchNozzles } from './nozzle-over.ts';
import type { Drill } from './running-drill.ts';
import { solveFlows } from './solve-flows.ts';
import { TICKS_PER_S } from './state.ts';
import { countTick } from './tally.ts';
import { faultWords } from './words/action-words.ts';
import { pieceName } from './words/piece-words.ts';

/** What goes on is not told again before so long [ticks]. */
const TOLD_AGAIN_TICKS = 5 * TICKS_PER_S;

/**
 * One step of a twentieth of a second of the drill's own time: actions in the order given, then, unless
 * paused, hands, pumps, water. Never throws for any action that `readAction` let through.
 * @returns what this step added to the drill's log
 */
export function step(drill: Drill, submitted: readonly Submitted[] = []): LogEntry[] {
  const first = drill.log.length;
  for (const one of submitted) {
    const done = applyAction(drill, one);
    if ('problem' in done) refuse(drill, one, done.problem.field, done.problem.message);
    else {
      write(drill, { kind: 'action', ...one });
      tell(drill, done.events);
    }
  }
  if (!drill.state.paused) advance(drill);
  return drill.log.slice(first);
}

type Unplaced = LogEntry extends infer E
  ? E extends LogEntry
    ? Omit<E, 'tick' | 'seq'>
    : never
  : never;

function write({ state, log }: Drill, entry: Unplaced): void {
  log.push({ tick: state.tick, seq: state.seq++, ...entry } as LogEntry);
}

function refuse(drill: Drill, one: Submitted, field: string, message: string): void {
  write(drill, { kind: 'refused', problem: { field, message }, ...one });
}

function tell(drill: Drill, events: readonly DrillEvent[]): void {
  for (const event of events) write(drill, { kind: 'event', event });
}

function advance(drill: Drill): void {
  const { scene, state } = drill;
  for (const fault of state.faults) {
    const isFirst = state.tick === 0 && scene.faults.some(({ id }) => id === fault.id);
    if (fault.atTick !== state.tick && !(isFirst && fault.atTick === undefined)) continue;
    drill.stale = true;
    strike(drill, fault);
  }
  followFaults(drill);
  tell(drill, layNewHose(drill));
  const before = state.pumps.map(({ reliefGpm }) => ({ reliefGpm }));
  const clappers = state.assistValves.map(({ clapper }) => clapper);
  moveHands(drill);
  movePumps(drill);
  const solved = solveFlows(drill);
  if (!solved)
    tell(drill, [
      {
        kind: 'not solved',
        level: 'caution',
        piece: drill.scene.plan.scene,
        text: 'This tick could not be solved: pressures stand as they were.',
      },
    ]);
  tell(drill, moveWater(drill, solved));
  for (const pump of state.pumps) tell(drill, movePrime(drill, pump));
  for (const pump of state.pumps) tell(drill, moveHeat(drill, pump));
  tell(drill, watchNozzles(drill));
  moveGauges(drill);
  tell(drill, changes(drill, before, clappers));
  tell(drill, countTick(drill));
  state.tick++;
}

function event(
  kind: DrillEvent['kind'],
  level: DrillEvent['level'],
  piece: string,
  text: string,
): DrillEvent {
  return { kind, level, piece, text };
}

/** What pumps, reliefs, clappers and faults began to do in this tick. */
function changes(
  { scene, state }: Drill,
  before: readonly { reliefGpm: number }[],
  clappers: readonly string[],
): DrillEvent[] {
  const events: DrillEvent[] = [];
  state.pumps.forEach((pump, at) => {
    const { rigId, condition, reliefGpm, cavitatedTick } = pump;
    const was = before[at]!;
    if (condition === 'cavitating') {
      pump.cavitatedTick = state.tick;
      // One that comes and goes is told once.
      if (cavitatedTick < 0 || state.tick - cavitatedTick > TOLD_AGAIN_TICKS)
        events.push(
          event(
            'cavitating',
            'caution',
            rigId,
            `${pieceName(scene, rigId)} cavitates: it wants more water than its intake brings. Lower its pressure or take a line off.`,
          ),
        );
    }
    if (reliefGpm > 1 && was.reliefGpm <= 1)
      events.push(
        event('relief opens', 'fact', rigId, `${pieceName(scene, rigId)}'s intake relief opens.`),
      );
  });
  state.assistValves.forEach(({ id, clapper }, at) => {
    if (clapper === clappers[at]) return;
    if (clapper === 'shut')
      events.push(event('clapper shuts', 'fact', id, `${pieceName(scene, id)}'s clapper shuts.`));
    if (clapper === 'open')
      events.push(
        event(
          'clapper opens',
          'fact',
          id,
          `${pieceName(scene, id)}'s clapper opens: the hydrant feeds.`,
        ),
      );
  });
  for (const fault of state.faults)
    if (fault.atTick === state.tick)
      events.push(event('fault', 'caution', fault.id, `Fault: ${faultWords(scene, fault)}.`));
  return events;
}
