/** What the documents call things. */
import {
  formatFraction,
  formatHoseSize,
  formatNumber,
  type HoseSize,
  type LimitCheck,
  type NozzleMake,
  nozzleRatedGpm,
  type Origin,
  type Plan,
  type Quantity,
  type UnitSystem,
} from '@plugside/fireground';
import { figuresIn } from './sheet/figures.ts';

/** "Fog, 100 psi"; "15/16 in tip, 50 psi". */
export function nozzleWords(make: NozzleMake, units: UnitSystem): string {
  const { full } = figuresIn(units);
  const at = full(make.ratedPsi, 'pressure');
  switch (make.kind) {
    case 'smooth-bore':
      return `${units === 'us' ? `${formatFraction(make.tipIn)} in` : full(make.tipIn, 'diameter')} tip, ${at}`;
    case 'fog':
      return `Fog, ${at}`;
    case 'selectable':
      return `Selectable fog, ${at}`;
    case 'automatic':
      return `Automatic fog, ${at}`;
  }
}

/** Flow that a nozzle of a make is rated for [gpm]; an automatic one's greatest. */
export function makeGpm(make: NozzleMake): number {
  return nozzleRatedGpm({ id: 'N', elevationFt: 0, open: true, use: 'hand line', ...make });
}

/** "Own hose test, 5 readings, 2025-05-20" */
export function originWords({ text, date }: Origin, units: UnitSystem): string {
  const told = inUnits(text, units);
  return date ? `${told}, ${date}` : told;
}

const QUANTITY_OF: Readonly<Record<string, Quantity>> = {
  psi: 'pressure',
  gpm: 'flow',
  ft: 'length',
  inHg: 'vacuum',
  gal: 'volume',
  '°F': 'temperature',
};

/** "20 psi", "5 to 23 psi", "4, 5 and 6 ft": numbers that share the unit behind the last. */
const AMOUNTS = /(\d[\d,.]*(?:(?:, | to | and | or )\d[\d,.]*)*) (psi|gpm|ft|inHg|gal|°F)\b/g;

/** What a source states in US units, in the reader's; titles and names have no amounts. */
function inUnits(text: string, units: UnitSystem): string {
  if (units === 'us') return text;
  const { bare, unit } = figuresIn(units);
  const number = (digits: string, quantity: Quantity) =>
    bare(Number(digits.replaceAll(',', '')), quantity);
  // A pump's rating points share one unit: "100 % at 150 psi net, 70 % at 200".
  const points = text.replace(
    /(% at )(\d+)(?=[,;])/g,
    (_, before: string, digits: string) => `${before}${number(digits, 'pressure')}`,
  );
  return points.replace(AMOUNTS, (_, amounts: string, symbol: string) => {
    const quantity = QUANTITY_OF[symbol]!;
    const told = amounts.replace(/\d[\d,]*(?:\.\d+)?/g, (one) => number(one, quantity));
    return `${told} ${unit(quantity)}`;
  });
}

/** The text with a capital at its beginning. */
export function capital(text: string): string {
  return `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;
}

/** A US coefficient in kPa, hundreds of L/min and hundreds of m: exact, from the units' definitions. */
const METRIC_COEFFICIENT = 1.5786;

/** "5 in hose, coefficient 0.069 (psi per 100 ft at 100 gpm)". */
export function hoseWords(hose: HoseSize, coefficient: number, units: UnitSystem): string {
  const size = formatHoseSize(hose, units);
  const shown = units === 'us' ? coefficient : coefficient * METRIC_COEFFICIENT;
  const digits = shown < 1 ? 3 : shown < 10 ? 2 : 1;
  // What is on record is told as it is there.
  const number = units === 'us' ? `${coefficient}` : formatNumber(shown, digits);
  const per = units === 'us' ? 'psi per 100 ft at 100 gpm' : 'kPa per 100 m at 100 L/min';
  return `${size} hose, coefficient ${number} (${per})`;
}

/** A limit's name with the hose in the reader's size. */
export function limitName(plan: Plan | null, limit: LimitCheck, units: UnitSystem): string {
  const line = plan?.lines.find(({ id }) => id === limit.piece);
  if (!line || units === 'us') return limit.label;
  return limit.label.replace(formatHoseSize(line.hose), formatHoseSize(line.hose, units));
}
