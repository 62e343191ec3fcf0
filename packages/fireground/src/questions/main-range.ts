/** What hydrants give together by how their mains hang together: at worst, at best, and as counted. */
import { headsApartPsi, hydrantsInUse, sharedMains, sharing } from '../network/shared-mains.ts';
import type { Hydrant, Plan } from '../plan/plan.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { mainNotices } from '../words/main-notices.ts';
import type { MainRange, MostWater, Now, SettingsFor } from './answers.ts';
import { SupplySearch } from './supply-search.ts';
import { solveNow } from './what-now.ts';

/** A name that no department gives a main. */
const ASSUMED = '\u0000assumed';

/** The plan with every hydrant on a main of its own. */
export function apartPlan(plan: Plan): Plan {
  const { groupTests: _, ...rest } = plan;
  const hydrants = plan.hydrants.map(({ main: _main, mainFedFrom: _fed, ...hydrant }) => hydrant);
  return { ...rest, hydrants };
}

/**
 * The plans in which hydrants that may share a main do: named mains that may hang together are one, and
 * hydrants of unknown main are on it, on each such one in turn. One plan where no main is known; none where
 * nothing is left to assume.
 */
export function sharingPlans(plan: Plan): Plan[] {
  const used = hydrantsInUse(plan);
  if (!used.some((one, at) => used.slice(0, at).some((two) => unknown(plan, one, two)))) return [];
  const systems = systemsOf(plan, used);
  const unnamed = used.some(({ main }) => main === undefined);
  const joinedTo = systems.length > 0 ? systems.slice(0, unnamed ? undefined : 1) : [[]];
  return joinedTo.map((joined) => ({
    ...plan,
    hydrants: plan.hydrants.map((hydrant) => {
      const at = systems.findIndex((system) => system.includes(hydrant));
      const own = at >= 0 ? systems[at]! : hydrant.main === undefined ? joined : undefined;
      if (!own) return hydrant;
      const { mainFedFrom: _, ...rest } = hydrant;
      return { ...rest, main: `${ASSUMED}${systems.indexOf(own as Hydrant[])}` };
    }),
  }));
}

/** Hydrants of named mains in groups that share, or may. */
function systemsOf(plan: Plan, used: readonly Hydrant[]): Hydrant[][] {
  const systems: Hydrant[][] = [];
  for (const hydrant of used.filter(({ main }) => main !== undefined)) {
    const joined = systems.filter((system) =>
      system.some((other) => sharing(plan, hydrant, other, plan.hydrants) !== 'apart'),
    );
    for (const system of joined) systems.splice(systems.indexOf(system), 1);
    systems.push([...joined.flat(), hydrant]);
  }
  return systems;
}

const unknown = (plan: Plan, one: Hydrant, two: Hydrant) =>
  sharing(plan, one, two, plan.hydrants) === 'not known';

/**
 * How much hangs on the mains of a plan's hydrants: the greatest flow [gpm] as counted, were they
 * all that are not known to be apart on one main, and were each on its own.
 * @param countedGpm the greatest flow of the plan as it stands [gpm], where it is known already
 * @returns null for a plan whose hydrants are known to be apart, or that uses one
 * @throws NetworkError where the plan cannot be solved
 */
export function mainRange(plan: Plan, countedGpm?: number): MainRange | null {
  const most = (one: Plan) => new SupplySearch(one).greatestGpm();
  return rangeOf(plan, 'flow', most, countedGpm);
}

/** The same of the pressure at the scene's intake, with settings and valves as they stand [psi]. */
export function mainRangeNow(plan: Plan, countedPsi?: number): MainRange | null {
  return rangeOf(plan, 'intake', (one) => solveNow(one).sceneIntakePsi, countedPsi);
}

function rangeOf(
  plan: Plan,
  figure: MainRange['figure'],
  ask: (plan: Plan) => number,
  known?: number,
): MainRange | null {
  if (plan.hydrants.length < 2) return null;
  const groups = sharedMains(plan);
  const open = sharingPlans(plan);
  if (open.length === 0 && groups.length === 0) return null;
  const counted = known ?? ask(plan);
  const range = {
    figure,
    counted,
    hydrants: hydrantsNotKnownApart(plan).map(({ id }) => id),
    headsApartPsi: Math.max(0, ...groups.map(({ hydrants }) => headsApartPsi(hydrants))),
  };
  const tests = groups.flatMap(({ test }) => test ?? []);
  if (open.length === 0 && tests.length === groups.length) {
    const testedOn = tests.map((test) => test.testedOn ?? '').sort()[0];
    const basis = 'tested together' as const;
    return { ...range, basis, shared: counted, apart: counted, ...(testedOn && { testedOn }) };
  }
  const apart = groups.length === 0 ? counted : Math.max(counted, ask(apartPlan(plan)));
  if (open.length === 0) return { ...range, basis: 'shared', shared: counted, apart };
  const shared = Math.min(counted, ...open.map(ask));
  return { ...range, basis: 'not known', shared, apart };
}

/** Hydrants in use that share a main with another, or may. */
export function hydrantsNotKnownApart(plan: Plan): Hydrant[] {
  const used = hydrantsInUse(plan);
  return used.filter((one) =>
    used.some((two) => two !== one && sharing(plan, one, two, plan.hydrants) !== 'apart'),
  );
}

/**
 * An answer with what hangs on its hydrants' mains worked out and put into its notices; as it is where
 * nothing does. One or two more searches, so not part of the answer itself.
 * @param plan the plan that was asked about
 * @throws NetworkError where the plan cannot be solved
 */
export function withMainRange<A extends MostWater | SettingsFor | Now>(
  plan: Plan,
  answer: A,
  options: { units?: UnitSystem } = {},
): A {
  const range = rangeOfAnswer(plan, answer);
  if (!range) return answer;
  const notices = [
    ...mainNotices(plan, range, options.units),
    ...answer.notices.filter(({ about }) => about !== 'mains'),
  ];
  return { ...answer, mains: range, notices };
}

function rangeOfAnswer(plan: Plan, answer: MostWater | SettingsFor | Now): MainRange | null {
  if (answer.question === 'now') return mainRangeNow(plan, answer.state.sceneIntakePsi);
  const known = answer.question === 'most water' && answer.at === 'intake';
  return mainRange(plan, known ? answer.flowGpm : undefined);
}
