/** A way in words: source, hose and rigs by their names. */
import type { HoseSize } from '../plan/plan.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import type { Arrangement, HoseUse } from './arrangement.ts';
import { rigName } from './crew.ts';
import { type Leg, listed, rigNames, type Stretch, sourceName } from './leg.ts';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six'];

/** A small whole number as a word. */
export function numberWord(count: number): string {
  return NUMBERS[count] ?? String(count);
}

/** "5 in", "two 3 in lines", "5 in and 3 in". */
export function linesWords(lines: readonly HoseSize[], units: UnitSystem): string {
  const [first, second] = lines.map((size) => formatHoseSize(size, units));
  if (second === undefined) return first ?? '';
  return first === second ? `two ${first} lines` : `${first} and ${second}`;
}

/** "5 in", "5 in, then 4 in". */
function stretchWords({ lines, change }: Stretch, units: UnitSystem): string {
  const words = linesWords(lines, units);
  return change ? `${words}, then ${formatHoseSize(change.hose, units)}` : words;
}

/** "5 in from H-114, boosted by Engine 3". */
export function legTitle(leg: Leg, suction: readonly HoseUse[], units: UnitSystem): string {
  const kinds = [...new Set(leg.stretches.map((stretch) => stretchWords(stretch, units)))];
  // "5 in" goes without saying beside "5 in, then 4 in".
  const hose = kinds.filter((one) => !kinds.some((other) => other.startsWith(`${one}, then`)));
  const from = `${listed(hose)} from ${sourceName(leg)}`;
  const [first, ...others] = leg.pumps;
  if (!first) return from;
  const name = rigName(first);
  if (leg.source.kind === 'water') {
    const relay = others.length > 0 ? ` and ${rigNames(others)} in the line` : '';
    return `${from}, ${name} at draft${relay}`;
  }
  if (others.length > 0) return `${from}, relay of ${rigNames(leg.pumps)}`;
  if (suction.length > 0) {
    const sizes = suction.map(({ hose: size }) => formatHoseSize(size, units));
    const alike = new Set(sizes).size === 1;
    const words = alike
      ? `${sizes.length > 1 ? numberWord(sizes.length) : 'a'} ${sizes[0]} suction line${sizes.length > 1 ? 's' : ''}`
      : `${listed(sizes)} suction lines`;
    return `${from}, boosted by ${name} with ${words}`;
  }
  return leg.valve ? `${from}, boosted by ${name}` : `${from}, ${name} pumping at the hydrant`;
}

/** The title of a whole way. */
export function wayTitle({ work }: Pick<Arrangement, 'work'>, units: UnitSystem): string {
  return work.map(({ leg, suction }) => legTitle(leg, suction, units)).join('; ');
}
