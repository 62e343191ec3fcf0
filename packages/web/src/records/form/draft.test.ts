import { toInside } from '@plugside/fireground';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fieldTables } from '../fields/field-tables.ts';
import { limitsAt } from '../fields/limits.ts';
import { type Draft, type Drafts, readForm, rowDrafts, shownText, type Values } from './draft.ts';
import { fieldText } from './field-text.ts';

const typed = (text: string, system: 'us' | 'si' = 'us'): Draft => ({ is: 'text', text, system });

const hydrant: Values = {
  name: 'H-1',
  longitude: -71.1,
  latitude: 42.3,
  mainIn: 8,
  owner: 'Town water',
  sideOutlets: 2,
  sideOutletIn: 2.5,
  status: 'in service',
  steamerLoss: { lossPsi: 5, atGpm: 1000 },
};

const read = (drafts: Drafts, before: Values | null = hydrant) =>
  readForm('hydrants', fieldTables.hydrants, drafts, before, 'us');

describe('a form of a record', () => {
  it('that nobody touched changes nothing', () => {
    expect(read({})).toEqual({ changes: {}, problems: {} });
  });

  it('writes what is another than before, and clears what was emptied', () => {
    expect(read({ mainIn: typed('6'), owner: typed(' '), name: typed('H-1') }).changes).toEqual({
      mainIn: 6,
      owner: null,
    });
  });

  it('takes a unit that is written with the number: DN 200 is 200 mm, 7.874 in', () => {
    const { changes } = read({ mainIn: typed('200 mm') });
    // 1 in = 25.4 mm exactly (NIST SP 811).
    expect(changes.mainIn).toBeCloseTo(200 / 25.4, 9);
  });

  it('counts a bare number in the unit that was shown when it was typed', () => {
    const { changes } = read({ mainIn: typed('200', 'si') });
    expect(changes.mainIn).toBeCloseTo(200 / 25.4, 9);
    const shown = shownText(
      fieldTables.hydrants.find(({ field }) => field === 'mainIn')!,
      typed('8', 'us'),
      undefined,
      'si',
      limitsAt('hydrants', ['mainIn']),
    );
    expect(shown).toBe('203');
  });

  it('names the value, what is allowed and the remedy', () => {
    const { changes, problems } = read({ mainIn: typed('500'), latitude: typed('95') });
    expect(changes).toEqual({});
    expect(problems.mainIn).toBe(
      '500 in is not allowed: more than 0, up to 120 in. Give a value in that range, or leave it empty.',
    );
    expect(problems.latitude).toBe('95° is not allowed: −90 to 90°. Give a value in that range.');
    expect(read({ mainIn: typed('0') }).problems.mainIn).toContain('more than 0');
    expect(read({ sideOutlets: typed('2.5') }).problems.sideOutlets).toContain('whole number');
    expect(read({ mainIn: typed('wide') }).problems.mainIn).toContain('"wide');
  });

  it('tells of a needed field that is empty, in a new record and in an old one', () => {
    expect(read({ name: typed('') }).problems.name).toContain('Name is missing');
    expect(Object.keys(read({}, null).problems).sort()).toEqual(['latitude', 'longitude', 'name']);
  });

  it('leaves a value alone whose text says the same, rounded as it may be', () => {
    const measured = { ...hydrant, elevationFt: 58.6123 };
    const text = fieldText(
      fieldTables.hydrants.find(({ field }) => field === 'elevationFt')!,
      58.6123,
      'us',
    );
    expect(read({ elevationFt: typed(text) }, measured).changes).toEqual({});
  });

  it('keeps values that belong together whole', () => {
    const cells = (lossPsi: string, atGpm: string): Drafts => ({
      steamerLoss: { is: 'parts', cells: { lossPsi: typed(lossPsi), atGpm: typed(atGpm) } },
    });
    expect(read(cells('7', '1000')).changes.steamerLoss).toEqual({ lossPsi: 7, atGpm: 1000 });
    expect(read(cells('', '')).changes.steamerLoss).toBeNull();
    expect(read(cells('7', '')).problems['steamerLoss.atGpm']).toContain('missing');
  });
});

describe('rows of a form', () => {
  const rig: Values = {
    name: 'Engine 1',
    hose: [
      { size: '5', lengthFt: 1000, where: 'supply bed' },
      { size: '1-3/4', lengthFt: 200 },
    ],
  };
  const readRig = (drafts: Drafts) => readForm('rigs', fieldTables.rigs, drafts, rig, 'us');

  it('change in one cell and keep the others', () => {
    const [first, second] = rowDrafts(rig.hose);
    const rows = [first!, { ...second!, cells: { lengthFt: typed('150') } }];
    expect(readRig({ hose: { is: 'rows', rows } }).changes.hose).toEqual([
      { size: '5', lengthFt: 1000, where: 'supply bed' },
      { size: '1-3/4', lengthFt: 150 },
    ]);
  });

  it('are left out while nothing is written in them, and told where half is', () => {
    const rows = rowDrafts(rig.hose);
    const blank = { key: 9, before: {}, cells: {} };
    expect(readRig({ hose: { is: 'rows', rows: [...rows, blank] } })).toEqual({
      changes: {},
      problems: {},
    });
    const half = { key: 9, before: {}, cells: { lengthFt: typed('100') } };
    const { problems } = readRig({ hose: { is: 'rows', rows: [...rows, half] } });
    expect(Object.keys(problems)).toEqual(['hose[2].size']);
  });
});

describe('text of a field', () => {
  it('reads back what it shows, for every quantity of every kind', () => {
    const specs = fieldTables.hydrants.filter(({ type }) => type.is === 'quantity');
    fc.assert(
      fc.property(
        fc.constantFrom(...specs),
        fc.constantFrom('us' as const, 'si' as const),
        fc.integer({ min: 8, max: 96 }).map((sixteenths) => sixteenths / 16),
        (spec, system, value) => {
          const text = fieldText(spec, value, system);
          const again = readForm(
            'hydrants',
            [spec],
            { [spec.field]: { is: 'text', text: `${text} `, system } },
            { [spec.field]: undefined },
            system,
          );
          const found = again.changes[spec.field] as number;
          expect(fieldText(spec, found, system)).toBe(text);
        },
      ),
    );
  });

  it('reads a list of settings', () => {
    const spec = fieldTables.nozzles.find(({ field }) => field === 'settingsGpm')!;
    const of = (text: string, system: 'us' | 'si' = 'us') =>
      readForm('nozzles', [spec], { settingsGpm: typed(text, system) }, {}, system);
    expect(of('95, 125, 150 ,200').changes.settingsGpm).toEqual([95, 125, 150, 200]);
    expect(of('400', 'si').changes.settingsGpm).toEqual([toInside(400, 'flow', 'L/min')]);
    expect(of('95, lots').problems.settingsGpm).toBeDefined();
  });

  it('reads a street, and says which line is none of it', () => {
    const spec = fieldTables.streets.find(({ field }) => field === 'path')!;
    const of = (text: string) => readForm('streets', [spec], { path: typed(text) }, {}, 'us');
    expect(of('-71.1, 42.3\n-71.2 42.4\n').changes.path).toEqual([
      [-71.1, 42.3],
      [-71.2, 42.4],
    ]);
    expect(of('-71.1, 42.3\n42.4').problems.path).toContain('Line 2, “42.4”');
    expect(of('-71.1, 42.3').problems.path).toContain('two places');
  });
});
