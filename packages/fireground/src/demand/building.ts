/** What is known of a building. Every field may be left out; each method says what it misses. */
export interface BuildingForDemand {
  /** Outside length and width of the fire building or its burning part [ft]. */
  lengthFt?: number;
  widthFt?: number;
  /** Largest floor [ft²]; goes before length times width. */
  areaFt2?: number;
  /** Floors above the ground. */
  storeys?: number;
  /** Floor to ceiling of one storey, or of the hall that is the largest single space [ft]. */
  storeyHeightFt?: number;
  /** Eaves to ridge [ft]; 0 under a flat roof. */
  ridgeRiseFt?: number;
  /** Floors with fire on them; all of them where left out. */
  storeysInvolved?: number;
  /** Share of those floors that burns, 0 to 1; all of it where left out. */
  involvedShare?: number;
  /** Largest single space [ft³]; goes before length times width times height. */
  largestSpaceFt3?: number;
  /** Sides with another building within 50 ft that is 100 ft² or larger; 0 where left out. */
  exposures?: number;
  /** One or two families, two storeys at most. */
  dwelling?: boolean;
  /** To the nearest other building [ft]. */
  nearestBuildingFt?: number;
  /** Which printed table of spacing a department goes by; the older, which never asks for less. */
  dwellingTable?: DwellingTable;
  /** Class of construction of the insurance rating. */
  constructionClass?: ConstructionClass;
  /** How the contents burn, in the insurance rating's classes. */
  contents?: ContentsClass;
  /** Exposure factor X of the insurance rating, 0 to 0.25. */
  exposureFactor?: number;
  /** Communication factor P of the insurance rating, 0 to 0.35. */
  communicationFactor?: number;
  /** Type of construction by the building code. */
  constructionType?: ConstructionType;
  /** Hazard number of the occupancy by the rural standard: 3 severe to 7 light. */
  occupancyHazard?: OccupancyHazard;
  /** Construction number by the rural standard; where left out, by the type of construction. */
  constructionNumber?: number;
  /** Sprinkler system, by the standard that it was designed to. */
  sprinklers?: SprinklerStandard;
  /** The fire code's own table, read by the department for this building [gpm], [h]. */
  codeTableGpm?: number;
  codeTableHours?: number;
  /** Least flow of a sprinklered building that the adopted code lets stand [gpm]; 1,500 where left out. */
  codeSprinkleredLeastGpm?: number;
  /** Class of hazard that its sprinklers are designed for. */
  sprinklerHazard?: SprinklerHazard;
  /** Design density [gpm/ft²] and area [ft²] from the plate on the riser; by the hazard where left out. */
  sprinklerDensity?: number;
  sprinklerAreaFt2?: number;
  /** Hose streams beside the sprinklers [gpm]; by the hazard where left out. */
  hoseStreamGpm?: number;
  /** A dry-pipe system. */
  dryPipe?: boolean;
  /** Standpipes (risers) in use at once, as designed; 0 where there are none. */
  standpipes?: number;
}

export type BuildingField = keyof BuildingForDemand;

export type ConstructionClass =
  | 'frame'
  | 'joisted masonry'
  | 'non-combustible'
  | 'masonry non-combustible'
  | 'modified fire-resistive'
  | 'fire-resistive';

/** C-1 non-combustible, C-2 limited combustible, C-3 combustible, C-4 free-burning, C-5 rapid-burning. */
export type ContentsClass = 'C-1' | 'C-2' | 'C-3' | 'C-4' | 'C-5';

export type DwellingTable = 'older' | 'newer';

export type ConstructionType =
  | 'I-A'
  | 'I-B'
  | 'II-A'
  | 'II-B'
  | 'III-A'
  | 'III-B'
  | 'IV'
  | 'V-A'
  | 'V-B';

export type OccupancyHazard = 3 | 4 | 5 | 6 | 7;

export type SprinklerStandard = 'none' | 'NFPA 13' | 'NFPA 13R' | 'NFPA 13D';

export type SprinklerHazard = 'light' | 'ordinary 1' | 'ordinary 2' | 'extra 1' | 'extra 2';
