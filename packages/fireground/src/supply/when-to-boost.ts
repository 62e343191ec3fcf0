/** When a second engine at the hydrant pays: the rule to remember for a hydrant and its hose. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import type { DepartmentValues, HoseSize, Hydrant, Plan } from '../plan/plan.ts';
import { fallingRoot } from '../questions/root.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import { unassistedPlan } from '../questions/unassisted.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { WhenToBoost } from './choice.ts';
import type { Leg } from './leg.ts';
import { planOfLegs } from './leg-plan.ts';
import type { RespondingRig } from './situation.ts';

export interface BoostQuestion {
  hydrant: Hydrant;
  hose: HoseSize;
  /** Like lines side by side, 1 or 2. */
  count?: 1 | 2;
  /** In order of arrival: the first attacks, the second boosts, on a valve where either has one. */
  rigs: readonly [attack: RespondingRig, booster: RespondingRig, ...others: RespondingRig[]];
  /** Flow that must reach the scene [gpm, above 0]. */
  demandGpm: number;
  /** Height gained in 100 ft of lay; lost when negative. Level where left out. */
  riseFtPer100?: number;
  /** Lays to compare at [ft, above 0]. */
  lengths: readonly number[];
  /** False where the hydrant has no large outlet. */
  steamer?: boolean;
  department?: DepartmentValues;
}

/** Longest lay looked at [ft]. */
const LONGEST_FT = 20_000;

/**
 * Most water with and without an engine at the hydrant for each length, the longest lay of each
 * that still meets the demand, and the rule in the crew's words, rounded down to a whole section.
 * @throws RangeError for no demand, fewer than two rigs or a length that is not above 0
 */
export function whenToBoost(
  question: BoostQuestion,
  options: { units?: UnitSystem } = {},
): WhenToBoost {
  check(question);
  const { demandGpm, lengths } = question;
  const boosted = (lengthFt: number) => layOf(question, lengthFt, true);
  const alone = (lengthFt: number) => layOf(question, lengthFt, false);
  const mostGpm = (plan: Plan) => new SupplySearch(plan).greatestGpm();
  const unassistedToFt = reachFt(question, alone);
  const boostedToFt = reachFt(question, boosted);
  return {
    demandGpm,
    points: lengths.map((lengthFt) => ({
      lengthFt,
      unassistedGpm: mostGpm(alone(lengthFt)),
      boostedGpm: mostGpm(boosted(lengthFt)),
    })),
    unassistedToFt,
    boostedToFt,
    rule: ruleOf(question, unassistedToFt, boostedToFt, options.units ?? 'us'),
  };
}

function check({ demandGpm, lengths, rigs, count = 1, riseFtPer100 = 0 }: BoostQuestion): void {
  if (!(demandGpm > 0) || !Number.isFinite(demandGpm)) {
    throw new RangeError(`demandGpm is ${demandGpm}; allowed: above 0. Give the flow wanted.`);
  }
  if (rigs.length < 2) {
    throw new RangeError(
      `rigs has ${rigs.length}; allowed: 2 or more. Boosting takes a second engine.`,
    );
  }
  if (count !== 1 && count !== 2) throw new RangeError(`count is ${count}; allowed: 1 or 2 lines.`);
  if (!Number.isFinite(riseFtPer100)) {
    throw new RangeError(
      `riseFtPer100 is ${riseFtPer100}; allowed: a number. Give 0 on level ground.`,
    );
  }
  const bad = lengths.find((lengthFt) => !(lengthFt > 0) || !Number.isFinite(lengthFt));
  if (bad !== undefined) {
    throw new RangeError(`lengths has ${bad}; allowed: above 0. Leave it out.`);
  }
}

/**
 * The lay at a length. Alone it hangs on the assist valve where there is one, so that an engine can
 * come to it later; else on the hydrant itself.
 */
function layOf(question: BoostQuestion, lengthFt: number, boosted: boolean): Plan {
  const { hydrant, hose, count = 1, rigs, demandGpm, riseFtPer100 = 0, steamer = true } = question;
  const [attack, booster] = rigs;
  const brought = steamer && (attack.assistValve || booster.assistValve);
  // A second line leaves from the booster: alone, two lines run from two outlets instead.
  const valve = brought && (boosted || count === 1);
  const pumped = boosted || valve;
  const leg: Leg = {
    source: { kind: 'hydrant', at: { hydrant, steamer, lengthFt } },
    pumps: pumped ? [booster] : [],
    stretches: [{ lines: Array.from({ length: count }, () => hose), fromFt: 0, toFt: lengthFt }],
    valve,
    suction: [],
  };
  const plan = planOfLegs(
    {
      title: 'When to boost',
      invented: false,
      scene: { name: 'Scene', elevationFt: hydrant.elevationFt + (riseFtPer100 * lengthFt) / 100 },
      demandGpm,
      department: question.department ?? {},
    },
    attack,
    [{ leg, suction: [] }],
    'When to boost',
  );
  return boosted || !valve ? plan : unassistedPlan(plan);
}

/** Longest lay that still meets the demand [ft]; null where the shortest does not. */
function reachFt(question: BoostQuestion, planAt: (lengthFt: number) => Plan): number | null {
  const { demandGpm, riseFtPer100 = 0, hose } = question;
  const { sectionFt } = hoseCatalogue[hose];
  const room = (lengthFt: number) => new SupplySearch(planAt(lengthFt)).roomAt(demandGpm);
  const shortest = 1;
  const lowValue = room(shortest);
  if (lowValue < 0) return null;
  if (riseFtPer100 >= 0) {
    const highValue = room(LONGEST_FT);
    if (highValue >= 0) return LONGEST_FT;
    return fallingRoot(room, { low: shortest, high: LONGEST_FT, lowValue, highValue }, 0.1);
  }
  // Downhill a longer lay may have more pressure, and in the end more than the hose bears.
  let reach = shortest;
  for (let next = sectionFt; next <= LONGEST_FT && room(next) >= 0; next += sectionFt) reach = next;
  return reach;
}

function ruleOf(
  { demandGpm, hose, count = 1 }: BoostQuestion,
  unassistedToFt: number | null,
  boostedToFt: number | null,
  units: UnitSystem,
): string {
  const say = sayIn(units);
  const { sectionFt } = hoseCatalogue[hose];
  const sections = (ft: number) => Math.floor(ft / sectionFt + 1e-6) * sectionFt;
  const at = (ft: number) => say.full(sections(ft), 'length');
  const flow = say.full(demandGpm, 'flow');
  const size = formatHoseSize(hose, units);
  const lines = count === 2 ? `two ${size} lines` : size;
  const alone = unassistedToFt === null ? 0 : sections(unassistedToFt);
  const most = boostedToFt === null ? 0 : sections(boostedToFt);
  if (alone >= LONGEST_FT)
    return `${flow} through ${lines}: no second engine needed at this hydrant.`;
  if (Math.max(alone, most) < sectionFt) {
    return `This hydrant does not give ${flow} through ${lines}, with an engine on it or without.`;
  }
  if (alone >= most) {
    return `${flow} through ${lines}: up to ${at(alone)} from this hydrant; an engine on it reaches no farther.`;
  }
  const end = most >= LONGEST_FT ? '' : `; past ${at(most)} even that is short`;
  if (alone < sectionFt) {
    return `For ${flow} through ${lines}, second engine to the hydrant at any distance${end}.`;
  }
  return `Past ${at(alone)} from this hydrant, second engine to the hydrant (${flow} through ${lines})${end}.`;
}
