import { describe, expect, it } from 'vitest';
import { type NeededFlowInput, neededFlowGpm } from './needed-flow.ts';

const building: NeededFlowInput = {
  construction: 'wood frame',
  storeys: 1,
  areaFt2: 10_000,
  dwelling: false,
  nearestFt: 200,
  sprinklered: false,
};

// C = 18·F·√A by hand, with the rule's F and rounding ("Guide for Determination of Needed Fire
// Flow", ISO, from memory).
describe('needed fire flow', () => {
  it.each([
    // 18 · 1.5 · √10,000 = 2,700; to 500 above 2,500.
    [{}, 2500],
    // 18 · 1.5 · √(10,000 · 1.5) = 3,307
    [{ storeys: 2 }, 3500],
    // 18 · 0.8 · √10,000 = 1,440
    [{ construction: 'non-combustible' }, 1500],
    // 18 · 1 · √400 = 360, under the least of 500
    [{ construction: 'joisted masonry', areaFt2: 400 }, 500],
    // 18 · 0.6 · √1,000,000 = 10,800, over the most of 6,000
    [{ construction: 'fire-resistive', areaFt2: 1_000_000 }, 6000],
    // A quarter of 6,000, and at least 1,000.
    [{ construction: 'fire-resistive', areaFt2: 1_000_000, sprinklered: true }, 1500],
    [{ sprinklered: true }, 1000],
    [{ dwelling: true, nearestFt: 101 }, 500],
    [{ dwelling: true, nearestFt: 100 }, 750],
    [{ dwelling: true, nearestFt: 30 }, 1000],
    [{ dwelling: true, nearestFt: 10 }, 1500],
  ] as const)('%o: %s gpm', (given, neededGpm) => {
    expect(neededFlowGpm({ ...building, ...given })).toBe(neededGpm);
  });
});
