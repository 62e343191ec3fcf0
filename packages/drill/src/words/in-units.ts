/** A drill's words in the reader's units. */
import {
  formatHoseSize,
  parseHoseSize,
  type Quantity,
  toInside,
  type UnitSystem,
} from '@plugside/fireground';

/** How quantities are written for the one who reads. */
export interface WordUnits {
  system: UnitSystem;
  /** `185 psi`: the value in inside units (gpm, psi, ft, in, gal), number and unit as shown. */
  text(value: number, quantity: Quantity): string;
}

const written: Record<string, Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  gal: 'volume',
  ft: 'length',
};

const AMOUNT = /(-?\d[\d,]*(?:\.\d+)?) (psi|gpm|gal|ft)\b/g;

/** `1¾ in`, `2-1/2 in`, `5 in`: but for the number of a port or a line, and `in` before something else. */
const INCHES =
  /(?<![\w.,/¼½¾-]|\b(?:intake|discharge|outlet|inlet|line|hose|nozzle|engine|lay) )(\d+[- ]\d\/\d|\d*[¼½¾]|\d+(?:\.\d+)?) in(?=[.,;:)”]|$| (?:hose|supply|suction|lay|line|at|and|or|from|to)\b)/gi;

/**
 * Sentences are written in US units; a reader of SI has every quantity in them turned, and sizes of hose told
 * in mm by their trade names.
 */
export function inUnits(text: string, units: WordUnits): string {
  if (units.system === 'us') return text;
  return text
    .replace(INCHES, (inches: string, number: string) => {
      const size = parseHoseSize(number);
      return size === null ? inches : formatHoseSize(size, units.system);
    })
    .replace(AMOUNT, (_, number: string, unit: string) => {
      const quantity = written[unit]!;
      return units.text(toInside(Number(number.replaceAll(',', '')), quantity, unit), quantity);
    });
}

/** `0:07`, `12:40`: a drill's own time [s ≥ 0], the part of a second left out. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
