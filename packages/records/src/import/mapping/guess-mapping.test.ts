import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSource } from '../source/read-source.ts';
import { guessMapping } from './guess-mapping.ts';
import { type ImportKind, importKinds, type Mapping } from './mapping.ts';

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'plugside-guess-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function guess(kind: ImportKind, text: string, name = 'list.csv'): Promise<Mapping> {
  const path = join(folder, name);
  await writeFile(path, text);
  return guessMapping(kind, await readSource(path));
}

/** `mainIn: MAIN_SIZE in` */
const lines = (mapping: Mapping) =>
  Object.fromEntries(
    mapping.fields.map(({ field, columns, unit }) => [
      field,
      [...columns, ...(unit ? [unit] : [])].join(' '),
    ]),
  );

describe('guessMapping', () => {
  it('knows a flow test list by its trade names', async () => {
    const mapping = await guess(
      'flow-tests',
      'TEST_ID,HYD_NO,DATE_TESTED,STATIC_PSI,RESID_PSI,PITOT_PSI,OUTLET_SIZE,TOTAL_FLOW_GPM,FLOW_AT_20_PSI,TESTER\n' +
        '1,H-1,3/31/2024,60,40,20,2.5,750,1000,Crew A\n2,H-2,4/1/2024,70,50,22,2.5,790,1200,Crew B\n',
    );
    expect(lines(mapping)).toEqual({
      hydrantId: 'HYD_NO',
      testedOn: 'DATE_TESTED',
      staticPsi: 'STATIC_PSI psi',
      residualPsi: 'RESID_PSI psi',
      'flowing[0].pitotPsi': 'PITOT_PSI psi',
      'flowing[0].outletIn': 'OUTLET_SIZE in',
      statedFlowGpm: 'TOTAL_FLOW_GPM gpm',
      by: 'TESTER',
    });
    // A flow worked out for 20 psi is no reading.
    expect(mapping.unused).toEqual(['FLOW_AT_20_PSI']);
    expect(mapping.idColumn).toBe('TEST_ID');
    expect(mapping.dateOrder).toBe('month first');
  });

  it('takes units from heads, in any writing', async () => {
    const mapping = await guess(
      'flow-tests',
      'hydrant;date;Static Pressure (kPa);residual [bar];Flow L/s\nH-1;2024-03-31;410;2,8;50\nH-2;2024-03-31;420;2,9;55\n',
    );
    expect(lines(mapping)).toMatchObject({
      staticPsi: 'Static Pressure (kPa) kPa',
      residualPsi: 'residual [bar] bar',
      statedFlowGpm: 'Flow L/s L/s',
    });
    expect(mapping.fields.find(({ field }) => field === 'residualPsi')?.decimal).toBe('comma');
  });

  it('takes units from the size of values, and says that it does', async () => {
    const rows = Array.from(
      { length: 20 },
      (_, at) => `H-${at},${[80, 100, 150][at % 3]},${300 + at},11.${at},49.5`,
    );
    const mapping = await guess(
      'hydrants',
      `hydrant,main size,elevation,lon,lat\n${rows.join('\n')}\n`,
    );
    expect(lines(mapping)).toMatchObject({ mainIn: 'main size mm', elevationFt: 'elevation m' });
    expect(mapping.notices.join(' ')).toContain(
      'main size: its numbers carry no unit and are taken as mm',
    );
    expect(mapping.notices.join(' ')).toContain(
      "elevation: its numbers carry no unit and are taken as m, as the list's other units are metric",
    );
  });

  it.each(['Main ID', 'WATER_MAIN_NAME', 'feeder main', 'PIPE_ID'])(
    'tells which main (%s) from its size',
    async (column) => {
      const mapping = await guess(
        'hydrants',
        `hydrant,${column},main size,lon,lat\nH-1,W-12,8,-84.1,33.1\nH-2,W-12,8,-84.2,33.2\n`,
      );
      expect(lines(mapping)).toMatchObject({ main: column, mainIn: 'main size in' });
    },
  );

  it('knows the lift at a water source, in either unit', async () => {
    for (const [column, unit] of [
      ['Lift (ft)', 'ft'],
      ['draft_lift_m', 'm'],
    ]) {
      const mapping = await guess(
        'water-sources',
        `name,type,${column},lon,lat\nMill pond,pond,3.5,-84.1,33.1\nRiver,river,4,-84.2,33.2\n`,
      );
      expect(lines(mapping)).toMatchObject({ liftFt: `${column} ${unit}` });
    }
  });

  it('knows names that a shapefile cut off after ten letters', async () => {
    const mapping = await guess(
      'hydrants',
      'HYDRANTNUM,MAINDIAMET,STEAMEROUT,X,Y\n1,6,4.5,-84.1,33.1\n2,8,4.5,-84.2,33.2\n',
    );
    expect(lines(mapping)).toMatchObject({
      name: 'HYDRANTNUM',
      mainIn: 'MAINDIAMET in',
      steamerIn: 'STEAMEROUT in',
    });
    expect(mapping.place).toMatchObject({ longitude: 'X', latitude: 'Y' });
  });

  it('says which coordinate system is wanted where there is none', async () => {
    const mapping = await guess('hydrants', 'id,x,y\n1,2230000,1370000\n2,2230100,1370100\n');
    expect(mapping.notices.join(' ')).toContain('map projection');
  });

  it('asks for day or month first only where dates leave it open', async () => {
    const list = (date: string) => `hydrant,date,static,residual\nH-1,${date},60,40\n`;
    expect((await guess('flow-tests', list('03/04/2024'))).notices.join(' ')).toContain(
      'say which',
    );
    expect((await guess('flow-tests', list('13/04/2024'))).dateOrder).toBe('day first');
    expect((await guess('flow-tests', list('2024-04-03'))).notices).toEqual([]);
  });

  it('says what every record needs and no column gives', async () => {
    const mapping = await guess('flow-tests', 'hydrant,static\nH-1,60\n');
    expect(mapping.notices.join(' ')).toContain('"Tested on"');
    expect(mapping.notices.join(' ')).toContain('"Residual"');
  });

  it('knows the keys of OpenStreetMap, and takes the rows of the kind alone', async () => {
    const file = fileURLToPath(new URL('../../../test-data/hydrants.geojson', import.meta.url));
    const source = await readSource(file);
    const mapping = guessMapping('hydrants', source);
    expect(lines(mapping)).toMatchObject({
      mainIn: 'fire_hydrant:diameter mm',
      type: 'fire_hydrant:type',
    });
    expect(mapping.only).toEqual([{ column: 'emergency', values: ['fire_hydrant'] }]);
    expect(mapping.idColumn).toBe('id');
    expect(guessMapping('stations', source).only).toEqual([
      { column: 'amenity', values: ['fire_station'] },
    ]);
  });

  it('is plain data for every kind', async () => {
    for (const kind of importKinds) {
      const mapping = await guess(kind, 'id,name,lon,lat\n1,A,11,49\n');
      expect(JSON.parse(JSON.stringify(mapping))).toEqual(mapping);
    }
  });
});
