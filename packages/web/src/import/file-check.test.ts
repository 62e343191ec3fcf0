import { describe, expect, it } from 'vitest';
import { fileProblem, kindFromName, sizeText } from './file-check.ts';

const MB = 1024 * 1024;

describe('fileProblem', () => {
  it.each(['list.csv', 'LIST.CSV', 'a.b.geojson', 'roads.zip', 'x.tsv', 'y.txt', 'z.json'])(
    'takes %s',
    (name) => expect(fileProblem({ name, size: 10 })).toBeNull(),
  );

  it.each([
    ['hydrants.xlsx', 'Save the sheet as CSV'],
    ['roads.shp', 'into one zip file'],
    ['roads.kml', 'Export the layer'],
    ['hydrants', 'has no ending'],
    ['photo.jpeg', 'Choose another file'],
  ])('refuses %s and says what to do', (name, told) => {
    expect(fileProblem({ name, size: 10 })).toContain(told);
  });

  it('refuses an empty file and one over 200 MB, and takes one of 200 MB', () => {
    expect(fileProblem({ name: 'a.csv', size: 0 })).toContain('empty');
    expect(fileProblem({ name: 'a.csv', size: 200 * MB })).toBeNull();
    const told = fileProblem({ name: 'a.csv', size: 201 * MB });
    expect(told).toContain('a.csv is 201 MB; the most is 200 MB');
  });
});

describe('kindFromName', () => {
  it.each([
    ['Hydrants_2026-11.csv', 'hydrants'],
    ['hydrant flow tests.csv', 'flow-tests'],
    ['FLOWTEST.csv', 'flow-tests'],
    ['dry_hydrants.geojson', 'water-sources'],
    ['Building Footprints.zip', 'buildings'],
    ['Parcels.zip', 'buildings'],
    ['street_centerlines.geojson', 'streets'],
    ['fire-stations.json', 'stations'],
    ['apparatus.csv', 'rigs'],
  ])('%s holds %s', (name, kind) => expect(kindFromName(name)).toBe(kind));

  it('makes nothing of a name that says nothing, or of words inside others', () => {
    expect(kindFromName('export (3).csv')).toBeNull();
    expect(kindFromName('rightofway.csv')).toBeNull();
  });
});

it('says sizes in KB and MB', () => {
  expect(sizeText(12)).toBe('1 KB');
  expect(sizeText(2048)).toBe('2 KB');
  expect(sizeText(12.3 * MB)).toBe('12.3 MB');
  expect(sizeText(200 * MB)).toBe('200 MB');
});
