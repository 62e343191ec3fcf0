import { describe, expect, it } from 'vitest';
import { prove } from './prove.ts';

/** How many of the 100,000 that `npm run prove` runs. */
const COUNT = 20_000;

describe('random networks', () => {
  it(`${COUNT} settle, and each answer keeps every law when checked from the description alone`, () => {
    const proof = prove(1, COUNT);
    expect(proof.failures).toEqual([]);
    expect(proof.networks).toBe(COUNT);
    // Or the check would have had little to check.
    expect(proof.refused).toBeLessThan(0.03 * COUNT);
    expect(proof.slow).toBeGreaterThan(0);
  }, 600_000);

  it.each([
    [48578, 'a line whose flow is a ten-thousandth of its parallel’s'],
    [99420, 'thirty-five pumps, most at their wall'],
    [152419, 'a check that falls shut with nothing behind it to hold it shut'],
    [300509, 'a pump at the very floor that another holds'],
    [413143, 'a long booster line beside a check that passes nearly all'],
    [965, 'a pump in a pocket whose level falls'],
    [1446, 'a pump against a shut valve, its pressure thrown far off on the way'],
    [12764, 'a ring that is all but closed'],
    [13953, 'a pump that feeds its own intake behind a check'],
    [20421, 'two pumps of one capacity at their walls in line'],
    [34068, 'a relay of pumps that chase each other'],
    [4307, 'pumps on the edge between passing and standing still'],
    [654982, 'an automatic nozzle straight on a main'],
    [1499631, 'a pump that passes all but what it could add'],
    [102865, 'corners met one after the other in time'],
  ])('seed %i: %s', (seed) => {
    expect(prove(seed, 1).failures).toEqual([]);
  });

  it('refuses a path with no loss between two held pressures', () => {
    expect(prove(453969, 1)).toMatchObject({ failures: [], refused: 1 });
  });
});
