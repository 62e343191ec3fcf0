/** From a rig's records to its chart, every pressure solved. */
import {
  capabilityFor,
  coefficientFor,
  type DepartmentValues,
  findingText,
  type HoseSize,
  hoseCatalogue,
  hosePressureLimit,
  limitsFor,
  type PlanLimits,
  pumpCurve,
  toInside,
  type UnitSystem,
  usualRating,
} from '@plugside/fireground';
import { PSI_PER_FT, SPRINKLER_CONNECTION_PSI, standpipeConnectionPsi } from '@plugside/hydraulics';
import type { Fields } from '@plugside/records/model';
import {
  type LengthOfHose,
  type PlanningNotice,
  testsAhead,
  withHoseInService,
} from '@plugside/records/planning';
import { figuresIn } from '../sheet/figures.ts';
import type { Source } from '../sheet/notes.ts';
import { hoseWords, originWords } from '../words.ts';
import type { ChartLine, ConnectionRow, PumpChart, SupplyBlock } from './data.ts';
import { type ChartPump, lineCell, openingCell, SYSTEM_PSI, standpipeCell } from './solve.ts';
import { supplySizes, usualLines } from './usual-lines.ts';

export interface PumpChartRequest {
  rig: Fields<'rigs'> & { id?: string };
  /** Lengths of hose on record: no more of a size than is in service counts as carried. */
  lengths?: readonly LengthOfHose[];
  pumpTests?: readonly Fields<'pump-tests'>[];
  /** Rigs that it may supply: the least of their intake reliefs counts; its own where left out. */
  receivers?: readonly Pick<Fields<'rigs'>, 'name' | 'intakeReliefPsi'>[];
  /** The department's; those of the catalogue where left out or none suits. */
  nozzles?: readonly Fields<'nozzles'>[];
  /** What else of the records the chart leaves aside. */
  notices?: readonly PlanningNotice[];
  /** Adopted coefficients and limits. */
  department?: DepartmentValues;
  /** Lines to chart; left out: what the rig carries hose for. */
  lines?: readonly ChartLine[];
  /** Lengths of attack lines [ft], 2 to 8 of them, each 25 to 2,000. */
  lengthsFt?: readonly number[];
  /** Lengths of supply lines [ft], 2 to 8 of them, each 50 to 10,000. */
  supplyLengthsFt?: readonly number[];
  /** Height of a storey [ft]; 10 where left out. */
  storeyFt?: number;
  invented?: boolean;
  /** ISO date; the machine's where left out. */
  today?: string;
  /** Round lengths are rounder in the units that are shown. */
  units?: UnitSystem;
}

/** A floor is taken as 5 psi: practice in "Math Formulas" study cards and examination answers. */
const PER_FLOOR_PSI = 5;
const FLOORS = [2, 3, 4, 6, 8, 10, 12];
const LARGE_HOSE_GPM: Record<UnitSystem, number[]> = {
  us: [500, 750, 1000, 1250, 1500],
  si: litres([2000, 3000, 4000, 5000, 6000]),
};
const SMALL_HOSE_GPM: Record<UnitSystem, number[]> = {
  us: [250, 400, 500, 600, 750],
  si: litres([1000, 1500, 2000, 2500, 3000]),
};
/** Pumps under this are charted at the flows of small hose. */
const SMALL_PUMP_GPM = 1000;
const CONNECTION = { lines: 2, lengthFt: 100 };
const SPRINKLER = { flowGpm: 600, basePsi: 100 };

const usualLengthsFt: Record<UnitSystem, number[]> = {
  us: [100, 150, 200, 250, 300, 350, 400],
  si: metres([30, 45, 60, 75, 90, 105, 120]),
};
const usualSupplyFt: Record<UnitSystem, number[]> = {
  us: [200, 400, 600, 800, 1000, 1500],
  si: metres([60, 120, 180, 240, 300, 450]),
};

function litres(flows: number[]): number[] {
  return flows.map((flow) => toInside(flow, 'flow', 'L/min'));
}

function metres(lengths: number[]): number[] {
  return lengths.map((length) => toInside(length, 'length', 'm'));
}

/**
 * A rig's pump chart: discharge pressure by line and length, by floor, for the connections of
 * buildings and for supplying another pump.
 * @throws RangeError for lengths outside of what is allowed; NetworkError
 */
export function pumpChartFor(request: PumpChartRequest): PumpChart {
  const { pumpTests = [], nozzles = [], department = {}, units = 'us', storeyFt = 10 } = request;
  const notices: PlanningNotice[] = [];
  const today = request.today ?? new Date().toISOString().slice(0, 10);
  const rig = withHoseInService(request.rig, request.lengths ?? [], today, notices);
  const lengthsFt = checked('lengthsFt', request.lengthsFt ?? usualLengthsFt[units], 25, 2000);
  const supplyFt = checked(
    'supplyLengthsFt',
    request.supplyLengthsFt ?? usualSupplyFt[units],
    50,
    10_000,
  );
  const limits = limitsFor({ department });
  const ratedGpm = rig.ratedGpm ?? usualRating;
  const curve = pumpTests.length > 0 ? pumpCurve(pumpTests, ratedGpm, { today }) : null;
  const capability = curve?.points ?? null;
  notices.push(
    ...testsAhead(`The pump test of ${rig.name}`, pumpTests, today),
    ...(request.notices ?? []),
  );
  const pump: ChartPump = {
    ratedGpm,
    intakePsi: limits.hoseFedIntakePsi,
    leastPsi: limits.leastDischargePsi,
    ...(capability && { capability }),
  };
  const usual = usualLines(rig, nozzles);
  const lines = request.lines ?? usual.lines;
  const attack = lines.map((line) => {
    const cells = lengthsFt.map((lengthFt) => lineCell(line, lengthFt, pump, department));
    return { line, flowGpm: cells[0]!.flowGpm, cells };
  });
  const supplyHose = supplySizes(rig);
  const intakeMost = intakeMostOf(request.receivers ?? [rig], limits);
  const supply = supplyHose.slice(0, 2).map(({ hose, lengthFt: carriedFt }) => ({
    carriedFt,
    ...supplyBlock(hose, supplyFt, pump, {
      department,
      basePsi: limits.hoseFedIntakePsi,
      mostPsi: intakeMost.psi,
      units,
    }),
  }));
  const connections = connectionRows(rig, lines, storeyFt, pump, department);
  return {
    rigName: rig.name,
    ratedGpm,
    invented: request.invented ?? false,
    lengthsFt,
    attack,
    perFloorPsi: PER_FLOOR_PSI,
    storeyFt,
    storeyPsi: storeyFt * PSI_PER_FT,
    floors: FLOORS,
    connections,
    supply,
    nextIntakePsi: limits.hoseFedIntakePsi,
    intakeMost,
    systemPsi: SYSTEM_PSI,
    limits: {
      supplyHosePsi: limits.supplyHosePsi,
      attackHosePsi: limits.attackHosePsi,
      leastDischargePsi: limits.leastDischargePsi,
    },
    cautions: notices.map((one) => findingText(one, units)),
    pump: { ...pumpOrigin(pump, curve?.test?.testedOn), intakePsi: pump.intakePsi },
    sources: [
      ...hoseSources(
        [...new Set([...lines.flatMap(sizesOf), ...supply.map(({ hose }) => hose)])],
        department,
        units,
      ),
      ...ownSources({ ...request, rig }, usual.assumedNozzles && !request.lines, units),
    ],
  };
}

function checked(field: string, given: readonly number[], least: number, most: number): number[] {
  const wrong = given.find((length) => !(length >= least && length <= most));
  if (wrong !== undefined || given.length < 2 || given.length > 8) {
    const what = wrong === undefined ? `${given.length} lengths` : `${wrong}`;
    throw new RangeError(
      `${field} has ${what}; allowed: 2 to 8 lengths, each ${least} to ${most} ft. Give fewer or other lengths.`,
    );
  }
  return [...given].sort((a, b) => a - b);
}

function pumpOrigin(pump: ChartPump, testedOn: string | undefined) {
  const { origin } = capabilityFor(pump);
  return { origin: pump.capability && testedOn ? { ...origin, date: testedOn } : origin };
}

/** The least relief of the rigs that may be supplied; of none on record what a caution starts at. */
function intakeMostOf(
  receivers: NonNullable<PumpChartRequest['receivers']>,
  limits: PlanLimits,
): PumpChart['intakeMost'] {
  const [least] = receivers
    .filter(({ intakeReliefPsi }) => intakeReliefPsi !== undefined)
    .sort((one, two) => one.intakeReliefPsi! - two.intakeReliefPsi!);
  if (!least) {
    const { greatestIntakePsi, origins } = limits;
    return { psi: greatestIntakePsi, origin: origins.greatestIntakePsi, relief: false };
  }
  const text = `Intake relief of ${least.name} on record, the least of the rigs that may be supplied`;
  return { psi: least.intakeReliefPsi!, origin: { kind: 'department', text }, relief: true };
}

function supplyBlock(
  hose: HoseSize,
  lengthsFt: number[],
  pump: ChartPump,
  given: { department: DepartmentValues; basePsi: number; mostPsi?: number; units: UnitSystem },
): Omit<SupplyBlock, 'carriedFt'> {
  const lines = 1;
  const { department, units, basePsi, mostPsi } = given;
  const large = hoseCatalogue[hose].limitClass === 'supply' && pump.ratedGpm >= SMALL_PUMP_GPM;
  return {
    hose,
    lines,
    coefficient: coefficientFor({ department }, { hose }).coefficient,
    limitPsi: hosePressureLimit({ department }, { hose }).limitPsi,
    lengthsFt,
    rows: (large ? LARGE_HOSE_GPM : SMALL_HOSE_GPM)[units].map((flowGpm) => ({
      flowGpm,
      cells: lengthsFt.map((lengthFt) =>
        openingCell(
          { lines, hose, lengthFt, flowGpm, basePsi, ...(mostPsi !== undefined && { mostPsi }) },
          pump,
          department,
        ),
      ),
    })),
  };
}

function connectionRows(
  rig: Fields<'rigs'>,
  lines: readonly ChartLine[],
  storeyFt: number,
  pump: ChartPump,
  department: DepartmentValues,
): ConnectionRow[] {
  const carried = new Set(lines.flatMap(sizesOf).concat(supplySizes(rig).map(({ hose }) => hose)));
  const hose = (['3', '3-3', '2-1/2'] as const).find((size) => carried.has(size));
  if (!hose) return [];
  const made = { ...CONNECTION, hose };
  const handLine = {
    hose: '2-1/2' as const,
    lengthFt: 150,
    nozzle: { kind: 'smooth-bore' as const, tipIn: 1.125, ratedPsi: 50 },
  };
  const standpipe = FLOORS.map((floor) =>
    standpipeCell({ ...made, handLine }, floor, storeyFt, pump, department),
  );
  const sprinkler = openingCell({ ...made, ...SPRINKLER }, pump, department);
  return [
    {
      kind: 'standpipe',
      ...made,
      handLine,
      flowGpm: standpipe[0]!.flowGpm,
      cells: standpipe,
      rulePsi: FLOORS.map((floor) => standpipeConnectionPsi(floor)),
    },
    {
      kind: 'sprinkler',
      ...made,
      ...SPRINKLER,
      cells: [sprinkler],
      rulePsi: [SPRINKLER_CONNECTION_PSI],
    },
  ];
}

function sizesOf(line: ChartLine): HoseSize[] {
  return line.kind === 'wyed lines' ? [line.leader, line.hose] : [line.hose];
}

function hoseSources(sizes: HoseSize[], department: DepartmentValues, units: UnitSystem): Source[] {
  return sizes.map((hose) => {
    const { coefficient, origin } = coefficientFor({ department }, { hose });
    return {
      what: hoseWords(hose, coefficient, units),
      from: originWords(origin, units),
    };
  });
}

function ownSources(
  { rig, pumpTests = [], department = {} }: PumpChartRequest,
  assumedNozzles: boolean,
  units: UnitSystem,
): Source[] {
  const { full } = figuresIn(units);
  const limits = limitsFor({ department });
  const list: Source[] = [
    {
      what: `${full(SYSTEM_PSI, 'pressure')} in a standpipe system and a monitor, at any flow`,
      from: '“Engineer’s Test 2014” and “Pump Ops ch 7” study cards, “Florida pump-operations exam answers”: the building’s own plan and a measured monitor go before it.',
    },
    {
      what: 'Rules of thumb for connections',
      from: '“Sprinkler/standpipe connection pressures”, one department’s rule; “Engineer’s Test 2014” study cards',
    },
    {
      what: `Least discharge ${full(limits.leastDischargePsi, 'pressure')}`,
      from: originWords(limits.origins.leastDischargePsi, units),
    },
    {
      what: `Supply hose limit ${full(limits.supplyHosePsi, 'pressure')}`,
      from: originWords(limits.origins.supplyHosePsi, units),
    },
    {
      what: `Attack hose limit ${full(limits.attackHosePsi, 'pressure')}`,
      from: originWords(limits.origins.attackHosePsi, units),
    },
    {
      what: `Nozzle pressures and flows`,
      from: assumedNozzles
        ? 'Usual nozzles: none on record suits every size carried. Use the rating on the nozzle.'
        : 'The department’s nozzles on record.',
    },
  ];
  if (pumpTests.length === 0) {
    list.push({ what: 'No pump test on record', from: 'Pump limits are those of its rating.' });
  }
  if (rig.ratedGpm === undefined) {
    list.push({
      what: `No pump rating on record: ${full(usualRating, 'flow')} assumed`,
      from: 'Read it on the pump’s plate and enter it.',
    });
  }
  return list;
}
