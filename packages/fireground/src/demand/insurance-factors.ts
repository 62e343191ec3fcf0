import type { ConstructionClass, ContentsClass, DwellingTable } from './building.ts';

// From memory of Guide for Determination of Needed Fire Flow, ISO, where a line names no other source.

/** Factor F by class of construction [-]. Print confirms the range of 0.6 to 1.5 only. */
export const CONSTRUCTION_FACTOR: Readonly<Record<ConstructionClass, number>> = {
  frame: 1.5,
  'joisted masonry': 1,
  'non-combustible': 0.8,
  'masonry non-combustible': 0.8,
  'modified fire-resistive': 0.6,
  'fire-resistive': 0.6,
};

/** Factor O by how the contents burn [-]. */
export const CONTENTS_FACTOR: Readonly<Record<ContentsClass, number>> = {
  'C-1': 0.75,
  'C-2': 0.85,
  'C-3': 1,
  'C-4': 1.15,
  'C-5': 1.25,
};

/** Greatest sum of the exposure and communication factors [-]. */
export const GREATEST_EXPOSURE_SUM = 0.6;

/** Least and greatest needed flow [gpm]. Source: International Standards Organization (ISO), a fire department's page: 500 to 12,000. */
export const NEEDED_RANGE_GPM = [500, 12_000] as const;

/** Greatest C [gpm]: frame and joisted masonry of two storeys or more; all others. */
export const GREATEST_C_GPM = { burns: 8000, other: 6000 } as const;

/** Of the floors over the largest that count with a share, at most so many in fire-resistive buildings. */
export const FIRE_RESISTIVE_OTHER_FLOORS = 8;

/** Share of the other floors' area [-]. Source: San Marcos TX fire code appendix, ISO method summary. */
export const OTHER_FLOORS_SHARE = 0.5;

/**
 * Needed flow of a one- or two-family dwelling by the distance to its neighbour: over so many feet
 * [ft], so much [gpm]; the last row is for anything nearer. The older table is printed on a fire
 * department's page, "International Standards Organization (ISO)"
 * (http://www.vanshaver.com/international_standards_organiza.htm); the newer is from memory.
 */
export const DWELLING_TABLES: Readonly<
  Record<DwellingTable, readonly (readonly [overFt: number, neededGpm: number])[]>
> = {
  older: [
    [100, 500],
    [30, 750],
    [10, 1000],
    [-1, 1500],
  ],
  newer: [
    [30, 500],
    [20, 750],
    [10, 1000],
    [-1, 1500],
  ],
};
