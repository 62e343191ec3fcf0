import type { Quantity } from '../../units/quantities.ts';

/** What a number in a plan may be, in inside units. Wide: they catch slips, not bold plans. */
export interface FieldRange {
  quantity: Quantity;
  least: number;
  greatest: number;
}

const range = (quantity: Quantity, least: number, greatest: number): FieldRange => ({
  quantity,
  least,
  greatest,
});

/** One row per kind of field. */
export const ranges = {
  staticPressure: range('pressure', 1, 500),
  residualPressure: range('pressure', 0, 500),
  testFlow: range('flow', 1, 20_000),
  elevation: range('length', -2_000, 20_000),
  altitude: range('length', -2_000, 20_000),
  waterTemperature: range('temperature', 32, 140),
  rating: range('flow', 20, 10_000),
  dischargePressure: range('pressure', 0, 1_000),
  protectIntake: range('pressure', 0, 200),
  relief: range('pressure', 10, 500),
  tank: range('volume', 1, 100_000),
  length: range('length', 0, 100_000),
  hoseLimit: range('pressure', 20, 2_000),
  tip: range('diameter', 0.1, 6),
  nozzlePressure: range('pressure', 5, 500),
  nozzleFlow: range('flow', 1, 10_000),
  demand: range('flow', 1, 20_000),
  systemPressure: range('pressure', 0, 500),
  lossPressure: range('pressure', 0, 1_000),
  lossFlow: range('flow', 0.1, 20_000),
  curveFlow: range('flow', 0, 20_000),
  limitPressure: range('pressure', 0, 2_000),
  hoseVelocity: range('velocity', 1, 200),
  vacuum: range('vacuum', 1, 29.9),
} as const satisfies Record<string, FieldRange>;

/** Plain numbers: no unit. */
export const plainRanges = {
  coefficient: { least: 0.001, greatest: 5_000 },
  speed: { least: 0.3, greatest: 1.1 },
  nozzleLeast: { least: 0.1, greatest: 1 },
  nozzleGreatest: { least: 1, greatest: 5 },
} as const;

/** Whole numbers. */
export const countRanges = {
  lines: { least: 1, greatest: 6 },
  sideOutlets: { least: 0, greatest: 6 },
  intakes: { least: 1, greatest: 8 },
  discharges: { least: 1, greatest: 20 },
  inlets: { least: 1, greatest: 8 },
  outlets: { least: 1, greatest: 12 },
} as const;

/** How large a plan may be. */
export const sizeLimits = {
  fileBytes: 1_048_576,
  pieces: 200,
  lines: 400,
  idLength: 40,
  nameLength: 120,
  noteLength: 10_000,
  listLength: 50,
} as const;
