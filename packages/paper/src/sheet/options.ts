import type { UnitSystem } from '@plugside/fireground';

/** Paper that printers hold [pt]: 72 to the inch. */
export const paperSizes = {
  letter: [612, 792],
  a4: [595.28, 841.89],
} as const satisfies Record<string, readonly [widthPt: number, heightPt: number]>;

export type PaperSize = keyof typeof paperSizes;

/** What every document is printed with. */
export interface PaperOptions {
  /** Printed on every page, and the file's creation date: the same moment gives the same bytes. */
  printedAt: Date;
  paper?: PaperSize;
  /** Units shown; data are always in inside units (gpm, psi, ft, in, gal). */
  units?: UnitSystem;
  /** The department's name, in the title block. */
  department?: string;
}
