/** A drill's words in the reader's units. */
import { type Quantity, toInside, type UnitSystem } from '@plugside/fireground';

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

/** Sentences are written in US units; a reader of SI has every quantity in them turned. */
export function inUnits(text: string, units: WordUnits): string {
  if (units.system === 'us') return text;
  return text.replace(/(-?\d[\d,]*(?:\.\d+)?) (psi|gpm|gal|ft)\b/g, (_, number, unit) => {
    const quantity = written[unit as string]!;
    const value = Number(String(number).replaceAll(',', ''));
    return units.text(toInside(value, quantity, unit as string), quantity);
  });
}

/** `0:07`, `12:40`: a drill's own time [s ≥ 0], the part of a second left out. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
