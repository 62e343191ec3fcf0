/** Discharge pressures by solving: each cell of a chart is a small plan of its own. */
import {
  addAttackLines,
  addMasterStream,
  addWyedLines,
  attackSettings,
  capabilityFor,
  type DepartmentValues,
  type HoseSize,
  hosePressureLimit,
  type NozzleMake,
  newLine,
  newPlan,
  newRig,
  newSprinklerConnection,
  nozzleRatedGpm,
  type Plan,
  type Rig,
  standpipeSupply,
} from '@plugside/fireground';
import { capabilityPsi } from '@plugside/hydraulics';
import type { ChartCell, ChartLine, OverMark } from './data.ts';

export interface ChartPump {
  ratedGpm: number;
  capability?: Rig['capability'] | undefined;
  /** What its supply leaves at its intake [psi]. */
  intakePsi: number;
  /** Least that it is set to [psi]. */
  leastPsi: number;
}

/**
 * Lost in a standpipe system or a master stream device, at any flow [psi]. "Engineer's Test 2014" study
 * cards; "Florida pump-operations exam answers"; of a master stream device "Pump Ops ch 7" study cards.
 */
export const SYSTEM_PSI = 25;

const SCENE = 'A1';

/** The rig alone, on level ground. */
function rigPlan(pump: ChartPump, department: DepartmentValues): Plan {
  return newPlan({
    title: 'Pump chart',
    scene: SCENE,
    department,
    rigs: [
      newRig(SCENE, 'attack', {
        ratedGpm: pump.ratedGpm,
        discharges: 8,
        ...(pump.capability && { capability: pump.capability }),
      }),
    ],
  });
}

/**
 * A line of a chart at one length.
 * @param lengthFt its own, the leader's or each line's [ft]
 * @returns the pump's discharge pressure [psi] for the nozzle's rated pressure and flow [gpm]
 */
export function lineCell(
  line: ChartLine,
  lengthFt: number,
  pump: ChartPump,
  department: DepartmentValues,
): ChartCell & { flowGpm: number } {
  const bare = rigPlan(pump, department);
  switch (line.kind) {
    case 'hand line':
      return cellOf(addAttackLines(bare, SCENE, [{ ...line, lengthFt }]), pump);
    case 'wyed lines': {
      const { leader, hose, nozzle, lines } = line;
      const each = { hose, nozzle, lengthFt: line.lengthFt };
      return cellOf(
        addWyedLines(bare, SCENE, {
          hose: leader,
          lengthFt,
          lines: Array.from({ length: lines }, () => each),
        }),
        pump,
      );
    }
    case 'master stream':
      return cellOf(flat(addMasterStream(bare, SCENE, { ...line, lengthFt }), 'monitor'), pump);
  }
}

/** The plan with the loss of a system as it is taught: the same at any flow. */
function flat(plan: Plan, kind: 'monitor' | 'standpipe'): Plan {
  const [nozzle] = plan.nozzles;
  if (!nozzle) return plan;
  const loss = { lossPsi: SYSTEM_PSI, atGpm: nozzleRatedGpm(nozzle) };
  return {
    ...plan,
    appliances: plan.appliances.map((one) => (one.kind === kind ? { ...one, loss } : one)),
  };
}

/** Lines to a standpipe with one hand line on a floor. */
export function standpipeCell(
  given: {
    lines: number;
    hose: HoseSize;
    lengthFt: number;
    handLine: { hose: HoseSize; lengthFt: number; nozzle: NozzleMake };
  },
  floor: number,
  storeyFt: number,
  pump: ChartPump,
  department: DepartmentValues,
): ChartCell & { flowGpm: number } {
  const bare = rigPlan(pump, department);
  const drawn = standpipeSupply({ connection: given, handLine: given.handLine, floor, storeyFt });
  const plan: Plan = {
    ...bare,
    appliances: drawn.appliances,
    nozzles: drawn.nozzles,
    lines: drawn.lines.filter(({ id }) => id !== 'lay'),
  };
  return cellOf(flat(plan, 'standpipe'), pump);
}

/**
 * Like lines to an opening that takes a flow at a pressure: a sprinkler connection, or the next pump's
 * intake, which stands no more than `mostPsi` once nothing flows.
 */
export function openingCell(
  given: {
    lines: number;
    hose: HoseSize;
    lengthFt: number;
    flowGpm: number;
    basePsi: number;
    mostPsi?: number;
  },
  pump: ChartPump,
  department: DepartmentValues,
): ChartCell & { flowGpm: number } {
  const { lines, hose, lengthFt, flowGpm, basePsi } = given;
  const bare = rigPlan(pump, department);
  const plan: Plan = {
    ...bare,
    appliances: [newSprinklerConnection('X1', { demandGpm: flowGpm, basePsi })],
    lines: [newLine('line1', `${SCENE}.discharge1`, 'X1.inlet1', hose, lengthFt, { count: lines })],
  };
  return cellOf(plan, pump, given.mostPsi);
}

function cellOf(
  plan: Plan,
  pump: ChartPump,
  mostPsi = Number.POSITIVE_INFINITY,
): ChartCell & { flowGpm: number } {
  const { pdpPsi: neededPsi, demandGpm } = attackSettings(plan);
  const pdpPsi = Math.max(neededPsi, pump.leastPsi);
  const over: OverMark[] = pdpPsi > neededPsi + 0.5 ? ['M'] : [];
  const limits = plan.lines
    .filter(({ from }) => from.startsWith(`${SCENE}.`))
    .map((line) => hosePressureLimit(plan, line).limitPsi);
  if (pdpPsi > Math.min(...limits) + 0.5) over.push('H');
  else if (pdpPsi > mostPsi + 0.5) over.push('I');
  const { points } = capabilityFor(pump);
  const most = demandGpm > points.at(-1)![0] ? 0 : capabilityPsi(points, demandGpm);
  if (pdpPsi - pump.intakePsi > most + 0.5) over.push('P');
  else if (demandGpm > pump.ratedGpm + 0.5) over.push('R');
  return { pdpPsi, over, flowGpm: demandGpm };
}
