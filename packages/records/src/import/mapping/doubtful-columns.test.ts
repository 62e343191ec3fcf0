import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSource } from '../source/read-source.ts';
import { guessMapping } from './guess-mapping.ts';
import type { ImportKind, Mapping } from './mapping.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-doubtful-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function guess(kind: ImportKind, text: string, name = 'list.csv'): Promise<Mapping> {
  const path = join(folder, name);
  await writeFile(path, text);
  return guessMapping(kind, await readSource(path));
}

const field = ({ fields }: Mapping, name: string) => fields.find((one) => one.field === name);

const tests = (head: string, value: string) =>
  guess(
    'flow-tests',
    `hydrant,date,static psi,residual psi,${head}\n1,2024-03-31,62,44,${value}\n2,2024-03-31,60,40,${value}\n`,
  );
const hydrants = (head: string, values: readonly string[]) =>
  guess(
    'hydrants',
    `hydrant,lat,lon,${head}\n${values.map((one, at) => `H-${at},38.9${at},-77.0,${one}`).join('\n')}\n`,
  );

describe('a unit in the name of a column', () => {
  it.each([
    ['Flow (m3/s)', '0.0667', 'm³/s'],
    ['Flow m³/min', '4', 'm³/min'],
    ['Flow (cfs)', '2.36', 'ft³/s'],
    ['Flow (igpm)', '883', 'Imp gpm'],
    ['FLOWGPM', '1060', 'gpm'],
  ])('%s', async (head, value, unit) => {
    expect(field(await tests(head, value), 'statedFlowGpm')).toMatchObject({ unit });
  });

  it.each([
    ['Static (m)', 'mH2O'],
    ['STATIC_M', 'mH2O'],
    ['Static (m head)', 'mH2O'],
    ['Static (ft)', 'ftH2O'],
    ['Static [kg/cm²]', 'kg/cm²'],
  ])('%s is a pressure by the height of water', async (head, unit) => {
    const mapping = await guess(
      'flow-tests',
      `hydrant,date,${head},residual psi\n1,2024-03-31,43,30\n`,
    );
    expect(field(mapping, 'staticPsi')).toMatchObject({ unit });
  });

  it.each([
    ['Elevation (m MSL)', 'm'],
    ['Elevation (ft NAVD88)', 'ft'],
  ])('%s stands before what it is above', async (head, unit) => {
    expect(field(await hydrants(head, ['37', '38']), 'elevationFt')).toMatchObject({ unit });
  });

  it('kPa is no k beside Pa', async () => {
    const mapping = await guess(
      'flow-tests',
      'hydrant,date,Static_kPa,Residual kPa\n1,2024-03-31,430,310\n',
    );
    expect(field(mapping, 'staticPsi')).toMatchObject({ unit: 'kPa' });
    expect(field(mapping, 'residualPsi')).toMatchObject({ unit: 'kPa' });
  });

  it('that is not known is asked about, and its numbers are not taken for another', async () => {
    const mapping = await tests('Flow (hogshead/day)', '9000');
    expect(field(mapping, 'statedFlowGpm')).toBeUndefined();
    expect(mapping.notices.join(' ')).toContain('"hogshead/day" is no unit that is known');
  });

  it('of another measure makes it another thing', async () => {
    expect(field(await hydrants('Main (psi)', ['60', '62']), 'mainIn')).toBeUndefined();
    expect(field(await hydrants('Main Pressure', ['60', '62']), 'mainIn')).toBeUndefined();
  });
});

describe('pressures without a unit', () => {
  const units = async (heads: string, ...rows: string[]) => {
    const mapping = await guess('flow-tests', `hydrant,date,${heads}\n${rows.join('\n')}\n`);
    return ['staticPsi', 'residualPsi', 'flowing[0].pitotPsi'].map(
      (one) => field(mapping, one)?.unit,
    );
  };
  const rows = ['1,2024-03-31,62,12,8', '2,2024-03-31,60,11,9'];

  it('are in one unit: a low residual and a pitot reading are not in bar beside a static in psi', async () => {
    expect(await units('static,residual,pitot', ...rows)).toEqual(['psi', 'psi', 'psi']);
    expect(await units('static (psi),residual,pitot', ...rows)).toEqual(['psi', 'psi', 'psi']);
  });

  it('are all in bar, or in kPa, where the greatest are', async () => {
    const bar = ['1,2024-03-31,4.3,3.1,0.6', '2,2024-03-31,4.2,3.0,0.7'];
    expect(await units('static,residual,pitot', ...bar)).toEqual(['bar', 'bar', 'bar']);
    const kPa = ['1,2024-03-31,430,110,60', '2,2024-03-31,420,100,70'];
    expect(await units('static,residual,pitot', ...kPa)).toEqual(['kPa', 'kPa', 'kPa']);
  });
});

describe('a list in metric units', () => {
  it('has bare heights in metres, and a list in inches in feet', async () => {
    const metric = await hydrants('main size (mm),elevation', ['150,37', '200,38']);
    expect(field(metric, 'elevationFt')).toMatchObject({ unit: 'm' });
    expect(metric.notices.join(' ')).toContain('taken as m, as');
    const inches = await hydrants('main size,elevation', ['6,121', '8,122']);
    expect(field(inches, 'elevationFt')).toMatchObject({ unit: 'ft' });
    const both = await hydrants('main size (mm),steamer (in),elevation', ['150,4.5,121']);
    expect(field(both, 'elevationFt')).toMatchObject({ unit: 'ft' });
  });

  it('has a bare flow asked about, and not taken for gpm', async () => {
    const row = (flow: string) => `1,2024-03-31,430,310,${flow}`;
    const heads = 'hydrant,date,static kPa,residual kPa,flow';
    const bare = await guess('flow-tests', `${heads}\n${row('66')}\n`);
    expect(field(bare, 'statedFlowGpm')).toBeUndefined();
    expect(bare.unused).toContain('flow');
    expect(bare.notices.join(' ')).toContain('Say whether they are L/min, L/s or m³/h');
    const own = await guess('flow-tests', `${heads}\n${row('66 L/s')}\n`);
    expect(field(own, 'statedFlowGpm')?.columns).toEqual(['flow']);
  });
});

describe('sizes of mains', () => {
  it('all below one are metres, and said so', async () => {
    const mapping = await hydrants('main size', ['0.2', '0.15', '0.3']);
    expect(field(mapping, 'mainIn')).toMatchObject({ unit: 'm' });
    expect(mapping.notices.join(' ')).toContain('taken as m ');
  });

  it('under the head "main" are sizes, and words there are which main it is', async () => {
    expect(field(await hydrants('main', ['8', '6']), 'mainIn')?.columns).toEqual(['main']);
    expect(field(await hydrants('main', ['High St', 'Low St']), 'main')?.columns).toEqual(['main']);
  });
});

describe('a point before three digits', () => {
  it('separates thousands in a file with decimal commas', async () => {
    const mapping = await guess(
      'hydrants',
      'hydrant;lat;lon;elevation (m)\n1;38,91;-77,01;1.045\n2;38,92;-77,02;1.046\n',
    );
    expect(field(mapping, 'elevationFt')).toMatchObject({ decimal: 'comma' });
    expect(mapping.notices.join(' ')).toContain('separate thousands');
  });

  it('is a decimal point where another column has one', async () => {
    const mapping = await guess(
      'hydrants',
      'hydrant;lat;lon;elevation (m)\n1;38.91;-77.01;1.045\n2;38.92;-77.02;1.046\n',
    );
    expect(field(mapping, 'elevationFt')?.decimal).toBeUndefined();
  });
});

describe('columns that say whether a hydrant is in service', () => {
  it('are told of where their words are not known', async () => {
    const mapping = await hydrants('status', ['A', 'A', 'R']);
    expect(field(mapping, 'status')).toBeUndefined();
    expect(mapping.notices.join(' ')).toContain('its words are not known (A, R)');
    expect(mapping.notices.join(' ')).toContain('all count as in service');
  });

  it('are told of where two of them contradict each other', async () => {
    const mapping = await hydrants('active flag,out of service', ['1,N', '1,Y', '0,Y']);
    expect(mapping.notices.join(' ')).toContain(
      'says otherwise in 1 of the rows looked at (row 3)',
    );
    const agreed = await hydrants('active flag,out of service', ['1,N', '0,Y', '0,Y']);
    expect(agreed.notices.join(' ')).not.toContain('otherwise');
  });
});

describe('other columns of service', () => {
  it('that hold a day or a reason alone are told of', async () => {
    const mapping = await hydrants('out of service date,oos reason', [',', '2024-01-31,stem']);
    expect(field(mapping, 'status')).toBeUndefined();
    // By the column in front a notice goes where its column is given a meaning by hand.
    expect(mapping.notices.map((one) => one.split(':')[0])).toEqual([
      'out of service date',
      'oos reason',
    ]);
    expect(mapping.notices.join(' ')).toContain('may tell which hydrants are out of service');
    expect((await hydrants('main size', ['8', '6'])).notices).toEqual([]);
  });

  it.each(['Working', 'In/Out of Service', 'Condition Status'])('%s is one', async (head) => {
    const words = head.startsWith('In') ? ['In', 'Out'] : ['Y', 'N'];
    expect(field(await hydrants(head, words), 'status')?.columns).toEqual([head]);
  });
});

describe("the list's own id", () => {
  it.each([
    ['OBJECTID,GlobalID,FACILITYID', '1,{A},HY-007', '2,{B},HY-008', 'FACILITYID'],
    ['ID,HYDRANT_ID', '1,007', '2,008', 'HYDRANT_ID'],
    ['ID,GlobalID', '1,{A}', '2,{B}', 'ID'],
    ['ID,HYDRANT_ID', 'H-1,1', 'H-2,2', 'ID'],
    ['Hydrant', '007', '008', 'Hydrant'],
  ])('among %s', async (heads, one, two, id) => {
    const mapping = await guess(
      'hydrants',
      `${heads},lat,lon\n${one},38.91,-77.01\n${two},38.92,-77.02\n`,
    );
    expect(mapping.idColumn).toBe(id);
  });

  it('is not the number that a program gave a feature', async () => {
    const features = [1, 2].map((id) => ({
      type: 'Feature',
      id,
      properties: { FACILITYID: `HY-00${id}` },
      geometry: { type: 'Point', coordinates: [-77, 38] },
    }));
    const text = JSON.stringify({ type: 'FeatureCollection', features });
    expect((await guess('hydrants', text, 'x.geojson')).idColumn).toBe('FACILITYID');
  });
});

describe('columns with places', () => {
  it.each([
    ['GPS_Lat', 'GPS_Long'],
    ['Latitude (DD)', 'Longitude (DD)'],
    ['hydrant_lat', 'hydrant_long'],
    ['GPSLatitude', 'GPSLongitude'],
    ['y_lat', 'x_long'],
    ['Latitude / N', 'Longitude / W'],
    ['Site Latitude', 'Site Longitude'],
  ])('%s and %s are a pair', async (latitude, longitude) => {
    const mapping = await guess(
      'hydrants',
      `Hydrant,${latitude},${longitude}\n1,38.91,-77.01\n2,38.92,-77.02\n`,
    );
    expect(mapping.place).toMatchObject({ latitude, longitude });
  });

  it('of other things that begin alike are none', async () => {
    const mapping = await guess('hydrants', 'Hydrant,Lateral,Long side\n1,6,20\n2,6,20\n');
    expect(mapping.place?.latitude).toBeUndefined();
  });

  it.each([
    ['Lat/Long', undefined],
    ['Coordinates (lat, lon)', undefined],
    ['geo_point_2d', undefined],
    ['Map Location', undefined],
    ['Lon / Lat', 'longitude first'],
  ])('%s holds both', async (point, pointOrder) => {
    const place = pointOrder ? '-77.01, 38.91' : '38.91, -77.01';
    const mapping = await guess('hydrants', `Hydrant,"${point}"\n1,"${place}"\n`);
    expect(mapping.place).toMatchObject({ point, ...(pointOrder && { pointOrder }) });
    expect(mapping.place?.pointOrder).toBe(pointOrder);
  });
});

describe('streets', () => {
  it('of a class for walkers are ways on foot', async () => {
    // TIGER/Line shapefiles, "MAF/TIGER Feature Class Code Definitions": S1400 local, S1710 walkway.
    const line = (x: number) => `"LINESTRING (${x} 38.91, ${x} 38.92)"`;
    const mapping = await guess(
      'streets',
      `WKT,NAME,MTFCC\n${line(-77)},Elm St,S1400\n${line(-76)},Mill Walk,S1710\n`,
    );
    expect(field(mapping, 'footOnly')).toMatchObject({ columns: ['MTFCC'] });
    expect(field(mapping, 'footOnly')?.words).toMatchObject({ s1710: true, '*': false });
    expect(field(mapping, 'class')?.columns).toEqual(['MTFCC']);
  });
});
