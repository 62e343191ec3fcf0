import { hoseCatalogue } from '../catalogue/hose.ts';
import type { HoseSize, Origin } from '../plan/plan.ts';
import { finding, refused, type TestFinding } from './finding.ts';
import { fitFindings, readingFindings } from './hose-test-findings.ts';
import { studentT95 } from './student-t.ts';

/** Loss measured through a length of hose at a flow, height already taken off. */
export interface HoseReading {
  flowGpm: number;
  lossPsi: number;
  lengthFt: number;
}

/** A reading beside what the fit says. */
export interface FittedReading extends HoseReading {
  fittedPsi: number;
  /** Measured less fitted [psi]. */
  residualPsi: number;
}

export interface HoseFit {
  /** C [psi per 100 ft at 100 gpm]; null where the readings are refused. */
  coefficient: number | null;
  /** Standard error of C; null under two readings. */
  standardError: number | null;
  /** Half of the 95 % range of C; null under two readings. */
  plusMinus: number | null;
  low: number | null;
  high: number | null;
  /** The catalogue's value for the size, where a size is given. */
  book: { coefficient: number; origin: Origin } | null;
  /** Measured over book − 1. */
  againstBook: number | null;
  /** Whether the book's value lies in the 95 % range. */
  bookFits: boolean | null;
  residuals: readonly FittedReading[];
  notices: readonly TestFinding[];
}

/** A coefficient this many times over or under the book is another hose, or a slip. Ours: published values for a size differ by about 2 times. */
const NONSENSE_TIMES = 4;

/** `(Q/100)²·(L/100)`: what C multiplies. */
const turn = ({ flowGpm, lengthFt }: HoseReading): number =>
  (flowGpm / 100) ** 2 * (lengthFt / 100);

/**
 * Friction coefficient of a hose from measured losses: least squares through the origin.
 *   C = Σx·loss/Σx², x = (Q/100)²·(L/100); standard error √(Σresidual²/(n−1)/Σx²);
 *   95 % range ± t(0.975, n−1) standard errors
 * Never throws: readings that make no sense give an `error` among the notices and null.
 * @param points flow [gpm], loss [psi] with height taken off, length [ft]
 * @param size catalogue size to hold it against
 * @returns C, its range [psi per 100 ft at 100 gpm], residuals [psi], the book's value, notices
 * Source: the coefficient law (Calculating Friction Loss in Hose Lays, City of Rohnert Park
 * records); regression through the origin, in any statistics text.
 */
export function fitCoefficient(points: readonly HoseReading[], size?: HoseSize): HoseFit {
  const entry = size === undefined ? undefined : hoseCatalogue[size];
  const book = entry ? { coefficient: entry.coefficient, origin: entry.origin } : null;
  const notices = readingFindings(points);
  const empty = {
    coefficient: null,
    standardError: null,
    plusMinus: null,
    low: null,
    high: null,
    againstBook: null,
    bookFits: null,
    residuals: [],
  };
  if (refused(notices)) return { ...empty, book, notices };

  const sumSquares = points.reduce((sum, one) => sum + turn(one) ** 2, 0);
  const coefficient = points.reduce((sum, one) => sum + turn(one) * one.lossPsi, 0) / sumSquares;
  if (book) {
    const times = coefficient / book.coefficient;
    if (times > NONSENSE_TIMES || times < 1 / NONSENSE_TIMES) {
      notices.push(
        finding(
          'error',
          'not-this-hose',
        )`The readings give C ${shownC(coefficient)}; the book has ${shownC(book.coefficient)} for this size. Over ${String(NONSENSE_TIMES)} times apart, it is another hose or a slip: check size, length, flow, and that the height was taken off.`,
      );
      return { ...empty, book, notices };
    }
  }
  const residuals = points.map((one) => {
    const fittedPsi = coefficient * turn(one);
    return { ...one, fittedPsi, residualPsi: one.lossPsi - fittedPsi };
  });
  const freedom = points.length - 1;
  const scatter = residuals.reduce((sum, one) => sum + one.residualPsi ** 2, 0);
  const standardError = freedom > 0 ? Math.sqrt(scatter / freedom / sumSquares) : null;
  const plusMinus = standardError === null ? null : studentT95(freedom) * standardError;
  const low = plusMinus === null ? null : coefficient - plusMinus;
  const high = plusMinus === null ? null : coefficient + plusMinus;
  notices.push(...fitFindings(residuals, turn, coefficient, plusMinus));
  return {
    coefficient,
    standardError,
    plusMinus,
    low,
    high,
    book,
    againstBook: book ? coefficient / book.coefficient - 1 : null,
    bookFits:
      book && low !== null && high !== null
        ? book.coefficient >= low && book.coefficient <= high
        : null,
    residuals,
    notices,
  };
}

/** A coefficient with the digits that it is written with. */
export function shownC(coefficient: number): string {
  return coefficient >= 10 ? coefficient.toFixed(1) : String(Number(coefficient.toPrecision(3)));
}
