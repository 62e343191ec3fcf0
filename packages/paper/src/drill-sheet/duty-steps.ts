/** A rig's part as the supply was chosen, told to its crew. */
import type { Duty } from '@plugside/fireground';
import { inTens } from '../sheet/figures.ts';
import { capital } from '../words.ts';
import type { DrillStep } from './data.ts';

/** What a part of a duty begins with, as duties are told, and as its crew is told it. */
const VERBS: Readonly<Record<string, string>> = {
  attacks: 'attack',
  connects: 'connect',
  feeds: 'feed',
  gives: 'give',
  goes: 'go',
  hauls: 'haul',
  hooks: 'hook',
  lays: 'lay',
  leaves: 'leave',
  pumps: 'pump',
  sets: 'set',
  stands: 'stand',
};
const BETWEEN = new RegExp(`(?:, | and )(?=(?:${Object.keys(VERBS).join('|')})\\b)`);

/** "Lay 400 ft of 5 in from the fire to H-348", one step for each part of a duty. */
function partsOf({ duty }: Duty): string[] {
  return inTens(duty)
    .split(BETWEEN)
    .map((part) => {
      const [verb = '', ...rest] = part.split(' ');
      const told = [VERBS[verb] ?? verb, ...rest].join(' ');
      return told.replace(/\bits\b/g, 'your');
    });
}

/** The whole of it, for a rig of which nothing else is told. */
export function wholeDuty(duty: Duty | undefined): DrillStep[] {
  return duty ? partsOf(duty).map(stepOf) : [];
}

/** Who lays what, which nothing else tells; connecting and pumping have steps of their own. */
export function layOfDuty(duty: Duty | undefined): DrillStep[] {
  return wholeDuty(duty).filter(({ text }) => /^(?:Lay|Leave) /.test(text));
}

function stepOf(part: string): DrillStep {
  return {
    text: `${capital(part)}.`,
    ...(/^lay /.test(part) && {
      hazard: 'Stand clear of hose that pays out: a length that snags breaks legs.',
    }),
  };
}
