import { expect, it } from 'vitest';
import { chance } from './chance.ts';
import { placeHydrants } from './hydrant-places.ts';
import { fedFrom, mainNames } from './main-names.ts';
import { solvedMains } from './solved-mains.ts';
import { distanceFt } from './town-map.ts';
import { planTown, waterSources } from './town-plan.ts';

const town = planTown();
const hydrants = placeHydrants(town, chance(102));
const names = mainNames(town, hydrants);
const mains = solvedMains(town, waterSources(town), { demandShare: 1, roughnessShare: 1 });
const DRAWN_GPM = 600;

it('hydrants of one name draw on each other: the solved mains say how much', () => {
  mains.draw([]);
  const rest = new Map(hydrants.map((one) => [one, mains.pressurePsi(one)]));
  const fall = (at: (typeof hydrants)[number]) => rest.get(at)! - mains.pressurePsi(at);
  const shares: number[] = [];
  for (const one of hydrants.filter((hydrant, at) => names.has(hydrant) && at % 5 === 0)) {
    const near = hydrants.filter(
      (two) =>
        two !== one && names.get(two) === names.get(one) && distanceFt(one.at, two.at) < 1200,
    );
    mains.draw([{ hydrant: one, flowGpm: DRAWN_GPM }]);
    const ownFall = fall(one);
    const falls = near.map((two) => [two, fall(two)] as const);
    for (const [two, withOne] of falls) {
      mains.draw([{ hydrant: two, flowGpm: DRAWN_GPM }]);
      shares.push(withOne / Math.min(ownFall, fall(two)));
    }
  }
  shares.sort((one, two) => one - two);
  expect(shares.length).toBeGreaterThan(20);
  expect(shares[Math.floor(shares.length / 2)]).toBeGreaterThan(0.7);
  // Gauges of a weak hydrant far out on a strong feeder share least.
  expect(shares[Math.floor(shares.length / 10)]).toBeGreaterThan(0.5);
});

it('a dead end and the feeder that it hangs on draw on each other: the solved mains say so', () => {
  mains.draw([]);
  const rest = new Map(hydrants.map((one) => [one, mains.pressurePsi(one)]));
  const shares: number[] = [];
  const hanging = hydrants.filter((one) => fedFrom(one, names.get(one)) !== undefined);
  for (const one of hanging.filter((_, at) => at % 5 === 0)) {
    const feeder = fedFrom(one, names.get(one))!;
    const near = hydrants.filter(
      (two) => names.get(two) === feeder && distanceFt(one.at, two.at) < 1200,
    );
    for (const two of near) {
      mains.draw([{ hydrant: two, flowGpm: DRAWN_GPM }]);
      const [own, other] = [two, one].map((at) => rest.get(at)! - mains.pressurePsi(at));
      shares.push(other! / own!);
    }
  }
  shares.sort((one, two) => one - two);
  expect(shares.length).toBeGreaterThan(20);
  // Most of what the one that draws loses: far from mains that add up, where the other loses nothing.
  expect(shares[Math.floor(shares.length / 2)]).toBeGreaterThan(0.5);
  expect(shares[Math.floor(shares.length / 10)]).toBeGreaterThan(0.25);
});

it('dead ends and the feeders have names, the grid of the town has none', () => {
  const zones = new Map(hydrants.map((one) => [one.zone, 0]));
  for (const hydrant of names.keys()) zones.set(hydrant.zone, zones.get(hydrant.zone)! + 1);
  expect(zones.get('industrial')).toBe(hydrants.filter(({ zone }) => zone === 'industrial').length);
  expect(
    zones.get('centre')! / hydrants.filter(({ zone }) => zone === 'centre').length,
  ).toBeLessThan(0.2);
  expect([...new Set(names.values())].some((name) => name.endsWith(' dead end'))).toBe(true);
});
