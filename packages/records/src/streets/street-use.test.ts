import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { LonLat } from './ellipsoid.ts';
import { hoseRoutes } from './hose-routes.ts';
import { buildStreetNetwork } from './street-network.ts';
import { type ClassedStreet, hoseStreets, rigRoads, takesHose } from './street-use.ts';

/** A square: a motorway straight across, a street the long way round, a path between. */
const at = (x: number, y: number): LonLat => [-30 + x * 0.001, 0.001 * y];
const square: ClassedStreet[] = [
  { name: 'Long way', class: 'residential', path: [at(0, 0), at(0, 2), at(4, 2), at(4, 0)] },
  { name: 'M', class: 'motorway', path: [at(0, 0), at(4, 0)] },
  { name: 'Path', class: 'footway', footOnly: true, path: [at(0, 1), at(4, 1), at(4, 0)] },
];
const place = ([longitude, latitude]: LonLat) => ({ longitude, latitude });
const lengthFt = (streets: Iterable<ClassedStreet>) =>
  Math.round(
    hoseRoutes(buildStreetNetwork(streets), place(at(0, 0)), [place(at(4, 0))])[0]!.lengthFt,
  );

describe('what a street is good for', () => {
  it('is no hose on a motorway: the lay goes the longer way', () => {
    const straight = lengthFt(square.slice(1, 2));
    expect(lengthFt(square)).toBe(straight);
    // Twice two of the four steps more: 0.002 of latitude (110,574 m a degree at the equator) twice,
    // 0.004 of longitude (111,320 m) once.
    const roundM = 0.004 * 110574 + 0.004 * 111320;
    const round = lengthFt(hoseStreets(square.slice(0, 2)));
    expect(round / (roundM / 0.3048)).toBeCloseTo(1, 3);
  });

  it('is no road for rigs where there are only feet', () => {
    const network = buildStreetNetwork(rigRoads(square.slice(2)));
    expect(network.nearestPoint(-30, 0)).toBeUndefined();
  });

  it('keeps each street’s number', () => {
    const point = buildStreetNetwork(hoseStreets(square)).nearestPoint(-29.998, 0.001);
    expect(point?.street).toBe(2);
  });

  it('leaves out the motorway lines of a town map, and no other', () => {
    const url = new URL('../../test-data/streets.geojson', import.meta.url);
    const { features } = JSON.parse(readFileSync(url, 'utf8')) as {
      features: { properties: { highway: string } }[];
    };
    const out = features.filter(({ properties }) => !takesHose({ class: properties.highway }));
    const motorways = features.filter(({ properties }) => /^motorway/.test(properties.highway));
    expect(out).toEqual(motorways);
    expect(takesHose({ class: 'Motorway_Link' })).toBe(false);
    expect(takesHose({ class: 'trunk' })).toBe(true);
    expect(takesHose({})).toBe(true);
  });
});
