/**
 * Hydrants that draw on one main, as the least favourable main that their tests allow.
 *
 * The tests tell what the main loses to each hydrant when it flows alone, `d·Q^(1/0.54)`; not how much
 * of that way two hydrants have in common. At most it is the whole way to the stronger one: then the
 * weaker hangs beyond it, on what its own test loses more. No main that gave these tests leaves either
 * hydrant less pressure (docs/theory.md, "Hydrants that share a main").
 */
import { DROP_EXPONENT, PSI_PER_FT } from '@plugside/hydraulics';
import type { GroupTest, Hydrant, Loss, Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';

/** A stretch of main; it loses `loss` by the power of flow of mains. */
export interface MainStretch {
  /** A hydrant's id, `source`, or the name of the place where tested hydrants part. */
  from: string;
  to: string;
  loss: Loss;
}

export interface SharedMain {
  /** The strongest first. */
  hydrants: readonly Hydrant[];
  /** How high the water would stand at rest [ft]: the least that any of the tests says. */
  headFt: number;
  stretches: readonly MainStretch[];
  /** The test of them flowing together that it rests on. */
  test?: GroupTest;
}

/**
 * Between hydrants' own static heads: more than this [psi] is hardly one main, and no main that hangs on the
 * other. Ours: two gauges read to a psi or two, on two days.
 */
export const HEADS_APART_PSI = 10;

/**
 * The mains of a plan that more than one of its hydrants in use draw on.
 * @param inUse of the plan's hydrants, where another than the plan's lines says which those are
 */
export function sharedMains(
  plan: Pick<Plan, 'hydrants' | 'groupTests' | 'lines' | 'appliances'>,
  inUse?: readonly Hydrant[],
): SharedMain[] {
  // Asked for every network: most plans have one hydrant.
  if (plan.hydrants.length < 2) return [];
  if (!plan.groupTests && plan.hydrants.every(({ main }) => main === undefined)) return [];
  return groupsOf(plan, inUse ?? hydrantsInUse(plan))
    .filter((group) => group.length > 1)
    .map((group) => sharedMain(group, testOf(plan, group)));
}

/** Hydrants that water can be taken from: with an open line, or a valve, on an outlet. */
export function hydrantsInUse(plan: Pick<Plan, 'hydrants' | 'lines' | 'appliances'>): Hydrant[] {
  const used = new Set<string>();
  for (const { from, valve } of plan.lines)
    if (valve !== 'shut') used.add(splitPortRef(from).pieceId);
  for (const part of plan.appliances)
    if (part.kind === 'assist-valve') used.add(splitPortRef(part.on).pieceId);
  return plan.hydrants.filter(({ id }) => used.has(id));
}

/**
 * How two hydrants are known to stand to each other. On one main, on mains of which one hangs on the other
 * or both on a third, or tested together: they share. Two names do not part them: mains that meet have two
 * names too. Apart are those whose mains hang on different things as named, and those of two names whose
 * water stands at heights that one system of mains does not give.
 * @param known hydrants that may name what a main of theirs hangs on; the two where left out
 */
export function sharing(
  plan: Pick<Plan, 'groupTests'>,
  one: Hydrant,
  two: Hydrant,
  known: readonly Hydrant[] = [one, two],
): 'shared' | 'apart' | 'not known' {
  const together = plan.groupTests?.some(
    ({ hydrants }) => hydrants.includes(one.id) && hydrants.includes(two.id),
  );
  if (together) return 'shared';
  if (one.main === undefined || two.main === undefined) return 'not known';
  const [ones, twos] = [feedersOf(one, known), feedersOf(two, known)];
  if (ones.some((name) => twos.includes(name))) return 'shared';
  if (one.mainFedFrom !== undefined && two.mainFedFrom !== undefined) return 'apart';
  return headsApartPsi([one, two]) > HEADS_APART_PSI ? 'apart' : 'not known';
}

/** A hydrant's main and what it hangs on, as far as some hydrants name that. */
function feedersOf({ main, mainFedFrom }: Hydrant, hydrants: readonly Hydrant[]): string[] {
  const names = main === undefined ? [] : [main];
  let next = mainFedFrom;
  while (next !== undefined && !names.includes(next)) {
    const name: string = next;
    names.push(name);
    next = hydrants.find((one) => one.main === name && one.mainFedFrom !== undefined)?.mainFedFrom;
  }
  return names;
}

/** Between the highest and the lowest static head of some hydrants [psi]. */
export function headsApartPsi(hydrants: readonly Hydrant[]): number {
  const heads = hydrants.map(({ staticPsi, elevationFt }) => staticPsi + PSI_PER_FT * elevationFt);
  return Math.max(...heads) - Math.min(...heads);
}

/** Hydrants in use that name no main, where it is not known whether they share one with another in use. */
export function hydrantsWithMainOpen(plan: Plan): Hydrant[] {
  if (plan.hydrants.length < 2) return [];
  const used = hydrantsInUse(plan);
  return used.filter(
    (one) =>
      one.main === undefined &&
      used.some((two) => two !== one && sharing(plan, one, two, plan.hydrants) === 'not known'),
  );
}

function groupsOf(
  plan: Pick<Plan, 'hydrants' | 'groupTests'>,
  hydrants: readonly Hydrant[],
): Hydrant[][] {
  const groups: Hydrant[][] = [];
  for (const hydrant of hydrants) {
    const joined = groups.filter((group) =>
      group.some((other) => sharing(plan, hydrant, other, plan.hydrants) === 'shared'),
    );
    for (const group of joined) groups.splice(groups.indexOf(group), 1);
    groups.push([...joined.flat(), hydrant]);
  }
  return groups;
}

/** The newest test in which all of them flowed. */
function testOf(
  { groupTests = [] }: Pick<Plan, 'groupTests'>,
  group: readonly Hydrant[],
): GroupTest | undefined {
  return groupTests
    .filter(({ hydrants }) => group.every(({ id }) => hydrants.includes(id)))
    .reduce<GroupTest | undefined>(
      (best, one) => (best && (best.testedOn ?? '') > (one.testedOn ?? '') ? best : one),
      undefined,
    );
}

type Tested = Pick<Hydrant, 'staticPsi' | 'residualPsi' | 'testGpm'>;

/** Loss for one gpm [psi]. */
const lossAtOne = ({ staticPsi, residualPsi, testGpm }: Tested) =>
  (staticPsi - residualPsi) / testGpm ** DROP_EXPONENT;

const headOf = ({ staticPsi, elevationFt }: Pick<Hydrant, 'staticPsi' | 'elevationFt'>) =>
  staticPsi / PSI_PER_FT + elevationFt;

function sharedMain(group: readonly Hydrant[], test: GroupTest | undefined): SharedMain {
  const hydrants = [...group].sort(
    (one, two) => lossAtOne(one) - lossAtOne(two) || (one.id < two.id ? -1 : 1),
  );
  const heads = hydrants.map(headOf);
  if (test?.elevationFt !== undefined) {
    heads.push(headOf({ staticPsi: test.staticPsi, elevationFt: test.elevationFt }));
  }
  const headFt = Math.min(...heads);
  const beyond = (hydrant: Hydrant, sharedAtOne: number): Loss => ({
    lossPsi: Math.max(0, lossAtOne(hydrant) - sharedAtOne) * hydrant.testGpm ** DROP_EXPONENT,
    atGpm: hydrant.testGpm,
  });
  if (test) {
    const place = `${hydrants[0]!.id}:together`;
    const loss = { lossPsi: test.staticPsi - test.residualPsi, atGpm: test.testGpm };
    const stretches = [
      { from: 'source', to: place, loss },
      ...hydrants.map((hydrant) => ({
        from: place,
        to: hydrant.id,
        loss: beyond(hydrant, lossAtOne(test)),
      })),
    ];
    return { hydrants, headFt, stretches, test };
  }
  const stretches = hydrants.map((hydrant, at): MainStretch => {
    const before = hydrants[at - 1];
    return {
      from: before?.id ?? 'source',
      to: hydrant.id,
      loss: beyond(hydrant, before ? lossAtOne(before) : 0),
    };
  });
  return { hydrants, headFt, stretches };
}

/** Whether water taken at one hydrant of a shared main goes through all of the main that feeds another. */
export function drawsThrough(shared: SharedMain, taker: string, other: string): boolean {
  const way = wayTo(shared, other);
  const own = new Set(wayTo(shared, taker));
  return way.every((stretch) => own.has(stretch) || stretch.loss.lossPsi < 1e-6);
}

function wayTo({ stretches }: SharedMain, id: string): MainStretch[] {
  const way: MainStretch[] = [];
  let at: string | undefined = id;
  while (at !== undefined && at !== 'source') {
    const stretch: MainStretch | undefined = stretches.find(({ to }) => to === at);
    if (stretch) way.push(stretch);
    at = stretch?.from;
  }
  return way;
}
