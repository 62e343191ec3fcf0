import type { HoseSize } from '../plan/plan.ts';
import { parseFraction } from './fractions.ts';
import type { UnitSystem } from './quantities.ts';

interface SizeName {
  /** As shown in US units, without the unit. */
  us: string;
  inches: number;
  /** Trade sizes in mm that mean this hose; the first one is shown. */
  mm: readonly number[];
}

/** Metric trade sizes as in the tables of metric coefficients (IFSTA, from memory) and in common use. */
export const sizeNames: Readonly<Record<HoseSize, SizeName>> = {
  '3/4': { us: '¾', inches: 0.75, mm: [20, 19] },
  '1': { us: '1', inches: 1, mm: [25] },
  '1-1/4': { us: '1¼', inches: 1.25, mm: [32] },
  '1-1/2': { us: '1½', inches: 1.5, mm: [38] },
  '1-3/4': { us: '1¾', inches: 1.75, mm: [45, 44] },
  '2': { us: '2', inches: 2, mm: [50, 51, 52] },
  '2-1/2': { us: '2½', inches: 2.5, mm: [65, 63, 64] },
  '3': { us: '3', inches: 3, mm: [77, 75, 76] },
  '3-3': { us: '3', inches: 3, mm: [77] },
  '3-1/2': { us: '3½', inches: 3.5, mm: [90, 89] },
  '4': { us: '4', inches: 4, mm: [100, 102] },
  '4-1/2': { us: '4½', inches: 4.5, mm: [115, 110, 114] },
  '5': { us: '5', inches: 5, mm: [125, 127] },
  '6': { us: '6', inches: 6, mm: [150, 152] },
};

/** Every catalogue size, small to large. */
export const hoseSizes = Object.keys(sizeNames).sort(
  (a, b) =>
    sizeNames[a as HoseSize].inches - sizeNames[b as HoseSize].inches || a.length - b.length,
) as readonly HoseSize[];

/**
 * Reads a hose size as people write it: `5`, `'2.5'`, `'2 1/2'`, `'2½ in'`, `'2-1/2"'`,
 * `'65 mm'`, `'3-3'` for 3 in with 3 in couplings. Null where there is no such size.
 */
export function parseHoseSize(input: unknown): HoseSize | null {
  if (typeof input !== 'string' && typeof input !== 'number') return null;
  const text = String(input).trim().toLowerCase();
  if (text === '3-3' || /^3\s*(in|")?\s*(with|\()\s*3\s*(in|")?\s*couplings?\)?$/.test(text)) {
    return '3-3';
  }
  const metric = /^(\d+)\s*mm$/.exec(text);
  const inches = metric ? null : parseFraction(text.replace(/\s*(in\.?|inch|inches|"|″)$/, ''));
  for (const size of hoseSizes) {
    if (size === '3-3') continue;
    const name = sizeNames[size];
    if (metric ? name.mm.includes(Number(metric[1])) : inches === name.inches) return size;
  }
  return null;
}

/** `2½ in`, `65 mm`; `3 in (3 in couplings)` where it must be told from the other 3 in hose. */
export function formatHoseSize(size: HoseSize, system: UnitSystem = 'us'): string {
  const name = sizeNames[size];
  const shown = system === 'us' ? `${name.us} in` : `${name.mm[0]} mm`;
  return size === '3-3' ? `${shown} (${shown} couplings)` : shown;
}
