import { QuantityError, requireCount, requireFinite, requireWithin } from '@plugside/hydraulics';
import type { BuildingField, BuildingForDemand } from './building.ts';

/** One input of a building: its name in a sentence, and what it may be. */
export type BuildingFieldRow = { words: string } & (
  | { kind: 'number'; unit: string; least: number; greatest: number }
  | { kind: 'count'; least: number; greatest: number }
  | { kind: 'choice'; choices: readonly (string | number)[] }
  | { kind: 'yes or no' }
);

const number = (
  words: string,
  unit: string,
  least: number,
  greatest: number,
): BuildingFieldRow => ({
  words,
  kind: 'number',
  unit,
  least,
  greatest,
});
const count = (words: string, least: number, greatest: number): BuildingFieldRow => ({
  words,
  kind: 'count',
  least,
  greatest,
});
const choice = (words: string, ...choices: (string | number)[]): BuildingFieldRow => ({
  words,
  kind: 'choice',
  choices,
});
const yesOrNo = (words: string): BuildingFieldRow => ({ words, kind: 'yes or no' });

/** Every input with its range, in inside units, for forms and for refusals. */
export const buildingFields: Readonly<Record<BuildingField, BuildingFieldRow>> = {
  lengthFt: number('the length of the building', 'ft', 1, 5000),
  widthFt: number('the width of the building', 'ft', 1, 5000),
  areaFt2: number('the area of the largest floor', 'ft²', 1, 5_000_000),
  storeys: count('the number of storeys', 1, 200),
  storeyHeightFt: number('the height of a storey', 'ft', 6, 300),
  ridgeRiseFt: number('the height from eaves to ridge', 'ft', 0, 100),
  storeysInvolved: count('the storeys with fire', 1, 200),
  involvedShare: number('the share that burns', '', 0, 1),
  largestSpaceFt3: number('the volume of the largest single space', 'ft³', 1, 100_000_000),
  exposures: count('the exposed sides', 0, 8),
  dwelling: yesOrNo('whether it is a one- or two-family dwelling'),
  nearestBuildingFt: number('the distance to the nearest building', 'ft', 0, 5280),
  dwellingTable: choice('the table of spacing', 'older', 'newer'),
  constructionClass: choice(
    'the class of construction',
    'frame',
    'joisted masonry',
    'non-combustible',
    'masonry non-combustible',
    'modified fire-resistive',
    'fire-resistive',
  ),
  contents: choice('how its contents burn', 'C-1', 'C-2', 'C-3', 'C-4', 'C-5'),
  exposureFactor: number('the exposure factor', '', 0, 0.25),
  communicationFactor: number('the communication factor', '', 0, 0.35),
  constructionType: choice(
    'the type of construction',
    'I-A',
    'I-B',
    'II-A',
    'II-B',
    'III-A',
    'III-B',
    'IV',
    'V-A',
    'V-B',
  ),
  occupancyHazard: choice('the hazard number of the occupancy', 3, 4, 5, 6, 7),
  constructionNumber: number('the construction number', '', 0.5, 1.5),
  sprinklers: choice('its sprinklers', 'none', 'NFPA 13', 'NFPA 13R', 'NFPA 13D'),
  codeTableGpm: number("the flow from your fire code's table", 'gpm', 500, 8000),
  codeTableHours: number("the duration from your fire code's table", 'h', 0.5, 8),
  codeSprinkleredLeastGpm: number(
    'the least flow your code allows with sprinklers',
    'gpm',
    500,
    8000,
  ),
  sprinklerHazard: choice(
    'the hazard class of its sprinklers',
    'light',
    'ordinary 1',
    'ordinary 2',
    'extra 1',
    'extra 2',
  ),
  sprinklerDensity: number("the sprinklers' design density", 'gpm/ft²', 0.03, 2),
  sprinklerAreaFt2: number("the sprinklers' design area", 'ft²', 100, 20_000),
  hoseStreamGpm: number('the hose streams beside the sprinklers', 'gpm', 0, 2000),
  dryPipe: yesOrNo('whether the sprinklers are on dry pipe'),
  standpipes: count('the standpipes in use at once', 0, 20),
};

export const fieldWords = (field: BuildingField): string => buildingFields[field].words;

const REMEDY = 'Check the number and its unit, or leave it out.';

/**
 * Throws a `QuantityError` where one of `fields` is given and out of its range or not one of its
 * choices.
 */
export function checkBuilding(building: BuildingForDemand, fields: readonly BuildingField[]): void {
  for (const field of fields) {
    const value: unknown = building[field];
    if (value === undefined) continue;
    const row = buildingFields[field];
    if (row.kind === 'number') {
      requireFinite(field, value as number, row.unit, REMEDY);
      requireWithin(field, value as number, [row.least, row.greatest], row.unit, REMEDY);
    } else if (row.kind === 'count') {
      requireCount(field, value as number, row.least, REMEDY);
      requireWithin(field, value as number, [row.least, row.greatest], '', REMEDY);
    } else if (row.kind === 'choice' && !row.choices.includes(value as string)) {
      throw new QuantityError({ field, value, allowed: row.choices.join(', '), remedy: REMEDY });
    } else if (row.kind === 'yes or no' && typeof value !== 'boolean') {
      throw new QuantityError({ field, value, allowed: 'true or false', remedy: REMEDY });
    }
  }
}

type Given<Field extends BuildingField> = BuildingForDemand & {
  [Name in Field]-?: NonNullable<BuildingForDemand[Name]>;
};

/** True where every one of `fields` is given. */
export function hasAll<Field extends BuildingField>(
  building: BuildingForDemand,
  fields: readonly Field[],
): building is Given<Field> {
  return fields.every((field) => building[field] !== undefined);
}

/** Those of `fields` that are not given. */
export function missingOf(
  building: BuildingForDemand,
  fields: readonly BuildingField[],
): BuildingField[] {
  return fields.filter((field) => building[field] === undefined);
}
