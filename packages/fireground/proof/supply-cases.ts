/** Boosted lays written in trade words, with answers found elsewhere, turned into plans and compared. */
import {
  type BoostedAtHydrantOptions,
  boostedAtHydrant,
  type HoseSize,
  type MostWater,
  mostWater,
  type Plan,
  parseHoseSize,
} from '@plugside/fireground';

interface Expected {
  flowGpm: number;
  mainPsi: number;
  attackIntakePsi: number;
  binding: string;
  boosterIntakePsi?: number;
  boosterPdpPsi?: number;
  boosterNetPsi?: number;
  /** By suction path: the assist valve's first, then the side lines in order. */
  suctionGpm?: number[];
}

export interface SupplyCase {
  id: string;
  title: string;
  hydrant: { staticPsi: number; residualPsi: number; testGpm: number };
  assistValve: boolean;
  lay: { sizeIn: string | number; lengthFt: number; riseFt: number; lines?: number };
  booster?: {
    ratedGpm: number;
    suctionFt: number;
    dischargeFt: number;
    sideLines?: { sizeIn: string | number; lengthFt: number }[];
  };
  expected: { unassisted: Expected; boosted: Expected | null };
}

export interface ComparedValue {
  what: string;
  expected: number | string;
  found: number | string;
  within: number;
  agrees: boolean;
}

/** The plan of a case; `boosted: false` leaves the booster out. */
export function planOfCase(given: SupplyCase, boosted: boolean): Plan {
  const { sizeIn, lengthFt, riseFt, lines = 1 } = given.lay;
  const options: BoostedAtHydrantOptions = {
    title: given.title,
    hydrant: given.hydrant,
    assistValve: given.assistValve,
    lay: { hose: sizeOf(sizeIn), lengthFt, riseFt, count: lines },
    booster: null,
  };
  if (boosted && given.booster) {
    const { ratedGpm, suctionFt, dischargeFt, sideLines = [] } = given.booster;
    options.booster = {
      ratedGpm,
      suctionFt,
      dischargeFt,
      sideLines: sideLines.map((line) => ({ hose: sizeOf(line.sizeIn), lengthFt: line.lengthFt })),
    };
  }
  return boostedAtHydrant(options);
}

function sizeOf(given: string | number): HoseSize {
  const size = parseHoseSize(String(given));
  if (!size) throw new Error(`There is no hose of size ${given}.`);
  return size;
}

/** Compares both runs of a case: flows within 0.5 gpm, pressures within 0.05 psi, the same limit. */
export function compareSupplyCase(given: SupplyCase): ComparedValue[] {
  const compared = compareRun(
    'unassisted',
    mostWater(planOfCase(given, false)),
    given.expected.unassisted,
  );
  const { boosted } = given.expected;
  if (boosted) compared.push(...compareRun('boosted', mostWater(planOfCase(given, true)), boosted));
  return compared;
}

function compareRun(run: string, answer: MostWater, expected: Expected): ComparedValue[] {
  const { state } = answer;
  const booster = state.rigs.find((rig) => rig.role === 'booster');
  const compared = [
    near(`${run} flow, gpm`, expected.flowGpm, answer.flowGpm, 0.5),
    near(`${run} main residual, psi`, expected.mainPsi, state.hydrants[0]?.mainPsi, 0.05),
    near(`${run} attack intake, psi`, expected.attackIntakePsi, state.sceneIntakePsi, 0.05),
  ];
  if (booster && expected.boosterPdpPsi !== undefined) {
    compared.push(
      near(`${run} booster intake, psi`, expected.boosterIntakePsi, booster.intakePsi, 0.05),
      near(`${run} booster discharge, psi`, expected.boosterPdpPsi, booster.pdpPsi, 0.05),
      near(`${run} booster net, psi`, expected.boosterNetPsi, booster.netPsi, 0.05),
    );
  }
  expected.suctionGpm?.forEach((gpm, path) => {
    const found = booster?.intakeGpm[`intake${path + 1}`];
    compared.push(near(`${run} suction path ${path + 1}, gpm`, gpm, found, 0.5));
  });
  compared.push(sameLimit(run, answer, expected.binding));
  return compared;
}

function near(
  what: string,
  expected = Number.NaN,
  found = Number.NaN,
  within: number,
): ComparedValue {
  return { what, expected, found, within, agrees: Math.abs(found - expected) <= within };
}

/** "none: intake below limit at no flow" is told by the answer's reason for none. */
function sameLimit(run: string, answer: MostWater, expected: string): ComparedValue {
  const kinds = [...new Set(answer.binding.map((limit) => limit.kind))];
  const none = expected.startsWith('none');
  const agrees = none
    ? answer.flowGpm === 0 && answer.noneReason !== undefined
    : kinds.length === 1 && kinds[0] === expected;
  const found = none ? (answer.noneReason ?? 'water flows') : kinds.join(' and ');
  return { what: `${run} limit`, expected, found, within: 0, agrees };
}
