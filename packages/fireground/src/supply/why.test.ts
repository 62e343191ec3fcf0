import { describe, expect, it } from 'vitest';
import {
  chooseSupply,
  type HydrantAtHand,
  newHydrant,
  newRig,
  type RespondingRig,
  type Situation,
} from '../index.ts';

const engine = (number: number): RespondingRig => ({
  rig: newRig(`E${number}`, 'attack', { name: `Engine ${number}`, ratedGpm: 1500, intakes: 4 }),
  kind: 'engine',
  arrivesMin: 2 * number,
  hose: [{ hose: '5', lengthFt: 900 }],
  assistValve: false,
});

const hydrant = (number: number, lengthFt: number, testGpm: number, main?: string) => ({
  hydrant: newHydrant(`H-${number}`, {
    staticPsi: 70,
    residualPsi: 50,
    testGpm,
    ...(main !== undefined && { main }),
  }),
  steamer: true,
  lengthFt,
});

const situation = (hydrants: HydrantAtHand[]): Situation => ({
  title: 'Works',
  invented: true,
  scene: { name: 'Works', elevationFt: 0 },
  demandGpm: 1000,
  rigs: [engine(1), engine(2)],
  hydrants,
  waters: [],
  fillPlaces: [],
  department: {},
});

describe('why a way is first', () => {
  // Two weak hydrants side by side, of which nobody knows whether they share a main.
  const weak = [hydrant(1, 200, 650), hydrant(2, 300, 650)];

  it('says of hydrants that may share a main that they could fall short, not that they leave much', () => {
    const choice = chooseSupply(situation([...weak, hydrant(3, 1700, 3000, 'east main')]));
    const [first] = choice.ways;
    expect(first!.sources).toEqual(['H-3']);
    const both = choice.ways.find(
      ({ sources }) => sources.length === 2 && !sources.includes('H-3'),
    )!;
    expect(both).toMatchObject({ meetsDemand: true, littleToSpare: true });
    expect(both.marginGpm).toBeGreaterThan(100);
    expect(both.mains!.shared).toBeLessThan(1000);
    expect(choice.why).toMatch(
      /two hydrants would fall short, should the hydrants share a main\.$/,
    );
  });

  it('says of such a way, where it is first, on what its flow to spare hangs', () => {
    const { ways, why } = chooseSupply(situation(weak));
    expect(ways[0]!.mains).toMatchObject({ basis: 'not known' });
    expect(why).toMatch(/leaves \d+ gpm to spare where its hydrants do not share a main\.$/);
    expect(why).not.toContain('only ');
  });
});
