import type { UnitSystem } from '@plugside/fireground';
import type { Figures } from './output/figures.ts';
import type { Ink } from './output/ink.ts';

/** Options that every command takes. */
export interface CommonOptions {
  json?: boolean;
  units: UnitSystem;
  color: boolean;
}

/** How one run reads and shows: the reader's units, the terminal's width and colours. */
export interface Terminal {
  units: UnitSystem;
  figures: Figures;
  ink: Ink;
  /** Columns that a line of text may take. */
  width: number;
}
