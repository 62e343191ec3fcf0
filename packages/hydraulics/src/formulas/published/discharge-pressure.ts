import type { PublishedRow } from './published-row.ts';
import { SOURCES } from './sources.ts';

// Discharge pressures and what they are made of. Values from outside the project, each with its source, basis and tolerance.

export const elevationRows = [
  {
    given: { heightFt: 50 },
    expected: { pressurePsi: 21.7, fieldPsi: 25 },
    within: { pressurePsi: 0.05, fieldPsi: 0.01 },
    source: SOURCES.formulaCards,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const applianceLossRows = [
  {
    given: { appliances: 5, psiEach: 5 },
    expected: { lossPsi: 25 },
    within: { lossPsi: 0.01 },
    source: SOURCES.nwcgPumpPressures,
    basis: 'published',
  },
] satisfies PublishedRow<object, object>[];

export const applianceLossRows2 = [
  {
    given: { flowGpm: 349, appliance: 'wye' },
    expected: { lossPsi: 0 },
    within: { lossPsi: 0.01 },
    source: SOURCES.mathCards,
    basis: 'derived',
    note: 'Threshold 350 gpm: 349 -> 0, 350 -> 10.',
  },
] satisfies PublishedRow<object, object>[];

export const standpipePressureRows = [
  {
    given: { floors: 6, basePsi: 150, psiPerFloor: 5 },
    expected: { connectionPsi: 180 },
    within: { connectionPsi: 0.01 },
    source: SOURCES.connectionPressures,
    basis: 'derived',
    note: "One department's rule; boundary 10 floors -> 200.",
  },
] satisfies PublishedRow<object, object>[];

export const pdpWyeRows = [
  {
    given: {
      supplyC: 2,
      supplyFt: 200,
      supplyGpm: 300,
      attackC: 10,
      attackFt: 150,
      attackGpm: 150,
    },
    expected: { supplyFlPsi: 36, attackFlPsi: 34, totalLossPsi: 70 },
    within: { supplyFlPsi: 0.1, attackFlPsi: 0.5, totalLossPsi: 0.5 },
    source: SOURCES.hoseLays,
    basis: 'published',
    note: 'Appliance 0 at 300 gpm under the 350-gpm rule.',
  },
] satisfies PublishedRow<object, object>[];

export const pdpWyeRows2 = [
  {
    given: {
      supplyC: 2,
      supplyFt: 200,
      supplyGpm: 300,
      attackC: 10,
      attackFt: 150,
      attackGpm: 150,
      nozzlePsi: 100,
      appliancePsi: 0,
      riseFt: 0,
    },
    expected: { pdpPsi: 169.75 },
    within: { pdpPsi: 0.3 },
    source: SOURCES.hoseLays,
    basis: 'derived',
    note: 'Adds a 100-psi fog nozzle to the published layout.',
  },
] satisfies PublishedRow<object, object>[];

export const pdpHandlineRows = [
  {
    given: { c: 15.5, flowGpm: 150, lengthFt: 200, nozzlePsi: 100, riseFloors: 1, psiPerFloor: 5 },
    expected: { flPsi: 69.75, pdpPsi: 174.75 },
    within: { flPsi: 0.05, pdpPsi: 0.05 },
    source: SOURCES.stateExam,
    basis: 'derived',
  },
] satisfies PublishedRow<object, object>[];

export const pdpMasterStreamRows = [
  {
    given: {
      tipIn: 1.5,
      nozzlePsi: 80,
      lines: 2,
      c: 0.8,
      lengthFt: 300,
      appliancePsi: 25,
      riseFt: 20,
      psiPerFt: 0.5,
    },
    expected: { flowGpm: 597.7, flPsi: 21.4, pdpPsi: 136.4 },
    within: { flowGpm: 0.5, flPsi: 0.1, pdpPsi: 0.2 },
    source: SOURCES.mathCards,
    basis: 'derived',
    note: 'Two equal 3-in lines, each half the flow.',
  },
] satisfies PublishedRow<object, object>[];

export const pdpStandpipeRows = [
  {
    given: {
      supplyLines: 2,
      supplyC: 2,
      supplyFt: 100,
      riserC: 0.374,
      riserFt: 80,
      attackC: 2,
      attackFt: 150,
      attackGpm: 265.8,
      nozzlePsi: 50,
      standpipePsi: 25,
      riseFt: 70,
      psiPerFt: 0.5,
    },
    expected: { pdpPsi: 136.8 },
    within: { pdpPsi: 0.2 },
    source: SOURCES.mathCards,
    basis: 'derived',
    note: 'Riser coefficient from memory; adding both 25 psi and riser friction is conservative.',
  },
] satisfies PublishedRow<object, object>[];
