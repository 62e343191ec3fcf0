import { describe, expect, it } from 'vitest';
import { findPlaces } from './find-places.ts';

const places = [
  { name: 'Café Soleil', address: '3 Mill Lane', longitude: 0, latitude: 0.02 },
  { name: 'Mill', address: '9 Quay', longitude: 0, latitude: 0.01 },
  { name: 'Depot', address: '1 Mill Lane', longitude: 0, latitude: 0.03 },
];
const words = (place: (typeof places)[number]) => `${place.name} ${place.address}`;
const names = (asked: string, from: { longitude: number; latitude: number } | null) =>
  findPlaces(places, asked, words, from).map(({ place }) => place.name);

describe('finding places', () => {
  it('wants every word, in any case and without accents', () => {
    expect(names('cafe', null)).toEqual(['Café Soleil']);
    expect(names('LANE mill', null)).toEqual(['Café Soleil', 'Depot']);
    expect(names('harbour', null)).toEqual([]);
  });

  it('puts the nearest first', () => {
    expect(names('', { longitude: 0, latitude: 0.029 })).toEqual(['Depot', 'Café Soleil', 'Mill']);
  });

  it('measures along the meridian: 0.01° of latitude at the equator is 1,105.74 m (WGS 84)', () => {
    const [nearest] = findPlaces(places, '', words, { longitude: 0, latitude: 0 });
    expect(nearest?.place.name).toBe('Mill');
    expect(nearest?.awayFt).toBeCloseTo(1105.74 / 0.3048, 0);
  });
});
