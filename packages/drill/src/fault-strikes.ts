/** Faults that do something at once when their moment comes. */

import { putOn, takeOff } from './coupling.ts';
import { defaultBenchmarks } from './defaults.ts';
import type { Fault } from './fault.ts';
import { inEffect } from './fault.ts';
import { couplingBar } from './fault-on-port.ts';
import { hear } from './hear.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import { TICKS_PER_S } from './state.ts';
import { keep } from './tally-acts.ts';
import { hoseWords } from './words/piece-words.ts';

/** What a fault does at its moment: a hose found on a wrong port, an extra line called. */
export function strike(drill: Drill, fault: Fault): void {
  const { scene, state } = drill;
  if (fault.kind === 'wrong port') {
    if (couplingBar(scene, state, fault) !== undefined) return;
    const hose = state.hoses.find(({ id }) => id === fault.hose)!;
    if (hose[fault.end].port !== null) takeOff(drill, hose, fault.end);
    putOn(drill, hose, fault.end, fault.port);
  }
  if (fault.kind === 'line called') {
    const line = scene.hoses.find(({ to }) => to.plannedPort === `${fault.nozzle}.inlet`);
    const name = line ? hoseWords(scene, line.id) : fault.nozzle;
    hear(state, {
      tick: state.tick,
      from: 'instructor',
      text: `Command calls for an extra line: ${name}.`,
    });
    state.tally.called ??= [];
    const { called } = state.tally;
    if (!called.some((one) => one.nozzle === fault.nozzle && one.takenBackTick === undefined))
      keep(called, { nozzle: fault.nozzle, tick: state.tick });
  }
}

/** An extra line that is taken back before its time was up was never due; one that was missed by then stays so. */
export function takeBack({ scene, state }: Drill, nozzle: string): void {
  if (!hasRules(scene, 3)) return;
  const { called = [] } = state.tally;
  const waits = called.find((one) => one.nozzle === nozzle && one.flowedTick === undefined);
  if (!waits) return;
  const line = scene.hoses.find(({ to }) => to.plannedPort === `${nozzle}.inlet`);
  hear(state, {
    tick: state.tick,
    from: 'instructor',
    text: `Command no longer wants the extra line: ${line ? hoseWords(scene, line.id) : nozzle}.`,
  });
  const dueS = scene.benchmarks.extraLineS ?? defaultBenchmarks.extraLineS!;
  if ((state.tick - waits.tick) / TICKS_PER_S > dueS) waits.takenBackTick = state.tick;
  else state.tally.called = called.filter((one) => one !== waits);
}

/** Keeps which faults are in effect, and holds clappers where they stand when one sticks. */
export function followFaults(drill: Drill): void {
  const { scene, state } = drill;
  if (!hasRules(scene, 2)) return;
  const isQuiet = state.faults.length === 0 && !state.tally.faults;
  if (isQuiet && !state.assistValves.some(({ stuck }) => stuck !== undefined)) return;
  const now = state.faults.filter((fault) => inEffect(state, fault));
  if (now.length > 0 || state.tally.faults) {
    state.tally.faults ??= [];
    const spans = state.tally.faults;
    for (const span of spans)
      if (span.toTick === undefined && !now.some(({ id }) => id === span.fault.id))
        span.toTick = state.tick;
    for (const fault of now)
      if (!spans.some((span) => span.toTick === undefined && span.fault.id === fault.id))
        keep(spans, { fault: { ...fault }, fromTick: state.tick });
  }
  for (const valve of state.assistValves) {
    const sticks = now.some((one) => one.kind === 'clapper stuck' && one.valve === valve.id);
    const gapes = now.some((one) => one.kind === 'clapper stuck open' && one.valve === valve.id);
    const before = valve.stuck;
    if (!sticks && !gapes) delete valve.stuck;
    else if (before === undefined && (sticks || valve.clapper === 'open'))
      valve.stuck = valve.clapper === 'open' ? 'open' : 'shut';
    if (valve.stuck !== before) drill.stale = true;
  }
}
