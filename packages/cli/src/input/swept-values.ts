import {
  type FieldRange,
  fieldRanges,
  type HoseSize,
  hoseSizes,
  type Plan,
  parseHoseSize,
  type Quantity,
  type SweptValue,
} from '@plugside/fireground';
import { InvalidArgumentError } from 'commander';
import { CommandFailure } from '../failure.ts';
import { readQuantity } from './quantity-argument.ts';

interface PlainRange {
  quantity?: undefined;
  least: number;
  greatest: number;
  whole?: boolean;
}

/** What each thing may be varied over. Hose goes by its sizes. */
const sweptRanges: Record<Exclude<SweptValue, 'hose'>, FieldRange | PlainRange> = {
  'lay length': fieldRanges.length,
  rise: { quantity: 'length', least: -2_000, greatest: 2_000 },
  'lay lines': { least: 1, greatest: 6, whole: true },
  demand: fieldRanges.demand,
  pdp: fieldRanges.dischargePressure,
  coefficient: { least: 0.001, greatest: 5_000 },
  static: fieldRanges.staticPressure,
};

/** What can be varied, as written on the command line. */
export const sweptNames: readonly SweptValue[] = [
  'lay length',
  'rise',
  'lay lines',
  'hose',
  'coefficient',
  'static',
  'demand',
  'pdp',
];

/** A table longer than this is no answer for people, and takes long. */
const MOST_VALUES = 500;

/** The quantity that a varied thing is measured in; none for counts, coefficients and hose. */
export function quantityOfSwept(vary: SweptValue): Quantity | undefined {
  return vary === 'hose' ? undefined : sweptRanges[vary].quantity;
}

/** Reads the name of a thing to vary; a hyphen may stand for the space. */
export function readSweptName(text: string): SweptValue {
  const name = text.trim().toLowerCase().replaceAll('-', ' ') as SweptValue;
  if (!sweptNames.includes(name)) {
    throw new InvalidArgumentError(
      `Allowed: ${sweptNames.map((known) => `"${known}"`).join(', ')}.`,
    );
  }
  return name;
}

export interface SweptOptions {
  vary: SweptValue;
  values?: string;
  from?: string;
  to?: string;
  step?: string;
}

/**
 * The values of a sweep, from `--values` or from `--from`, `--to` and `--step`, in inside units.
 * @throws CommandFailure naming the option at fault
 */
export function sweptValues(options: SweptOptions, plan: Plan): (number | HoseSize)[] {
  const { vary, values, from, to, step } = options;
  const stepped = from !== undefined || to !== undefined || step !== undefined;
  if (values !== undefined && stepped) {
    throw new CommandFailure('Give either --values, or --from, --to and --step; not both.');
  }
  if (vary === 'hose') return hoseValues(values, stepped);
  const found = values !== undefined ? listed(vary, values) : steps(vary, { from, to, step });
  if (vary === 'static') checkStatic(found, plan);
  return found;
}

function hoseValues(values: string | undefined, stepped: boolean): HoseSize[] {
  if (stepped) throw new CommandFailure('Hose goes by sizes: give them as --values "4, 5".');
  if (values === undefined) return [...hoseSizes].filter((size) => size !== '3-3').slice(6);
  return split(values, '--values').map((text) => {
    const size = parseHoseSize(text);
    if (!size) {
      throw new CommandFailure(
        `--values: there is no hose of size "${text}". Allowed: ${hoseSizes.join(', ')} (in).`,
      );
    }
    return size;
  });
}

function listed(vary: Exclude<SweptValue, 'hose'>, values: string): number[] {
  return split(values, '--values').map((text) => read(vary, text, '--values'));
}

/** Commas part values, so they cannot group thousands here. */
function split(values: string, option: string): string[] {
  const texts = values
    .split(/[,;]/)
    .map((text) => text.trim())
    .filter((text) => text !== '');
  if (texts.length === 0) throw new CommandFailure(`${option} holds no value.`);
  if (texts.length > MOST_VALUES) throw tooMany(texts.length);
  return texts;
}

function steps(
  vary: Exclude<SweptValue, 'hose'>,
  { from, to, step }: Pick<SweptOptions, 'from' | 'to' | 'step'>,
): number[] {
  if (from === undefined || to === undefined || step === undefined) {
    throw new CommandFailure(
      'A sweep needs its values: --values "300, 600, 900", or --from, --to and --step.',
    );
  }
  const least = read(vary, from, '--from');
  const greatest = read(vary, to, '--to');
  const by = readStep(vary, step);
  if (greatest < least) {
    throw new CommandFailure(`--to is below --from (${to} and ${from}). Exchange them.`);
  }
  const count = Math.floor((greatest - least) / by + 1e-9) + 1;
  if (count > MOST_VALUES) throw tooMany(count);
  return Array.from({ length: count }, (_, at) => least + at * by);
}

function readStep(vary: Exclude<SweptValue, 'hose'>, step: string): number {
  const { quantity, greatest } = sweptRanges[vary];
  const range = { least: 0, greatest, quantity };
  const by = quantity
    ? inOption('--step', () => readQuantity(step, range as FieldRange))
    : Number(step);
  if (!(by > 0) || !Number.isFinite(by)) {
    throw new CommandFailure(`--step is "${step}"; allowed: a number above 0. Make it larger.`);
  }
  return by;
}

function read(vary: Exclude<SweptValue, 'hose'>, text: string, option: string): number {
  const range = sweptRanges[vary];
  if (range.quantity) return inOption(option, () => readQuantity(text, range));
  const value = Number(text);
  const whole = 'whole' in range && range.whole;
  const fits = value >= range.least && value <= range.greatest;
  if (text === '' || !fits || (whole && !Number.isInteger(value))) {
    const kind = whole ? 'a whole number' : 'a number';
    throw new CommandFailure(
      `${option}: "${text}" for ${vary}; allowed: ${kind} from ${range.least} to ${range.greatest}.`,
    );
  }
  return value;
}

function inOption<T>(option: string, reading: () => T): T {
  try {
    return reading();
  } catch (error) {
    if (!(error instanceof InvalidArgumentError)) throw error;
    throw new CommandFailure(`${option}: ${error.message}`);
  }
}

/** The fall in pressure of the flow test stays, so a low static would leave less than nothing. */
function checkStatic(values: readonly number[], plan: Plan): void {
  for (const hydrant of plan.hydrants) {
    const fallPsi = hydrant.staticPsi - hydrant.residualPsi;
    const low = values.find((value) => value < fallPsi);
    if (low === undefined) continue;
    throw new CommandFailure(
      `A static pressure of ${low} psi is below the ${fallPsi} psi that the flow test of ${hydrant.id} draws down. Allowed: ${fallPsi} psi or more.`,
    );
  }
}

function tooMany(count: number): CommandFailure {
  return new CommandFailure(
    `That is ${count.toLocaleString('en-US')} values; allowed: ${MOST_VALUES} at most. Take a larger --step.`,
  );
}
