import type { Notice } from '../questions/answers.ts';
import { sayIn } from '../words/say.ts';
import {
  answered,
  type DemandAbout,
  type DemandAnswer,
  type DemandOptions,
  type DemandStep,
  fact,
  step,
  unanswered,
  without,
} from './answer.ts';
import type { BuildingForDemand, SprinklerHazard } from './building.ts';
import { checkBuilding, missingOf } from './building-fields.ts';

const FIELDS = [
  'sprinklers',
  'sprinklerHazard',
  'sprinklerDensity',
  'sprinklerAreaFt2',
  'hoseStreamGpm',
  'dryPipe',
] as const;

export const sprinklerDemandAbout: DemandAbout = {
  method: 'sprinklers',
  title: 'Sprinklers and hose streams (NFPA 13)',
  inputs: FIELDS,
  source: {
    title: 'Sprinkler hydraulic calculation 2019, City of Salem records',
    fromMemory: true,
  },
};

/** What sprinklers of a class of hazard are designed for. */
export interface SprinklerDesign {
  /** Water on the floor [gpm/ft²] over the design area [ft²]. */
  densityGpmFt2: number;
  areaFt2: number;
  /** Beside the sprinklers, inside and outside together [gpm]. */
  hoseStreamGpm: number;
  durationMin: number;
}

/**
 * Design by class of hazard. Sources: ordinary 1, Sprinkler density flash card (0.15 over 1,500);
 * ordinary 2, Sprinkler hydraulic calculation 2019, City of Salem records (0.20 over 1,500, hose
 * 250); the other rows and the durations (the longer of each pair) from memory of NFPA 13.
 */
export const SPRINKLER_DESIGNS: Readonly<Record<SprinklerHazard, SprinklerDesign>> = {
  light: { densityGpmFt2: 0.1, areaFt2: 1500, hoseStreamGpm: 100, durationMin: 30 },
  'ordinary 1': { densityGpmFt2: 0.15, areaFt2: 1500, hoseStreamGpm: 250, durationMin: 90 },
  'ordinary 2': { densityGpmFt2: 0.2, areaFt2: 1500, hoseStreamGpm: 250, durationMin: 90 },
  'extra 1': { densityGpmFt2: 0.3, areaFt2: 2500, hoseStreamGpm: 500, durationMin: 120 },
  'extra 2': { densityGpmFt2: 0.4, areaFt2: 2500, hoseStreamGpm: 500, durationMin: 120 },
};

/** Design area of a dry-pipe system against a wet one [-]. Source: Maine rule 407-640, appendix B: flows 30 % above a wet system's. */
export const DRY_PIPE_FACTOR = 1.3;

/**
 * Flow of a sprinklered building: density times area, and hose streams beside it.
 *   Q = density·area + hose
 * @param building class of hazard, or density [gpm/ft²], area [ft²] and hose streams [gpm] off the
 *   plate on the riser; dry pipe or not
 * @returns flow [gpm], duration [min], water in all [gal]; no duration where no class is given
 * Valid: as designed; heads near the source give more than the density, so a real system takes more.
 * Outside: throws QuantityError for an input out of its range.
 * Source: Sprinkler density flash card
 * (https://university.govur.com/courses/firefighting-and-fire-safety-engineering/flashcard/qs-hZv3ozd2EoIw);
 * Sprinkler hydraulic calculation 2019, City of Salem records; NFPA 13 from memory.
 */
export function sprinklerDemand(
  building: BuildingForDemand,
  { units = 'us' }: DemandOptions = {},
): DemandAnswer {
  checkBuilding(building, FIELDS);
  if (building.sprinklers === 'none') {
    return without(sprinklerDemandAbout, { fields: [], text: 'The building has no sprinklers.' });
  }
  const design = building.sprinklerHazard && SPRINKLER_DESIGNS[building.sprinklerHazard];
  const density = building.sprinklerDensity ?? design?.densityGpmFt2;
  const plateAreaFt2 = building.sprinklerAreaFt2;
  const designAreaFt2 = plateAreaFt2 ?? design?.areaFt2;
  const hoseGpm = building.hoseStreamGpm ?? design?.hoseStreamGpm;
  if (density === undefined || designAreaFt2 === undefined || hoseGpm === undefined) {
    return unanswered(sprinklerDemandAbout, missingOf(building, ['sprinklerHazard']));
  }
  const say = sayIn(units);
  // What is on the plate is the system's own area already.
  const dry = building.dryPipe === true && plateAreaFt2 === undefined;
  const areaFt2 = designAreaFt2 * (dry ? DRY_PIPE_FACTOR : 1);
  const sprinklerGpm = density * areaFt2;
  const neededGpm = sprinklerGpm + hoseGpm;
  const steps: DemandStep[] = [];
  if (dry) {
    steps.push(
      step(
        `Dry pipe, design area × ${DRY_PIPE_FACTOR}: ${say.full(areaFt2, 'area')}.`,
        areaFt2,
        'ft²',
      ),
    );
  }
  steps.push(
    step(
      `Sprinklers: ${say.full(density, 'density')} × ${say.full(areaFt2, 'area')} = ${say.full(sprinklerGpm, 'flow')}.`,
      sprinklerGpm,
      'gpm',
    ),
    step(
      `Hose streams of ${say.full(hoseGpm, 'flow')} beside them: ${say.full(neededGpm, 'flow')}.`,
      neededGpm,
      'gpm',
    ),
  );
  const notices: Notice[] = [
    fact(
      `A real system takes more than density times area: in one published calculation ${say.full(300, 'flow')} by design came to ${say.full(375.6, 'flow')}. The plate on the riser has its own figures.`,
    ),
  ];
  if (!design) return answered(sprinklerDemandAbout, { neededGpm, steps, notices });
  const { durationMin } = design;
  const totalGal = neededGpm * durationMin;
  steps.push(step(`For ${durationMin} minutes: ${say.full(totalGal, 'volume')}.`, totalGal, 'gal'));
  notices.push(
    fact(
      'The duration, and the figures of light and extra hazard, are from memory of the standard; where alarms are supervised it allows a shorter one.',
    ),
  );
  return answered(sprinklerDemandAbout, { neededGpm, durationMin, totalGal, steps, notices });
}
