/** What a reader must know of the mains that a plan's hydrants are on. */
import { HEADS_APART_PSI, hydrantsInUse, sharedMains, sharing } from '../network/shared-mains.ts';
import type { Plan } from '../plan/plan.ts';
import { nameOf, pieceOf } from '../plan/ports.ts';
import type { MainRange, Notice } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from './say.ts';

/** Less than this between the two ends is no difference: gpm, or psi. Ours. */
const SAME = { flow: 5, intake: 0.5 } as const;

/** "H-1, H-2 and H-3". */
function named(plan: Plan, ids: readonly string[]): string {
  const names = ids.map((id) => nameOf(pieceOf(plan, id)!));
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** What is open of some hydrants' mains: which main they are on, or, where each names one, what those hang on. */
function openWords(
  plan: Plan,
  ids: readonly string[],
  names: string,
): { open: string; together: string; remedy: string } {
  const named = ids.every((id) => plan.hydrants.find((one) => one.id === id)?.main !== undefined);
  return named
    ? {
        open: `the mains of ${names} are fed apart from each other`,
        together: 'a feeder',
        remedy: 'Say what each main is fed from',
      }
    : {
        open: `${names} are on mains of their own`,
        together: 'a main',
        remedy: 'Name their mains',
      };
}

/** The notices that a range comes to, figures in them. */
export function mainNotices(plan: Plan, range: MainRange, units: UnitSystem = 'us'): Notice[] {
  const { basis, figure, shared, apart, counted, testedOn } = range;
  const say = sayIn(units);
  const names = named(plan, range.hydrants);
  const amount = (value: number) => say.full(value, figure === 'flow' ? 'flow' : 'pressure');
  const what = figure === 'flow' ? '' : ' at the intake';
  const same = Math.abs(apart - shared) < SAME[figure];
  const about = (level: Notice['level'], text: string): Notice => ({ level, about: 'mains', text });
  const notices: Notice[] = [];
  if (basis === 'tested together') {
    const when = testedOn ? ` on ${testedOn}` : '';
    notices.push(
      about('fact', `${names} were tested flowing together${when}: that test is counted.`),
    );
  } else if (basis === 'shared') {
    notices.push(
      same
        ? about('fact', `${names} share a main; that takes nothing here.`)
        : about(
            'caution',
            `${names} share a main: ${amount(shared)}${what} is counted, the least that their tests allow. Were each on a main of its own, it would be ${amount(apart)}. A test with both flowing tells.`,
          ),
    );
  } else {
    const { open, together, remedy } = openWords(plan, range.hydrants, names);
    notices.push(
      Math.abs(counted - shared) < SAME[figure]
        ? about('fact', `It is not known whether ${open}; sharing one would take nothing here.`)
        : about(
            'caution',
            `It is not known whether ${open}. If they share ${together}: ${amount(shared)}${what} instead of ${amount(counted)}. ${remedy}, or test them flowing together.`,
          ),
    );
  }
  if (range.headsApartPsi > HEADS_APART_PSI) {
    notices.push(
      about(
        'caution',
        `The static pressures of ${names}, heights counted, lie ${say.full(range.headsApartPsi, 'pressure')} apart: hardly those of one main. The lowest is counted; check the mains and the heights.`,
      ),
    );
  }
  return notices;
}

/** The same without figures, for an answer that has not worked them out. */
export function unsizedMainNotices(plan: Plan): Notice[] {
  if (plan.hydrants.length < 2) return [];
  const used = hydrantsInUse(plan);
  const pairs = used.flatMap((one, at) => used.slice(0, at).map((two) => [one, two] as const));
  const open = pairs.filter(([one, two]) => sharing(plan, one, two, plan.hydrants) === 'not known');
  const notices: Notice[] = sharedMains(plan).map(({ hydrants, test }) => ({
    level: 'fact',
    about: 'mains',
    text: `${named(
      plan,
      hydrants.map(({ id }) => id),
    )} share a main: ${test ? 'their test together' : 'the least that their tests allow'} is counted.`,
  }));
  if (open.length === 0) return notices;
  const ids = used.filter((one) => open.some((pair) => pair.includes(one))).map(({ id }) => id);
  return [
    {
      level: 'caution',
      about: 'mains',
      text: `It is not known whether ${openWords(plan, ids, named(plan, ids)).open}. A shared main gives less than the figures here.`,
    },
    ...notices,
  ];
}
