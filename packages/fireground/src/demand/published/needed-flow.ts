import type { PublishedRow, Source } from '@plugside/hydraulics';
import type { BuildingForDemand } from '../building.ts';

// Needed fire flow. Values from outside the project, each with its source, basis and tolerance.

type Row<Expected> = PublishedRow<BuildingForDemand, Expected>;

const fireFlowRequirements: Source = {
  title: 'Simple Ways to Determine Your Fire Flow Requirements, FirefighterNation',
  url: 'https://www.firefighternation.com/training/simple-ways-to-determine-your-fire-flow-requirements/',
};
const fireFlowThread: Source = {
  title: 'Firehouse Forums thread on fire flow',
  url: 'https://huggingface.co/datasets/nvidia/Nemotron-CC-Math-v1',
};
const ratingPage: Source = {
  title: 'International Standards Organization (ISO), a fire department page',
  url: 'http://www.vanshaver.com/international_standards_organiza.htm',
};
const ratingFromMemory: Source = { title: 'ISO needed fire flow guide (from memory)' };
const codeThread: Source = {
  title: 'IFC B105 forum thread',
  url: 'http://www.eng-tips.com/viewthread.cfm?qid=336083',
};
const codeArticle: Source = {
  title: 'Appendix B vs C fire flow',
  url: 'https://calichi.com/blog/appendix-b-vs-c-fire-flow/',
};
const codeCalculations: Source = {
  title: 'Fire flow calculations under the CFC',
  url: 'https://calichi.com/blog/fire-flow-calculations-cfc/',
};
const townCode: Source = {
  title: 'Placentia Fire Code, tables B105.1(1) and B105.2',
  url: 'https://ecode360.com/50149163',
};
const ruralSteps: Source = {
  title: 'NFPA 1142 formula steps',
  url: 'https://thecodecoach.blogspot.com/2017/08/big-water-little-water-how-to-determine.html',
};
const ruralSlides: Source = {
  title: 'NFPA 1142 review slides',
  url: 'https://studylib.net/doc/9501653/nfpa-1142-review',
};
const standpipePage: Source = {
  title: 'What is the pressure required for a standpipe',
  url: 'https://zaro.info/fire-protection-systems/what-is-the-pressure-required-for-a-standpipe',
};

export const areaInvolvementRows = [
  {
    given: { lengthFt: 50, widthFt: 30, involvedShare: 0.25 },
    expected: { neededGpm: 125 },
    within: { neededGpm: 0.1 },
    source: fireFlowRequirements,
    basis: 'published',
  },
  {
    given: { lengthFt: 175, widthFt: 125, involvedShare: 1 },
    expected: { neededGpm: 7291.66 },
    within: { neededGpm: 0.01 },
    source: fireFlowThread,
    basis: 'published',
  },
  {
    given: { lengthFt: 60, widthFt: 40, storeysInvolved: 2, involvedShare: 0.5, exposures: 2 },
    expected: { neededGpm: 1200 },
    within: { neededGpm: 0.1 },
    source: fireFlowRequirements,
    basis: 'derived',
    note: 'Share taken after the exposures; the other way round gives 1,600.',
  },
] satisfies Row<{ neededGpm: number }>[];

export const volumeRows = [
  {
    given: { lengthFt: 50, widthFt: 75, storeyHeightFt: 12 },
    expected: { neededGpm: 450 },
    within: { neededGpm: 0.1 },
    source: {
      title: 'Determining Required Fire Flow, Carolina Fire Rescue EMS Journal',
      url: 'https://www.carolinafirejournal.com/determining-required-fire-flow/',
    },
    basis: 'published',
  },
  {
    given: { lengthFt: 175, widthFt: 125, storeyHeightFt: 10 },
    expected: { neededGpm: 2188 },
    within: { neededGpm: 0.5 },
    source: fireFlowThread,
    basis: 'published',
  },
] satisfies Row<{ neededGpm: number }>[];

export const insuranceRows = [
  {
    given: { areaFt2: 10_000, storeys: 1, constructionClass: 'frame', contents: 'C-3' },
    expected: { neededGpm: 3000 },
    within: {},
    source: ratingFromMemory,
    basis: 'derived',
    note: 'C 2,700 taken as 2,750; 2,750 is a half step of 500, and halves go up.',
  },
  {
    given: {
      areaFt2: 8000,
      storeys: 2,
      constructionClass: 'joisted masonry',
      contents: 'C-3',
      exposureFactor: 0.1,
    },
    expected: { neededGpm: 2250 },
    within: {},
    source: {
      title: 'San Marcos TX fire code appendix, ISO method summary',
      url: 'http://weblink.sanmarcostx.gov/WebLink/0/doc/305850/Page15.aspx',
    },
    basis: 'derived',
    note: 'Effective area 12,000 ft², C 2,000; area and rounding are printed, factors from memory.',
  },
  ...(
    [
      [101, 500],
      [100, 750],
      [31, 750],
      [30, 1000],
      [11, 1000],
      [10, 1500],
      [0, 1500],
    ] as const
  ).map(([nearestBuildingFt, neededGpm]) => ({
    given: { dwelling: true, nearestBuildingFt },
    expected: { neededGpm },
    within: {},
    source: ratingPage,
    basis: 'published' as const,
  })),
  ...(
    [
      [31, 500],
      [30, 750],
      [21, 750],
      [20, 1000],
      [11, 1000],
      [10, 1500],
    ] as const
  ).map(([nearestBuildingFt, neededGpm]) => ({
    given: { dwelling: true, nearestBuildingFt, dwellingTable: 'newer' as const },
    expected: { neededGpm },
    within: {},
    source: ratingFromMemory,
    basis: 'recalled' as const,
  })),
  {
    given: { areaFt2: 100_000, storeys: 1, constructionClass: 'frame', contents: 'C-3' },
    expected: { neededGpm: 6000 },
    within: {},
    source: ratingFromMemory,
    basis: 'recalled',
    note: 'C of 8,538 held to 6,000: one storey.',
  },
  {
    given: { areaFt2: 100_000, storeys: 2, constructionClass: 'frame', contents: 'C-3' },
    expected: { neededGpm: 8000 },
    within: {},
    source: ratingFromMemory,
    basis: 'recalled',
    note: 'C of 10,457 held to 8,000: frame of two storeys.',
  },
  {
    given: { areaFt2: 300, storeys: 1, constructionClass: 'fire-resistive', contents: 'C-1' },
    expected: { neededGpm: 500 },
    within: {},
    source: ratingPage,
    basis: 'published',
    note: 'The least that is ever asked for.',
  },
  {
    given: {
      areaFt2: 2_000_000,
      storeys: 3,
      constructionClass: 'frame',
      contents: 'C-5',
      exposureFactor: 0.25,
      communicationFactor: 0.35,
    },
    expected: { neededGpm: 12_000 },
    within: {},
    source: ratingPage,
    basis: 'published',
    note: 'The most that is ever asked for.',
  },
] satisfies Row<{ neededGpm: number }>[];

export const ruralRows = [
  {
    given: {
      lengthFt: 50,
      widthFt: 24,
      storeys: 2,
      storeyHeightFt: 8,
      ridgeRiseFt: 8,
      occupancyHazard: 7,
      constructionNumber: 1.5,
    },
    expected: { totalGal: 5143, neededGpm: 500 },
    within: { totalGal: 1 },
    source: ruralSteps,
    basis: 'derived',
    note: 'Volume 24,000 ft³. The delivery rate is from memory of NFPA 1142.',
  },
  {
    given: {
      areaFt2: 1000,
      storeys: 1,
      storeyHeightFt: 8,
      occupancyHazard: 7,
      constructionType: 'III-B',
    },
    expected: { totalGal: 2000, neededGpm: 250 },
    within: { totalGal: 0 },
    source: ruralSlides,
    basis: 'derived',
    note: '8,000 ft³ at 1.0 is 1,143 gal; the minimum governs.',
  },
  {
    given: {
      areaFt2: 1000,
      storeys: 1,
      storeyHeightFt: 8,
      occupancyHazard: 7,
      constructionType: 'III-B',
      exposures: 1,
    },
    expected: { totalGal: 3000, neededGpm: 500 },
    within: { totalGal: 0 },
    source: ruralSlides,
    basis: 'derived',
    note: 'Minimum with exposures.',
  },
  {
    given: {
      areaFt2: 10_000,
      storeys: 1,
      storeyHeightFt: 14,
      occupancyHazard: 4,
      constructionType: 'V-B',
      exposures: 2,
    },
    expected: { totalGal: 78_750, neededGpm: 1000 },
    within: { totalGal: 0.5 },
    source: ruralSlides,
    basis: 'derived',
    note: '140,000 ÷ 4 × 1.5 × 1.5.',
  },
] satisfies Row<{ totalGal: number; neededGpm: number }>[];

export const fireCodeRows = [
  {
    given: { areaFt2: 3600, storeys: 1, dwelling: true, sprinklers: 'none' },
    expected: { neededGpm: 1000, durationMin: 60 },
    within: {},
    source: townCode,
    basis: 'published',
  },
  {
    given: { areaFt2: 1800, storeys: 2, dwelling: true },
    expected: { neededGpm: 1000, durationMin: 60 },
    within: {},
    source: codeArticle,
    basis: 'published',
  },
  {
    given: { areaFt2: 3600, storeys: 1, dwelling: true, sprinklers: 'NFPA 13D' },
    expected: { neededGpm: 500, durationMin: 30 },
    within: {},
    source: codeThread,
    basis: 'published',
    note: 'The half hour is from memory.',
  },
  {
    given: { areaFt2: 22_700, storeys: 1, constructionType: 'I-A' },
    expected: { neededGpm: 1500, durationMin: 120 },
    within: {},
    source: codeCalculations,
    basis: 'published',
  },
  {
    given: {
      areaFt2: 60_000,
      storeys: 1,
      constructionType: 'II-B',
      sprinklers: 'NFPA 13',
      codeTableGpm: 4000,
      codeTableHours: 4,
    },
    expected: { neededGpm: 1500, durationMin: 240 },
    within: {},
    source: codeArticle,
    basis: 'derived',
    note: '75 % off 4,000 is 1,000; 1,500 at least stands.',
  },
  {
    given: {
      areaFt2: 60_000,
      storeys: 1,
      sprinklers: 'NFPA 13',
      codeTableGpm: 8000,
      codeTableHours: 4,
    },
    expected: { neededGpm: 2000, durationMin: 240 },
    within: {},
    source: codeArticle,
    basis: 'derived',
  },
  {
    given: {
      areaFt2: 30_000,
      storeys: 3,
      sprinklers: 'NFPA 13R',
      codeTableGpm: 5000,
      codeTableHours: 4,
    },
    expected: { neededGpm: 2500, durationMin: 240 },
    within: {},
    source: townCode,
    basis: 'derived',
    note: 'Half of the table.',
  },
] satisfies Row<{ neededGpm: number; durationMin: number }>[];

export const sprinklerRows = [
  {
    given: { sprinklerHazard: 'ordinary 1', hoseStreamGpm: 0 },
    expected: { neededGpm: 225 },
    within: { neededGpm: 0.01 },
    source: {
      title: 'Sprinkler density flash card',
      url: 'https://university.govur.com/courses/firefighting-and-fire-safety-engineering/flashcard/qs-hZv3ozd2EoIw',
    },
    basis: 'published',
  },
  {
    given: { sprinklerHazard: 'ordinary 2' },
    expected: { neededGpm: 550 },
    within: { neededGpm: 0.01 },
    source: {
      title: 'Sprinkler hydraulic calculation 2019, City of Salem records',
      url: 'https://records.salem.com/WebLink/DocView.aspx?dbid=0&id=314704&repo=CityofSalem',
    },
    basis: 'derived',
    note: '300 gpm by design and 250 for hose; the system itself was calculated at 375.6.',
  },
  {
    given: { sprinklerHazard: 'light' },
    expected: { neededGpm: 250 },
    within: { neededGpm: 0.01 },
    source: { title: 'NFPA 13 (from memory)' },
    basis: 'recalled',
  },
  {
    given: { sprinklerHazard: 'extra 1' },
    expected: { neededGpm: 1250 },
    within: { neededGpm: 0.01 },
    source: { title: 'NFPA 13 (from memory)' },
    basis: 'recalled',
  },
  {
    given: { sprinklerHazard: 'extra 2' },
    expected: { neededGpm: 1500 },
    within: { neededGpm: 0.01 },
    source: { title: 'NFPA 13 (from memory)' },
    basis: 'recalled',
  },
] satisfies Row<{ neededGpm: number }>[];

export const standpipeRows = [
  {
    given: { standpipes: 1 },
    expected: { neededGpm: 500 },
    within: {},
    source: standpipePage,
    basis: 'published',
  },
  {
    given: { standpipes: 2 },
    expected: { neededGpm: 750 },
    within: {},
    source: standpipePage,
    basis: 'published',
  },
  {
    given: { standpipes: 4, sprinklers: 'NFPA 13' },
    expected: { neededGpm: 1000 },
    within: {},
    source: standpipePage,
    basis: 'published',
  },
  {
    given: { standpipes: 5 },
    expected: { neededGpm: 1250 },
    within: {},
    source: { title: 'NFPA 14 (from memory)' },
    basis: 'recalled',
  },
] satisfies Row<{ neededGpm: number }>[];
