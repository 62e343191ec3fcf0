/** When a second engine at the hydrant pays: the rule to remember for a hydrant and its hose. */
import { hoseCatalogue } from '../catalogue/hose.ts';
import type { DepartmentValues, HoseSize, Hydrant, Plan } from '../plan/plan.ts';
import { fallingRoot } from '../questions/root.ts';
import { SupplySearch } from '../questions/supply-search.ts';
import { unassistedPlan } from '../questions/unassisted.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { WhenToBoost } from './choice.ts';
import { elevationAtFt, type GroundLine, groundPoints } from './ground.ts';
import type { Leg } from './leg.ts';
import { planOfLegs } from './leg-plan.ts';
import type { RespondingRig } from './situation.ts';
import { linesWords } from './title.ts';

export interface BoostQuestion {
  hydrant: Hydrant;
  hose: HoseSize;
  /** Like lines side by side, 1 or 2. */
  count?: 1 | 2;
  /** In order of arrival: the first attacks, the second boosts, on a valve where either has one. */
  rigs: readonly [attack: RespondingRig, booster: RespondingRig, ...others: RespondingRig[]];
  /** Flow that must reach the scene [gpm, above 0]. */
  demandGpm: number;
  /** Of two lines that are not alike: both, the larger first, in place of `hose` and `count`. */
  lines?: readonly HoseSize[];
  /** Of each line from a side outlet into the booster. */
  suction?: readonly HoseSize[];
  /** Height gained in 100 ft of lay; lost when negative. Level where left out. */
  riseFtPer100?: number;
  /** Heights along the lay as it is, in place of `riseFtPer100`; past its end the ground is taken as level. */
  ground?: GroundLine;
  /** No lay longer than the hose that is carried [ft, above 0]; 20,000 where left out. */
  carriedFt?: number;
  /** Whether the lay hangs on an assist valve, without the engine and with it; on one wherever it is brought, where left out. */
  valve?: { alone: boolean; boosted: boolean };
  /** "H-114"; "this hydrant" where left out. */
  sourceName?: string;
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
  const { demandGpm, lengths, carriedFt, ground, sourceName } = question;
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
    ...(carriedFt !== undefined && { carriedFt }),
    ...(ground && { layFt: ground.lengthFt }),
    ...(sourceName !== undefined && { sourceName }),
    throughValve: hangsOnValve(question, false),
    unassistedToFt,
    boostedToFt,
    rule: ruleOf(question, unassistedToFt, boostedToFt, options.units ?? 'us'),
  };
}

function check(question: BoostQuestion): void {
  const {
    demandGpm,
    lengths,
    rigs,
    count = 1,
    riseFtPer100 = 0,
    carriedFt = LONGEST_FT,
  } = question;
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
  if (!(carriedFt > 0) || !Number.isFinite(carriedFt)) {
    throw new RangeError(`carriedFt is ${carriedFt}; allowed: above 0. Give the hose aboard.`);
  }
  const bad = lengths.find((lengthFt) => !(lengthFt > 0) || !Number.isFinite(lengthFt));
  if (bad !== undefined) {
    throw new RangeError(`lengths has ${bad}; allowed: above 0. Leave it out.`);
  }
}

function linesOf({ lines, hose, count = 1 }: BoostQuestion): readonly HoseSize[] {
  return lines ?? Array.from({ length: count }, () => hose);
}

/** The scene's height at a length [ft], and the ground up to there. */
function groundTo(question: BoostQuestion, lengthFt: number): GroundLine {
  const { hydrant, riseFtPer100 = 0, ground } = question;
  const fromElevationFt = hydrant.elevationFt;
  if (!ground) {
    return {
      lengthFt,
      fromElevationFt,
      toElevationFt: fromElevationFt + (riseFtPer100 * lengthFt) / 100,
    };
  }
  const terrain = groundPoints(ground)
    .slice(1)
    .filter(({ alongFt }) => alongFt < lengthFt);
  return { lengthFt, terrain, fromElevationFt, toElevationFt: elevationAtFt(ground, lengthFt) };
}

/** A second line leaves from the booster: alone, two lines run from two outlets instead. */
function hangsOnValve(question: BoostQuestion, boosted: boolean): boolean {
  const { rigs, steamer = true, valve } = question;
  if (valve) return valve[boosted ? 'boosted' : 'alone'];
  const brought = steamer && rigs.slice(0, 2).some(({ assistValve }) => assistValve);
  return brought && (boosted || linesOf(question).length === 1);
}

/**
 * The lay at a length. Alone it hangs on the assist valve where there is one, so that an engine can
 * come to it later; else on the hydrant itself.
 */
function layOf(question: BoostQuestion, lengthFt: number, boosted: boolean): Plan {
  const { hydrant, rigs, demandGpm, steamer = true, suction = [] } = question;
  const [attack, booster] = rigs;
  const lines = linesOf(question);
  const valve = hangsOnValve(question, boosted);
  const pumped = boosted || valve;
  const { terrain, toElevationFt } = groundTo(question, lengthFt);
  const leg: Leg = {
    source: {
      kind: 'hydrant',
      at: { hydrant, steamer, lengthFt, ...(terrain && { terrain }) },
    },
    pumps: pumped ? [booster] : [],
    stretches: [{ lines, fromFt: 0, toFt: lengthFt }],
    valve,
    suction: pumped ? suction : [],
  };
  const plan = planOfLegs(
    {
      title: 'When to boost',
      invented: false,
      scene: { name: 'Scene', elevationFt: toElevationFt },
      demandGpm,
      department: question.department ?? {},
    },
    attack,
    [
      {
        leg,
        suction: leg.suction.map((hose) => ({
          rig: booster,
          hose,
          lengthFt: hoseCatalogue[hose].sectionFt,
        })),
      },
    ],
    'When to boost',
  );
  return boosted || !valve ? plan : unassistedPlan(plan);
}

/** Longest lay that still meets the demand [ft]; null where the shortest does not. */
function reachFt(question: BoostQuestion, planAt: (lengthFt: number) => Plan): number | null {
  const { demandGpm, riseFtPer100 = 0, ground, carriedFt = LONGEST_FT } = question;
  const sectionFt = Math.max(...linesOf(question).map((hose) => hoseCatalogue[hose].sectionFt));
  const room = (lengthFt: number) => new SupplySearch(planAt(lengthFt)).roomAt(demandGpm);
  const shortest = 1;
  const lowValue = room(shortest);
  if (lowValue < 0) return null;
  if (!ground && riseFtPer100 >= 0) {
    const highValue = room(carriedFt);
    if (highValue >= 0) return carriedFt;
    return fallingRoot(room, { low: shortest, high: carriedFt, lowValue, highValue }, 0.1);
  }
  // Downhill a longer lay may have more pressure, and in the end more than the hose bears.
  let reach = shortest;
  for (let next = Math.min(sectionFt, carriedFt); room(next) >= 0; ) {
    reach = next;
    if (reach >= carriedFt) break;
    next = Math.min(reach + sectionFt, carriedFt);
  }
  return reach;
}

function ruleOf(
  question: BoostQuestion,
  unassistedToFt: number | null,
  boostedToFt: number | null,
  units: UnitSystem,
): string {
  const { demandGpm, carriedFt, sourceName = 'this hydrant' } = question;
  const say = sayIn(units);
  const hoses = linesOf(question);
  const sectionFt = Math.max(...hoses.map((hose) => hoseCatalogue[hose].sectionFt));
  const sections = (ft: number) => Math.floor(ft / sectionFt + 1e-6) * sectionFt;
  const at = (ft: number) => say.full(sections(ft), 'length');
  const flow = say.full(demandGpm, 'flow');
  const lines = linesWords(hoses, units);
  const longestFt = sections(carriedFt ?? LONGEST_FT);
  const asFar = carriedFt === undefined ? '' : ` as far as the hose reaches (${at(longestFt)})`;
  const alone = unassistedToFt === null ? 0 : sections(unassistedToFt);
  const most = boostedToFt === null ? 0 : sections(boostedToFt);
  if (alone >= longestFt && longestFt > 0)
    return `${flow} through ${lines}: no second engine needed at ${sourceName}${asFar}.`;
  if (Math.max(alone, most) < sectionFt) {
    return `${capital(sourceName)} does not give ${flow} through ${lines}, with an engine on it or without.`;
  }
  if (alone >= most) {
    return `${flow} through ${lines}: up to ${at(alone)} from ${sourceName}; an engine on it reaches no farther.`;
  }
  const end = most >= longestFt ? '' : `; past ${at(most)} even that is short`;
  if (alone < sectionFt) {
    return `For ${flow} through ${lines} from ${sourceName}, second engine to the hydrant at any distance${most >= longestFt ? asFar : ''}${end}.`;
  }
  return `Past ${at(alone)} from ${sourceName}, second engine to the hydrant (${flow} through ${lines})${end}.`;
}

function capital(words: string): string {
  return `${words[0]!.toUpperCase()}${words.slice(1)}`;
}
