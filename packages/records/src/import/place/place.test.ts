import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PlaceMapping } from '../mapping/mapping.ts';
import { readCoordinate } from './coordinate-text.ts';
import { readCrs } from './crs.ts';
import { placeOf } from './place.ts';
import { pointOf, ringArea } from './shapes.ts';
import { readWkt, writeWkt } from './wkt.ts';

const rad = (degrees: number, minutes: number, seconds: number) =>
  degrees + minutes / 60 + seconds / 3600;

function converted(crs: string, x: number, y: number): [number, number] {
  const read = readCrs(crs);
  if (!read.ok) throw new Error(read.reason);
  return read.system.toWgs84(x, y);
}

/** Metres between two places, on a sphere: fine for small ones. */
function metres([a, b]: [number, number], [c, d]: [number, number]): number {
  const perDegree = 111_195;
  return Math.hypot((a - c) * perDegree * Math.cos((b * Math.PI) / 180), (b - d) * perDegree);
}

const georgiaWest =
  'PROJCS["NAD_1983_StatePlane_Georgia_West_FIPS_1002_Feet",GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",2296583.333333333],PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-84.16666666666667],PARAMETER["Scale_Factor",0.9999],PARAMETER["Latitude_Of_Origin",30.0],UNIT["Foot_US",0.3048006096012192]]';

describe('coordinate systems', () => {
  it("agree with the worked example of IOGP Guidance Note 7-2 for the web's Mercator", () => {
    // "Popular Visualisation Pseudo Mercator" (from memory): 24°22'54.433"N 100°20'00.000"W.
    const found = converted('EPSG:3857', -11_169_055.58, 2_800_000.0);
    expect(metres(found, [-rad(100, 20, 0), rad(24, 22, 54.433)])).toBeLessThan(0.05);
  });

  it('agree with the example of swisstopo for the Swiss grid', () => {
    // "Approximate formulas for the transformation between Swiss projection coordinates and WGS84"
    // (from memory), good to a metre: 2 700 000, 1 100 000.
    const found = converted('EPSG:2056', 2_700_000, 1_100_000);
    expect(metres(found, [rad(8, 43, 49.79), rad(46, 2, 38.87)])).toBeLessThan(1.5);
  });

  it('are the same by EPSG code and by the text of a .prj file', () => {
    const [a, b] = [
      converted('EPSG:2240', 2_230_000, 1_370_000),
      converted(georgiaWest, 2_230_000, 1_370_000),
    ];
    expect(metres(a, b)).toBeLessThan(0.001);
  });

  it('put their false origin where their definition has it', () => {
    // Georgia West: 30°N on the meridian 84°10'W is 2,296,583.333 US survey feet east, 0 north.
    expect(metres(converted('EPSG:2240', 2_296_583.333, 0), [-rad(84, 10, 0), 30])).toBeLessThan(
      0.01,
    );
    expect(metres(converted('EPSG:25832', 500_000, 0), [9, 0])).toBeLessThan(0.01);
  });

  it.each(['EPSG:99999', 'EPSG:26771', 'EPSG:5773', 'nonsense', ''])(
    '%s is refused with a remedy',
    (crs) => {
      const read = readCrs(crs);
      expect(read.ok).toBe(false);
      expect(!read.ok && read.remedy).toContain('EPSG');
    },
  );

  it('that are degrees on WGS 84 change no digit', () => {
    expect(converted('EPSG:4326', 11.2647452, 49.5190175)).toEqual([11.2647452, 49.5190175]);
  });
});

describe('coordinates as text', () => {
  it.each([
    ['49.5272578', 'latitude', 49.5272578],
    ['49,5272578', 'latitude', 49.5272578],
    ['49°31\'38.1"N', 'latitude', rad(49, 31, 38.1)],
    ['N 49 31.635', 'latitude', rad(49, 31.635, 0)],
    ["49° 31.6'", 'latitude', rad(49, 31.6, 0)],
    ['84°23\'15"W', 'longitude', -rad(84, 23, 15)],
    ['84 23 15 W', 'longitude', -rad(84, 23, 15)],
    ['-84.38576', 'longitude', -84.38576],
    ['2,230,000.5', 'longitude', 2_230_000.5],
  ] as const)('%s is read', (text, axis, degrees) => {
    expect(readCoordinate(text, axis)).toBeCloseTo(degrees, 9);
  });

  it.each([
    ['49.5 N', 'longitude'],
    ['11 E', 'latitude'],
    ['-84 W', 'longitude'],
    ["49°61'", 'latitude'],
    ['here', 'latitude'],
    ['', 'latitude'],
  ] as const)('%s is no %s', (text, axis) => {
    expect(readCoordinate(text, axis)).toBeUndefined();
  });
});

const mapping: PlaceMapping = {
  geometry: false,
  longitude: 'x',
  latitude: 'y',
  crs: 'EPSG:4326',
  swapped: 'refuse',
  farOff: 'refuse',
  near: [-84.4, 33.8],
};
const at = (
  x: string | number | null,
  y: string | number | null,
  more: Partial<PlaceMapping> = {},
) => placeOf({ number: 1, values: { x, y } }, { ...mapping, ...more });
const code = (
  x: string | number | null,
  y: string | number | null,
  more?: Partial<PlaceMapping>,
) => {
  const place = at(x, y, more);
  return 'code' in place ? place.code : [place.longitude, place.latitude];
};

describe('projected coordinates with thousands apart', () => {
  it.each([
    ['5.934.123,10', 5_934_123.1],
    ['565.123,45', 565_123.45],
    ['5 934 123.1', 5_934_123.1],
    ['2,230,000.5', 2_230_000.5],
  ])('%s', (text, value) => {
    expect(readCoordinate(text, 'latitude')).toBe(value);
  });
});

describe('degrees, minutes and seconds', () => {
  it.each(['38-54-50', '38:54:50', '38 54 50 N'])('%s', (text) => {
    expect(readCoordinate(text, 'latitude')).toBeCloseTo(rad(38, 54, 50), 9);
  });
});

describe('places', () => {
  it('are taken as they stand where nothing speaks against them', () => {
    expect(code('-84.38', '33.76')).toEqual([-84.38, 33.76]);
  });

  it.each([
    ['33.76', '-84.38', 'place swapped'],
    ['33.76', '-104.38', 'place swapped'],
    ['0', '0', 'no place'],
    ['', '', 'no place'],
    [null, '33.76', 'no place'],
    ['200', '95', 'place out of range'],
    ['2230000', '1370000', 'place out of range'],
    ['-84.38', '43.76', 'place far off'],
    ['x', '33.76', 'value not understood'],
  ])('%s, %s: %s', (x, y, expected) => {
    expect(code(x, y)).toBe(expected);
  });

  it('are exchanged, or taken far off, only where the mapping says so', () => {
    expect(code('33.76', '-84.38', { swapped: 'exchange' })).toEqual([-84.38, 33.76]);
    expect(code('-84.38', '43.76', { farOff: 'take' })).toEqual([-84.38, 43.76]);
  });

  it('of a projection are converted, and refused where they cannot be of it', () => {
    const crs = 'EPSG:2240';
    expect(code('2,230,000.00', '1,370,000.00', { crs })).toEqual([
      expect.closeTo(-84.385765, 5),
      expect.closeTo(33.766039, 5),
    ]);
    expect(code('-84.38', '33.76', { crs })).toBe('place out of range');
    // The same in metres by mistake: off the state.
    expect(code('679705', '417577', { crs })).toBe('place out of range');
    expect(code('1', '2', { crs: 'EPSG:99999' })).toBe('place not converted');
  });

  it.each([
    ['33.76, -84.38'],
    ['(33.76, -84.38)'],
    ['POINT (-84.38 33.76)'],
    ['SRID=4326;POINT Z (-84.38 33.76 120)'],
    ['33.76 N, 84.38 W'],
    ['{"type":"Point","coordinates":[-84.38,33.76]}'],
  ])('in one column, %s, are read', (text) => {
    const place = placeOf(
      { number: 1, values: { p: text } },
      { geometry: false, point: 'p', crs: 'EPSG:4326', swapped: 'refuse', farOff: 'refuse' },
    );
    expect(place).toMatchObject({ longitude: -84.38, latitude: 33.76 });
  });
});

describe('well-known text', () => {
  const position = fc
    .tuple(
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: -90, max: 90, noNaN: true }),
    )
    .map(([x, y]) => [x + 0, y + 0]);
  it('says the same after being written and read', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(position, { minLength: 1, maxLength: 5 }), {
          minLength: 1,
          maxLength: 3,
        }),
        (coordinates) => {
          const geometry = { type: 'Polygon' as const, coordinates };
          expect(readWkt(writeWkt(geometry))).toEqual(geometry);
        },
      ),
    );
  });
});

describe('well-known text as others write it', () => {
  // OGC 06-103r4, clause 7.2: dimensions behind the type, EMPTY, collections.
  it.each([
    'POINT (-77.01 38.91)',
    'POINT Z (-77.01 38.91 15.5)',
    'POINTZ(-77.01 38.91 15.5)',
    'POINTM (-77.01 38.91 4)',
    'POINT ZM (-77.01 38.91 15.5 4)',
    'SRID=4326;POINT(-77.01 38.91)',
    'GEOMETRYCOLLECTION (POINT (-77.01 38.91))',
  ])('%s is a point', (text) => {
    expect(readWkt(text)).toEqual({ type: 'Point', coordinates: [-77.01, 38.91] });
  });

  it('of several geometries is none', () => {
    expect(readWkt('GEOMETRYCOLLECTION (POINT (1 2), POINT (3 4))')).toBeUndefined();
  });

  const at = (text: string) =>
    placeOf(
      { number: 1, values: { geom: text } },
      { geometry: false, point: 'geom', crs: 'EPSG:4326', swapped: 'refuse', farOff: 'refuse' },
    );

  it('that states its coordinate system is in that', () => {
    // The worked example of IOGP Guidance Note 7-2 above.
    const found = at('SRID=3857;POINT(-11169055.58 2800000.00)');
    if ('code' in found) throw new Error(found.reason);
    expect(
      metres([found.longitude, found.latitude], [-rad(100, 20, 0), rad(24, 22, 54.433)]),
    ).toBeLessThan(0.05);
  });

  it('EMPTY is no place', () => {
    expect(at('POINT EMPTY')).toMatchObject({ code: 'no place' });
  });

  it.each([
    '12 Elm Street\nSpringfield, ST\n(38.91, -77.01)',
    '(38.91, -77.01)',
    '{"latitude":"38.91","longitude":"-77.01","human_address":"{}"}',
    '{"type":"Point","coordinates":[-77.01,38.91]}',
  ])('or another text of a place: %s', (text) => {
    expect(at(text)).toMatchObject({ longitude: -77.01, latitude: 38.91 });
  });
});

describe('coordinates that cannot be right', () => {
  const at = (longitude: string, latitude: string, near?: [number, number]) =>
    placeOf(
      { number: 1, values: { x: longitude, y: latitude } },
      {
        geometry: false,
        longitude: 'x',
        latitude: 'y',
        crs: 'EPSG:4326',
        swapped: 'refuse',
        farOff: 'refuse',
        ...(near && { near }),
      },
    );

  it('are those of a town south of 60° S: the two are exchanged', () => {
    // The Antarctic Treaty (1959), article VI: its area, without towns, is all south of 60° S.
    expect(at('38.91', '-77.01')).toMatchObject({ code: 'place swapped' });
    expect(at('-68.3', '-54.8')).toMatchObject({ longitude: -68.3 });
  });

  it('with a sign lost are told so', () => {
    expect(at('77.01', '38.91', [-77.02, 38.9])).toMatchObject({
      code: 'place far off',
      reason: expect.stringContaining('other sign'),
    });
  });
});

describe('the point of a polygon', () => {
  it('is inside it, even where its middle is not', () => {
    // A U: its middle lies in the gap.
    const ring = [
      [0, 0],
      [9, 0],
      [9, 9],
      [8, 9],
      [8, 1],
      [1, 1],
      [1, 9],
      [0, 9],
      [0, 0],
    ];
    const [x, y] = pointOf({ type: 'Polygon', coordinates: [ring] })!;
    expect(y).toBe(4.5);
    expect((x > 0 && x < 1) || (x > 8 && x < 9)).toBe(true);
    expect(Math.abs(ringArea(ring))).toBe(25);
  });
});
