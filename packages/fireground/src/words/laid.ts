/** Hose laid and the street under it, in words. */
import type { HoseSections } from '../catalogue/hose-sections.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from './say.ts';

/** "5 sections of 100 ft" */
export function sectionsText({ count, sectionFt }: HoseSections, units: UnitSystem): string {
  // A section of 100 ft is 30.5 m: in whole metres ten of them would not be what is laid.
  const digits = units === 'si' ? 1 : 0;
  const { number, unit } = formatQuantity(sectionFt, 'length', units, { digits });
  return `${count} section${count === 1 ? '' : 's'} of ${number} ${unit}`;
}

/** "500 ft laid over 427 ft of street (5 sections of 100 ft)" */
export function laidText(
  laid: { laidFt: number; streetFt: number; sections?: HoseSections | undefined },
  units: UnitSystem,
): string {
  const say = sayIn(units);
  const over = `${say.full(laid.laidFt, 'length')} laid over ${say.full(laid.streetFt, 'length')} of street`;
  return laid.sections ? `${over} (${sectionsText(laid.sections, units)})` : over;
}
