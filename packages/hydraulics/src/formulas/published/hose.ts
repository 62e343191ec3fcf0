import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// What hose holds, bears and carries. Values from outside the project, each with its source, basis and tolerance.

export const hoseVolumeRows = [
  {
    given: { hoseIn: 1.5, lengthFt: 600 },
    expected: { gallons: 55.2 },
    within: { gallons: 0.3 },
    source: SOURCES.nwcgVolume,
    basis: 'derived',
    note: '6 lengths x 9.2.',
  },
  {
    given: { hoseIn: 3, lengthFt: 100 },
    expected: { gallons: 36.7 },
    within: { gallons: 0.1 },
    source: SOURCES.nwcgVolume,
    basis: 'derived',
  },
  {
    given: { hoseIn: 6, lengthFt: 100 },
    expected: { gallons: 146.9 },
    within: { gallons: 0.1 },
    source: SOURCES.nwcgVolume,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const hoseVolumeRows2 = [
  {
    given: { hoseIn: 5, lengthFt: 100 },
    expected: { gallons: 100, waterLb: 836 },
    within: { gallons: 2.5, waterLb: 18 },
    source: SOURCES.ldhBasics,
    basis: 'published',
    note: 'Article uses 1 gal/ft and 8.36 lb/gal.',
  },
] satisfies PublishedRow<object, object>[];

export const hoseReliefRows = [
  {
    given: { serviceTestPsi: 200 },
    expected: { maxReliefPsi: 180 },
    within: { maxReliefPsi: 0.01 },
    source: SOURCES.nfpa1962,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const waterWeightRows = [
  {
    given: { flowGpm: 200, lbPerGal: 8.35 },
    expected: { lbPerMin: 1670 },
    within: { lbPerMin: 1 },
    source: SOURCES.supplyBasics,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const velocityRows = [
  {
    given: { flowGpm: 1000, hoseIn: 5 },
    expected: { velocityFtS: 16.34 },
    within: { velocityFtS: 0.01 },
    source: SOURCES.waterHammer,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const waterHammerSlowRows = [
  {
    given: { deltaVFtS: 16.34, lengthFt: 500, closeS: 5 },
    expected: { risePsi: 114.4 },
    within: { risePsi: 0.2 },
    source: SOURCES.waterHammer,
    basis: 'derived',
    note: 'Formula published; inputs chosen.',
  },
] satisfies PublishedRow<object, object>[];

export const waterHammerJoukowskyRows = [
  {
    given: { deltaVFtS: 10, waveFtS: 1000 },
    expected: { risePsi: 134.7 },
    within: { risePsi: 0.5 },
    source: SOURCES.waterHammer,
    basis: 'derived',
    note: 'Wave speed is an input; no fire-hose value was found.',
  },
] satisfies PublishedRow<object, object>[];
