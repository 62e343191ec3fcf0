import type {
  BuildingField,
  BuildingForDemand,
  ConstructionClass,
  ConstructionType,
} from '@plugside/fireground';
import type { Fields } from '../model/index.ts';

export interface DemandInputs {
  /** What the methods can take from the record. */
  inputs: BuildingForDemand;
  /**
   * Inputs that the record does not hold in so many words: what they were taken from, or of those
   * that are not among the inputs what is to be said.
   */
  assumed: Partial<Record<BuildingField, string>>;
}

/** Words in a record's construction, the most telling first. */
const CLASSES: readonly (readonly [RegExp, ConstructionClass])[] = [
  [/modified fire.?resist/i, 'modified fire-resistive'],
  [/fire.?resist/i, 'fire-resistive'],
  [/masonry non.?combust/i, 'masonry non-combustible'],
  [/non.?combust|steel/i, 'non-combustible'],
  [/joisted|ordinary|brick|masonry/i, 'joisted masonry'],
  [/frame|wood|timber/i, 'frame'],
];

/** The building code's type that a rating class usually is, its weakest; common practice, no source. */
const USUAL_TYPES: Readonly<Record<ConstructionClass, ConstructionType>> = {
  'modified fire-resistive': 'I-B',
  'fire-resistive': 'I-A',
  'masonry non-combustible': 'II-B',
  'non-combustible': 'II-B',
  'joisted masonry': 'III-B',
  frame: 'V-B',
};

const CODE_TYPE = /\b(?:type\s*)?(I-?[AB]|II-?[AB]|III-?[AB]|IV|V-?[AB])\b/;

/**
 * What the demand methods can take from a building's record. Its construction and occupancy are in
 * the department's own words; what is read from them is told in `assumed`, so that a person can say
 * otherwise.
 */
export function demandInputs(
  building: Pick<
    Fields<'buildings'>,
    'areaFt2' | 'storeys' | 'exposures' | 'sprinklered' | 'standpipe' | 'construction' | 'occupancy'
  >,
): DemandInputs {
  const { areaFt2, storeys, exposures, sprinklered, standpipe } = building;
  const { construction = '', occupancy = '' } = building;
  const assumed: DemandInputs['assumed'] = {};
  const constructionClass = CLASSES.find(([words]) => words.test(construction))?.[1];
  const written = CODE_TYPE.exec(construction)?.[1];
  const constructionType = written
    ? (written.replace(/^([IV]+)-?([AB])$/, '$1-$2') as ConstructionType)
    : constructionClass && USUAL_TYPES[constructionClass];
  if (constructionClass) {
    assumed.constructionClass = `from "${construction}" on record`;
    if (!written) assumed.constructionType = `usual for ${constructionClass}`;
  }
  const dwelling = occupancy === '' ? undefined : /\bdwelling|\bhouse\b|farmhouse/i.test(occupancy);
  if (dwelling !== undefined) assumed.dwelling = `from "${occupancy}" on record`;
  if (sprinklered) assumed.sprinklers = 'sprinklered on record: say by which standard';
  if (standpipe) assumed.standpipes = 'on record: say how many are in use at once';
  return {
    inputs: {
      ...(areaFt2 !== undefined && { areaFt2 }),
      ...(storeys !== undefined && { storeys }),
      ...(exposures !== undefined && { exposures }),
      // Which standard they were designed to is not on record.
      ...(sprinklered === false && { sprinklers: 'none' as const }),
      ...(standpipe === false && { standpipes: 0 }),
      ...(constructionClass && { constructionClass }),
      ...(constructionType && { constructionType }),
      ...(dwelling !== undefined && { dwelling }),
    },
    assumed,
  };
}
