import { hoseVolumeGal as boreVolumeGal } from '@plugside/hydraulics';
import type { HoseSize, Line, Origin, Plan } from '../plan/plan.ts';
import { maker, measured, practice } from './origins.ts';

export interface CoefficientChoice {
  /** C in `C·(Q/100)²·(L/100)`: psi per 100 ft at 100 gpm. */
  coefficient: number;
  origin: Origin;
}

export interface HoseEntry extends CoefficientChoice {
  size: HoseSize;
  /** Nominal inside diameter [in]. */
  diameterIn: number;
  /** Which pressure limit it falls under: supply from 3½ in up. */
  limitClass: 'supply' | 'attack';
  /** Coupling size [in]. */
  couplingIn: number;
  /** Usual length of one section [ft]. */
  sectionFt: number;
  /** Dry weight [lb] of 100 ft with couplings; left out where no published figure was found. */
  dryLbPer100Ft?: number;
  weightOrigin?: Origin;
  /** Other published or measured coefficients for the size, for a department to pick from. */
  alternatives: readonly CoefficientChoice[];
}

const slides = practice(
  '"Calculating Friction Loss in Hose Lays", City of Rohnert Park training slides',
);
const textbook = practice('Driver/operator textbook table, as in "Math Formulas" study cards');
const recalled = practice('Driver/operator textbook table, from memory');
const ldhArticle = measured('"Working With Large-Diameter Hose Part 1", Fire Engineering');
const forum = maker("Makers' figures for synthetic hose, as quoted on Firehouse Forums");
const ldhWeights = practice(
  '"Comparing Four- and Five-Inch Large-Diameter Hose", Fire Apparatus magazine',
);
const recalledWeight = practice('Typical, from memory');

/** Every size, small to large. The coefficient is the default; a department's own replaces it. */
export const hoseCatalogue: Readonly<Record<HoseSize, HoseEntry>> = {
  '3/4': attack('3/4', 0.75, 1100, recalled, 1),
  '1': attack('1', 1, 150, slides, 1),
  '1-1/4': attack('1-1/4', 1.25, 80, recalled, 1.5),
  '1-1/2': attack('1-1/2', 1.5, 24, slides, 1.5),
  '1-3/4': {
    ...attack('1-3/4', 1.75, 15.5, textbook, 1.5),
    alternatives: [
      { coefficient: 10, origin: slides },
      { coefficient: 10.5, origin: forum },
      { coefficient: 9.6, origin: forum },
    ],
  },
  '2': {
    ...attack('2', 2, 8, textbook, 1.5),
    alternatives: [
      { coefficient: 6.6, origin: forum },
      { coefficient: 3.9, origin: forum },
    ],
  },
  '2-1/2': {
    ...attack('2-1/2', 2.5, 2, slides, 2.5),
    alternatives: [{ coefficient: 1.2, origin: forum }],
  },
  '3': {
    ...attack('3', 3, 0.8, slides, 2.5),
    dryLbPer100Ft: 50,
    weightOrigin: recalledWeight,
  },
  '3-3': {
    ...attack('3-3', 3, 0.677, textbook, 3),
    dryLbPer100Ft: 50,
    weightOrigin: recalledWeight,
  },
  '3-1/2': supply('3-1/2', 3.5, 0.34, recalled),
  '4': {
    ...supply('4', 4, 0.2, slides),
    dryLbPer100Ft: 80,
    weightOrigin: ldhWeights,
    alternatives: [
      {
        coefficient: 0.125,
        origin: practice('Implied by the distances in "Which Supply Line?", FireRescue1'),
      },
    ],
  },
  '4-1/2': supply('4-1/2', 4.5, 0.1, slides),
  '5': {
    ...supply('5', 5, 0.08, slides),
    dryLbPer100Ft: 105,
    weightOrigin: ldhWeights,
    alternatives: [
      { coefficient: 0.067, origin: ldhArticle },
      { coefficient: 0.06, origin: ldhArticle },
    ],
  },
  '6': {
    ...supply('6', 6, 0.05, recalled),
    dryLbPer100Ft: 140,
    weightOrigin: recalledWeight,
  },
};

function attack(
  size: HoseSize,
  diameterIn: number,
  coefficient: number,
  origin: Origin,
  couplingIn: number,
): HoseEntry {
  return {
    size,
    diameterIn,
    coefficient,
    origin,
    couplingIn,
    limitClass: 'attack',
    sectionFt: 50,
    alternatives: [],
  };
}

function supply(
  size: HoseSize,
  diameterIn: number,
  coefficient: number,
  origin: Origin,
): HoseEntry {
  return {
    size,
    diameterIn,
    coefficient,
    origin,
    couplingIn: diameterIn,
    limitClass: 'supply',
    sectionFt: 100,
    alternatives: [],
  };
}

/**
 * The friction coefficient that counts for a line: its own, else the department's for its
 * size, else the catalogue's; with where it comes from.
 */
export function coefficientFor(
  plan: Pick<Plan, 'department'>,
  line: Pick<Line, 'hose' | 'coefficient' | 'coefficientOrigin'>,
): CoefficientChoice {
  if (line.coefficient !== undefined) {
    const origin = line.coefficientOrigin ?? { kind: 'department', text: 'Set on this line' };
    return { coefficient: line.coefficient, origin };
  }
  const own = plan.department.coefficients?.[line.hose];
  if (own) return own;
  const { coefficient, origin } = hoseCatalogue[line.hose];
  return { coefficient, origin };
}

/** Water in one line of a size [gal], by its nominal bore. Throws QuantityError for a negative length [ft]. */
export function hoseVolumeGal(size: HoseSize, lengthFt: number): number {
  return boreVolumeGal(hoseCatalogue[size].diameterIn, lengthFt);
}
