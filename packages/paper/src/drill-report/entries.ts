/** A drill's log in words. */
import {
  actionWords,
  type DrillAction,
  type DrillLog,
  type DrillScene,
  type Fault,
  faultWords,
  inUnits,
  type LogEntry,
  roleWords,
  TICKS_PER_S,
  type WordUnits,
} from '@plugside/drill';
import type { EntryKind, ReportEntry, ReportFault } from './data.ts';

/** Every entry, in order, none left out. */
export function entriesOf(scene: DrillScene, log: DrillLog, units: WordUnits): ReportEntry[] {
  const faults = new Map(scene.faults.map((fault) => [fault.id, fault]));
  return log.map((entry): ReportEntry => {
    const timeS = entry.tick / TICKS_PER_S;
    if (entry.kind === 'event') {
      const { level, text } = entry.event;
      return { timeS, kind: level, what: inUnits(text, units) };
    }
    const { action } = entry;
    if (action.do === 'arm fault') faults.set(action.fault.id, action.fault);
    const words = wordsOf(scene, action, faults, units);
    const refused =
      entry.kind === 'refused' ? ` Not possible: ${inUnits(entry.problem.message, units)}` : '';
    return { timeS, kind: kindOf(entry), who: whoOf(entry), what: `${words}${refused}` };
  });
}

function kindOf(entry: Exclude<LogEntry, { kind: 'event' }>): EntryKind {
  if (entry.kind === 'refused') return 'refused';
  switch (entry.action.do) {
    case 'radio':
    case 'say':
    case 'heard':
      return 'said';
    case 'arm fault':
    case 'lift fault':
      return 'fault';
    default:
      return 'done';
  }
}

function whoOf({ role, action, byComputer }: Exclude<LogEntry, { kind: 'event' }>): string {
  const to =
    action.do === 'say' && action.to !== undefined
      ? ` to ${roleWords[action.to].toLowerCase()}`
      : '';
  return `${roleWords[role]}${byComputer ? '*' : ''}${to}`;
}

function wordsOf(
  scene: DrillScene,
  action: DrillAction,
  faults: ReadonlyMap<string, Fault>,
  units: WordUnits,
): string {
  const lifted = action.do === 'lift fault' ? faults.get(action.fault) : undefined;
  return lifted ? `Fault lifted: ${faultWords(scene, lifted)}` : actionWords(scene, action, units);
}

/** What was set to go wrong before the drill, and what the instructor put in. */
export function faultsOf(scene: DrillScene, log: DrillLog, endTick: number): ReportFault[] {
  const found: { fault: Fault; by: ReportFault['by']; fromTick: number; liftedTick?: number }[] =
    scene.faults.map((fault) => ({ fault, by: 'scene', fromTick: fault.atTick ?? 0 }));
  for (const entry of log) {
    if (entry.kind !== 'action') continue;
    const { action, tick } = entry;
    if (action.do === 'arm fault') {
      const { fault } = action;
      found.push({ fault, by: 'instructor', fromTick: Math.max(tick, fault.atTick ?? 0) });
    } else if (action.do === 'lift fault') {
      const lifted = found.findLast(
        ({ fault, liftedTick }) => fault.id === action.fault && liftedTick === undefined,
      );
      if (lifted) lifted.liftedTick = tick;
    }
  }
  return found.map(({ fault, by, fromTick, liftedTick }) => ({
    what: faultWords(scene, fault),
    by,
    fromS: fromTick > Math.min(endTick, liftedTick ?? endTick) ? undefined : fromTick / TICKS_PER_S,
    ...(liftedTick !== undefined && { liftedS: liftedTick / TICKS_PER_S }),
  }));
}
