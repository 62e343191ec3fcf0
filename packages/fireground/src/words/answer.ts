/** An answer as a sentence: what the limit is, and what would raise it. */

import { hoseCatalogue } from '../catalogue/hose.ts';
import type { Plan } from '../plan/plan.ts';
import { nameOf, pieceOf } from '../plan/ports.ts';
import type { Improvement, LimitCheck } from '../questions/answers.ts';
import type { Quantity, UnitSystem } from '../units/quantities.ts';
import { sayIn } from './say.ts';

/** A limit as the subject of a sentence: "The booster's intake", "The supply hose". */
function limitSubject(plan: Plan, limit: LimitCheck): string {
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

const QUANTITIES: Record<LimitCheck['unit'], Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  'ft/s': 'velocity',
  inHg: 'vacuum',
};

/** What a limit's figures measure. */
export function limitQuantity({ unit }: Pick<LimitCheck, 'unit'>): Quantity {
  return QUANTITIES[unit];
}

/** A limit in the middle of a sentence: "the supply hose (185 psi)". */
export function limitWords(plan: Plan, limit: LimitCheck, units: UnitSystem = 'us'): string {
  const at = ` (${sayIn(units).full(limit.limit, limitQuantity(limit))})`;
  if (limit.kind === 'hose pressure') return `${midSentence(limitSubject(plan, limit))}${at}`;
  if (limit.kind === 'main residual') return `the ${limit.label.replace(/^Main/, 'main')}${at}`;
  if (limit.kind === 'pump capability') return `${limit.label.replace(/capability$/, 'pump')}${at}`;
  return `${limit.label}${at}`;
}

/**
 * "The supply hose (185 psi) is the limit." for what stops an answer; empty where nothing does.
 * Like limits (two lengths of the same hose at the same pressure) are said once.
 */
export function limitSentence(
  plan: Plan,
  limits: readonly LimitCheck[],
  units: UnitSystem = 'us',
): string {
  const words = [...new Set(limits.map((limit) => limitWords(plan, limit, units)))];
  if (words.length === 0) return '';
  const start =
    words.length === 1 ? words[0]! : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
  const verb = words.length === 1 ? 'is the limit' : 'are the limits';
  return `${start[0]?.toUpperCase()}${start.slice(1)} ${verb}.`;
}

function midSentence(subject: string): string {
  return subject.startsWith('The ') ? `the ${subject.slice(4)}` : subject;
}

function figure(limit: LimitCheck, units: UnitSystem): string {
  const value = sayIn(units).full(limit.limit, limitQuantity(limit));
  if (limit.unit !== 'psi') return value;
  if (limit.kind === 'pump capability') return `${value} net`;
  return limit.sense === 'min' ? `${value} least` : value;
}

/** "A 3 in and a 5 in line from the side outlets would give 90 gpm more; after that the supply hose binds (185 psi)." */
export function improvementSentence(improvement: Improvement, units: UnitSystem = 'us'): string {
  const { change, gainGpm, thenBinding, plan } = improvement;
  const what = `${change[0]?.toUpperCase()}${change.slice(1)} would give ${sayIn(units).full(gainGpm, 'flow')} more`;
  const next = thenBinding[0];
  if (!next) return `${what}.`;
  const then = midSentence(limitSubject(plan, next));
  return `${what}; after that ${then} binds (${figure(next, units)}).`;
}
