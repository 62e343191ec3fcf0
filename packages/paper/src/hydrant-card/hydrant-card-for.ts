/** From a hydrant's records to its card: what reaches an engine over each length, solved. */
import {
  assistValveLosses,
  coefficientFor,
  type DepartmentValues,
  findingText,
  flowTestResult,
  type HoseSize,
  hoseCatalogue,
  type LimitCheck,
  limitsFor,
  NetworkError,
  type Plan,
  parseHoseSize,
  pumpCurve,
  type SweepRow,
  sweep,
  toInside,
  type UnitSystem,
  unassistedPlan,
  usualRating,
} from '@plugside/fireground';
import { velocityFtS } from '@plugside/hydraulics';
import type { Fields } from '@plugside/records/model';
import {
  type PickedRig,
  type PlanningNotice,
  planForBuilding,
  testsAhead,
  withHoseInService,
} from '@plugside/records/planning';
import { supplySizes } from '../pump-chart/usual-lines.ts';
import { figuresIn } from '../sheet/figures.ts';
import type { Source } from '../sheet/notes.ts';
import { hoseWords, originWords } from '../words.ts';
import type { HydrantCard, LayFlow, LayRow, LayTable, Neighbour } from './data.ts';

export interface HydrantCardRequest {
  hydrant: Fields<'hydrants'>;
  /** The flow test that plans use. */
  test?: Fields<'flow-tests'> | undefined;
  /** That it stands on, where that is known. */
  street?: string;
  /** Lays its hose from the hydrant and pumps at the fire. */
  attack: PickedRig;
  /** Pumps at the hydrant. */
  booster: PickedRig;
  /** Rigs whose hose may be laid, in service; left out: the two engines. */
  carriers?: readonly Pick<Fields<'rigs'>, 'name' | 'hose'>[];
  department?: DepartmentValues;
  /** What else of the records the card leaves aside. */
  notices?: readonly PlanningNotice[];
  /** The nearest first; six are printed. */
  neighbours?: readonly Neighbour[];
  /** Day on which the card is made, ISO: tells whether the test is due. */
  today: string;
  /** Sizes of hose to lay; left out: the largest that the attack engine carries. Two at most. */
  hose?: readonly HoseSize[];
  invented?: boolean;
  /** Round lengths are rounder in the units that are shown. */
  units?: UnitSystem;
}

const LENGTHS: Record<UnitSystem, number[]> = {
  us: [200, 400, 600, 800, 1000, 1200, 1500],
  si: [60, 120, 180, 240, 300, 360, 450].map((length) => toInside(length, 'length', 'm')),
};
const MOST_NEIGHBOURS = 6;
const MOST_TABLES = 2;
const LONGEST_LOAD_FT = 20_000;
const USUAL_HOSE: HoseSize = '5';

/**
 * A hydrant's card. Never throws for what records may hold: what cannot be told is left out and
 * said.
 * @throws RangeError for a size of hose that is not laid for supply
 */
export function hydrantCardFor(given: HydrantCardRequest): HydrantCard {
  const { today } = given;
  const leftAside: PlanningNotice[] = [];
  const attack = layable(given.attack, today, leftAside);
  const request = { ...given, attack, booster: layable(given.booster, today, []) };
  for (const { rig, pumpTests = [] } of [attack, given.booster]) {
    leftAside.push(...testsAhead(`The pump test of ${rig.name}`, pumpTests, today));
  }
  const { hydrant, test, booster, department = {}, units = 'us' } = request;
  const result = test && flowTestResult(test, { today: request.today });
  const known = result?.curve && result.flowGpm !== null && result.retestOn !== null;
  const sizes = supplySizes(attack.rig).map(({ hose }) => hose);
  const hose = (request.hose ?? [sizes[0] ?? USUAL_HOSE]).slice(0, MOST_TABLES);
  for (const size of hose) {
    if (hoseCatalogue[size].diameterIn < 2.5) {
      throw new RangeError(`hose has ${size}; allowed: 2-1/2 and larger. Name supply hose.`);
    }
  }
  const lays = laysOf(request, hose, LENGTHS[units]);
  const valve = valveOf(request);
  return {
    name: hydrant.name,
    invented: request.invented ?? false,
    ...(hydrant.status === 'out of service' && {
      outOfService: { ...(hydrant.statusReason && { reason: hydrant.statusReason }) },
    }),
    facts: {
      ...(request.street && { street: request.street }),
      sideOutlets: hydrant.sideOutlets,
      sideOutletIn: hydrant.sideOutletIn,
      longitude: hydrant.longitude,
      latitude: hydrant.latitude,
      ...(hydrant.mainIn !== undefined && { mainIn: hydrant.mainIn }),
      ...(hydrant.steamerIn !== undefined && { steamerIn: hydrant.steamerIn }),
      ...(hydrant.type && { type: hydrant.type }),
      ...(hydrant.owner && { owner: hydrant.owner }),
      ...(hydrant.elevationFt !== undefined && { elevationFt: hydrant.elevationFt }),
    },
    test:
      test && result && known
        ? {
            testedOn: test.testedOn,
            ...(test.by && { by: test.by }),
            staticPsi: test.staticPsi,
            residualPsi: test.residualPsi,
            testGpm: result.flowGpm!,
            q20Gpm: result.q20Gpm ?? 0,
            class: result.class,
            retestOn: result.retestOn!,
            overdue: result.retestOn! < request.today,
          }
        : null,
    findings: [...(result?.notices ?? [])],
    attack: { name: attack.rig.name, ratedGpm: attack.rig.ratedGpm ?? usualRating },
    booster: {
      name: booster.rig.name,
      ratedGpm: booster.rig.ratedGpm ?? usualRating,
      assistValve: valve !== undefined,
    },
    ...(valve && { valve }),
    cautions: [
      ...cautionsOf(hydrant, result?.q20Gpm ?? 0, units),
      ...[...(given.notices ?? []), ...leftAside].map((one) => findingText(one, units)),
    ],
    ...lays,
    intakeMost: intakeMostOf(request),
    mainResidualPsi: limitsFor({ department }).mainResidualPsi,
    neighbours: (request.neighbours ?? []).slice(0, MOST_NEIGHBOURS),
    sources: sourcesOf(request, hose),
  };
}

/** A rig with the supply hose that is in service; what is not goes to `notices`. */
function layable(picked: PickedRig, today: string, notices: PlanningNotice[]): PickedRig {
  const { rig, lengths = [] } = picked;
  const supply = lengths.filter(({ size }) => {
    const known = parseHoseSize(size);
    return known !== null && hoseCatalogue[known].diameterIn >= 3;
  });
  // They are counted here: a card lays lengths that no rig carries.
  return { ...picked, rig: withHoseInService(rig, supply, today, notices), lengths: [] };
}

/** The valve that the lay hangs on, and what water loses in its clapper; undefined where none is brought. */
function valveOf({ hydrant, attack, booster }: HydrantCardRequest): HydrantCard['valve'] {
  const brings = [attack, booster].find(({ rig }) => rig.assistValve);
  if (!brings || hydrant.steamerIn === undefined) return undefined;
  const own = brings.valve;
  return {
    clapperLoss: own?.losses.clapperLoss ?? assistValveLosses.clapper.loss,
    from: own
      ? `“${own.name}” on record${own.standsIn ? ', the only one measured' : ''}`
      : 'defaults; ask its maker or measure your own',
  };
}

/** Water runs through a main slower than this: design values end at 10 to 15, from memory; 20 is ours [ft/s]. */
const LIKELY_FT_PER_S = 20;

/** A flow that its main can hardly bring. */
function cautionsOf({ mainIn }: Fields<'hydrants'>, q20Gpm: number, units: UnitSystem): string[] {
  if (mainIn === undefined || !(q20Gpm > 0)) return [];
  const speed = velocityFtS(q20Gpm, mainIn);
  if (speed <= LIKELY_FT_PER_S) return [];
  const { full } = figuresIn(units);
  const fed =
    speed / 2 <= LIKELY_FT_PER_S
      ? 'Not likely unless the main is fed from both ways'
      : 'Not likely, even fed from both ways';
  return [
    `${full(q20Gpm, 'flow')} would run at ${full(speed, 'velocity')} through the ${full(mainIn, 'diameter')} main. ${fed}: check the main’s size, or test with more water flowing.`,
  ];
}

function intakeMostOf({ attack, department = {} }: HydrantCardRequest): HydrantCard['intakeMost'] {
  const { intakeReliefPsi } = attack.rig;
  return intakeReliefPsi === undefined
    ? { psi: limitsFor({ department }).greatestIntakePsi, relief: false }
    : { psi: intakeReliefPsi, relief: true };
}

function laysOf(
  request: HydrantCardRequest,
  sizes: readonly HoseSize[],
  lengthsFt: number[],
): { lays: LayTable[]; noLays?: string } {
  const lays: LayTable[] = [];
  for (const hose of sizes) {
    const drawn = planOver(request, hose, lengthsFt[0]!);
    if (!drawn.plan) return { lays: [], noLays: drawn.why };
    try {
      lays.push(layTable(request, hose, lengthsFt, drawn.plan));
    } catch (error) {
      if (!(error instanceof NetworkError)) throw error;
      return { lays: [], noLays: `It cannot be solved. ${error.message}` };
    }
  }
  return { lays };
}

/** A lay on level ground from the hydrant to the attack engine, boosted or not. */
function planOver(
  request: HydrantCardRequest,
  hose: HoseSize,
  lengthFt: number,
  booster: PickedRig | null = request.booster,
) {
  const { hydrant, test, attack, department = {} } = request;
  const { longitude, latitude } = hydrant;
  const level = { ...hydrant, elevationFt: 0 };
  const load = [{ size: hose, lengthFt: LONGEST_LOAD_FT }];
  const { plan, notices } = planForBuilding({
    building: { name: attack.rig.name, longitude, latitude, elevationFt: 0 },
    hydrant: level,
    test,
    attack: { ...attack, rig: { ...attack.rig, hose: load } },
    // The attack engine lays: hose of the booster's own must not be picked for it.
    ...(booster && { booster: { ...booster, rig: { ...booster.rig, hose: [] } } }),
    route: { lengthFt },
    department,
    attackLines: [],
  });
  const why = notices.find(({ level: one }) => one === 'error')?.text ?? 'No plan can be drawn.';
  return { plan, why };
}

function layTable(
  request: HydrantCardRequest,
  hose: HoseSize,
  lengthsFt: number[],
  plan: Plan,
): LayTable {
  const booster = plan.rigs.find(({ role }) => role === 'booster')!;
  const over = (swept: Plan) => sweep(swept, { vary: 'lay length', values: lengthsFt });
  // Through an assist valve the lay stays as it is; without one no engine stands in the line.
  const valved = plan.appliances.some(({ kind }) => kind === 'assist-valve');
  const bare = valved ? unassistedPlan(plan) : planOver(request, hose, lengthsFt[0]!, null).plan!;
  const alone = over(bare);
  const boosted = over(plan);
  const { attack } = request;
  const carriers = carriersOf(hose, request.carriers ?? [attack.rig, request.booster.rig]);
  return {
    hose,
    carriedFt: aboard(hose, attack.rig),
    carriers,
    ...coefficientFor(plan, { hose }),
    rows: lengthsFt.map((lengthFt, at) => ({
      lengthFt,
      alone: flowOf(alone[at]!),
      boosted: { ...flowOf(boosted[at]!), pdpPsi: boosted[at]!.pdpPsi[booster.id] ?? 0 },
      rigs: rigsFor(lengthFt, carriers),
    })),
  };
}

const aboard = (hose: HoseSize, rig: Pick<Fields<'rigs'>, 'hose'>): number =>
  supplySizes(rig).find((load) => load.hose === hose)?.lengthFt ?? 0;

/** Rigs that have hose of a size to lay, the most first. */
function carriersOf(
  hose: HoseSize,
  rigs: readonly Pick<Fields<'rigs'>, 'name' | 'hose'>[],
): LayTable['carriers'] {
  return rigs
    .map((rig) => ({ name: rig.name, lengthFt: aboard(hose, rig) }))
    .filter(({ lengthFt }) => lengthFt > 0)
    .sort((a, b) => b.lengthFt - a.lengthFt);
}

/** The fewest rigs whose hose reaches; null where all of it does not. */
function rigsFor(lengthFt: number, carriers: LayTable['carriers']): LayRow['rigs'] {
  let reachFt = 0;
  for (const [at, carrier] of carriers.entries()) {
    reachFt += carrier.lengthFt;
    if (reachFt >= lengthFt) return at + 1;
  }
  return null;
}

function flowOf({ flowGpm, binding }: SweepRow): LayFlow {
  const stoppedBy = [...new Set(binding.map(({ kind }: LimitCheck) => kind))];
  return { flowGpm: Math.max(0, flowGpm), stoppedBy };
}

function sourcesOf(request: HydrantCardRequest, sizes: readonly HoseSize[]): Source[] {
  const { test, attack, booster, department = {}, hydrant, today, units = 'us' } = request;
  const list: Source[] = [];
  if (test) {
    list.push({
      what: `Flow test of ${test.testedOn}`,
      from: test.by ? `by ${test.by}` : 'who tested is not on record',
    });
  }
  for (const hose of sizes) {
    const { coefficient, origin } = coefficientFor({ department }, { hose });
    list.push({
      what: hoseWords(hose, coefficient, units),
      from: originWords(origin, units),
    });
  }
  for (const picked of [attack, booster]) {
    const tested = pumpCurve(picked.pumpTests ?? [], undefined, { today }).test?.testedOn;
    list.push({
      what: `Pump of ${picked.rig.name}`,
      from: tested ? `its own pump test, ${tested}` : 'its rating: no pump test on record',
    });
  }
  const own = hydrant.steamerLoss ?? hydrant.sideLoss;
  list.push({
    what: 'Losses in the hydrant',
    from: own ? 'its own on record' : 'defaults; measure your own',
  });
  const valve = valveOf(request);
  if (valve) list.push({ what: 'Losses in the assist valve', from: valve.from });
  const { mainResidualPsi } = limitsFor({ department }).origins;
  list.push({ what: 'Least residual in the main', from: originWords(mainResidualPsi, units) });
  return list;
}
