/** An answer as a sentence: what the limit is, and what would raise it. */

import { hoseCatalogue } from '../catalogue/hose.ts';
import type { Plan } from '../plan/plan.ts';
import { nameOf, pieceOf } from '../plan/ports.ts';
import type { Improvement, LimitCheck } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from './say.ts';

/** A limit as the subject of a sentence: "The booster's intake", "The supply hose". */
export function limitSubject(plan: Plan, limit: LimitCheck): string {
  const piece = pieceOf(plan, limit.piece);
  const name = piece ? nameOf(piece) : limit.piece;
  switch (limit.kind) {
    case 'main residual':
      return `The main at ${name}`;
    case 'booster intake':
    case 'relay intake':
    case 'attack intake':
      return `${name}'s intake`;
    case 'draft vacuum':
      return `The lift at ${name}`;
    case 'pump capability':
      return `${name}'s pump`;
    case 'hose pressure': {
      const line = plan.lines.find((candidate) => candidate.id === limit.piece);
      const supply = line && hoseCatalogue[line.hose].limitClass === 'supply';
      return supply ? 'The supply hose' : 'The hose';
    }
    default:
      return limit.label;
  }
}

/**
 * "The supply hose is the limit (185 psi)." for what binds an answer; empty where nothing does.
 * Like limits (two lengths of the same hose at the same pressure) are said once.
 */
export function limitSentence(
  plan: Plan,
  binding: readonly LimitCheck[],
  units: UnitSystem = 'us',
): string {
  const said = [
    ...new Set(binding.map((limit) => `${limitSubject(plan, limit)}|${figure(limit, units)}`)),
  ];
  return said
    .map((one) => {
      const [subject, value] = one.split('|');
      return `${subject} is the limit (${value}).`;
    })
    .join(' ');
}

function figure(limit: LimitCheck, units: UnitSystem): string {
  const say = sayIn(units);
  switch (limit.unit) {
    case 'gpm':
      return `${say.full(limit.limit, 'flow')}`;
    case 'inHg':
      return say.full(limit.limit, 'vacuum');
    case 'ft/s':
      return say.full(limit.limit, 'velocity');
    default:
      if (limit.kind === 'pump capability') return `${say.full(limit.limit, 'pressure')} net`;
      return limit.sense === 'min'
        ? `${say.full(limit.limit, 'pressure')} least`
        : say.full(limit.limit, 'pressure');
  }
}

/** "A 3 in and a 5 in line from the side outlets would give 90 gpm more; after that the supply hose binds (185 psi)." */
export function improvementSentence(improvement: Improvement, units: UnitSystem = 'us'): string {
  const { change, gainGpm, thenBinding, plan } = improvement;
  const what = `${change[0]?.toUpperCase()}${change.slice(1)} would give ${sayIn(units).full(gainGpm, 'flow')} more`;
  const next = thenBinding[0];
  if (!next) return `${what}.`;
  const subject = limitSubject(plan, next);
  const then = subject.startsWith('The ') ? `the ${subject.slice(4)}` : subject;
  return `${what}; after that ${then} binds (${figure(next, units)}).`;
}
