import { buffer } from 'node:stream/consumers';
import { attackSettings, forwardLay } from '@plugside/fireground';
import {
  type ChartLine,
  type PaperOptions,
  type PumpChartRequest,
  pumpChartFor,
  renderPumpChart,
} from '@plugside/paper';
import { recordSchemas } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import { demoRecords } from './demo-records.ts';
import { outside, overlaps, readBack, rowOf, textOf } from './read-back.ts';

const printed: PaperOptions = { printedAt: new Date('2026-11-25T12:00:00Z') };
const rig = recordSchemas.rigs.parse({
  name: 'Engine 7',
  ratedGpm: 1500,
  hose: [{ size: '5', lengthFt: 1000 }],
});
const fog = (ratedGpm: number) => ({ kind: 'fog', ratedGpm, ratedPsi: 100 }) as const;

/** Pressures at the chart's lengths for one line of it. */
const chartOf = (line: ChartLine, given: Partial<PumpChartRequest> = {}) =>
  pumpChartFor({ rig, lines: [line], ...given });

describe('a pump chart holds to printed pump discharge pressures', () => {
  it('pdp_handline: 174.75 psi for 200 ft of C 15.5 at 150 gpm a floor up ("Florida pump-operations exam answers")', () => {
    const chart = chartOf({ kind: 'hand line', hose: '1-3/4', nozzle: fog(150) });
    const at200 = chart.attack[0]!.cells[chart.lengthsFt.indexOf(200)]!;
    expect(at200.pdpPsi + chart.perFloorPsi).toBeCloseTo(174.75, 1);
  });

  it('pdp_wye: 169.75 psi for 200 ft of 2½ in and 150 ft at C 10, 100 psi at the nozzle ("Calculating Friction Loss in Hose Lays", City of Rohnert Park)', () => {
    const origin = { kind: 'department', text: 'as printed' } as const;
    const chart = chartOf(
      {
        kind: 'wyed lines',
        leader: '2-1/2',
        hose: '1-3/4',
        lengthFt: 150,
        lines: 2,
        nozzle: fog(150),
      },
      { department: { coefficients: { '1-3/4': { coefficient: 10, origin } } } },
    );
    const at200 = chart.attack[0]!.cells[chart.lengthsFt.indexOf(200)]!;
    // The slides take no loss in a wye under 350 gpm; the chart's takes 10 psi at 350 gpm.
    const wyePsi = 10 * (300 / 350) ** 2;
    expect(at200.pdpPsi - wyePsi).toBeCloseTo(169.75, 1);
  });

  it('pdp_master_stream: 136.4 psi for two 300 ft lines of 3 in and a 1½ in tip 20 ft up ("Math Formulas" driver/operator study cards)', () => {
    const chart = chartOf({
      kind: 'master stream',
      hose: '3',
      lines: 2,
      nozzle: { kind: 'smooth-bore', tipIn: 1.5, ratedPsi: 80 },
    });
    const row = chart.attack[0]!;
    const at300 = row.cells[chart.lengthsFt.indexOf(300)]!;
    expect(row.flowGpm).toBeCloseTo(597.7, 0);
    // The cards take 25 psi in the device at any flow, as the chart does, and 0.5 psi a foot of rise.
    expect(at300.pdpPsi + 20 * 0.5).toBeCloseTo(136.4, 0);
  });

  it('pdp_standpipe: 136.8 psi for a 265.8 gpm line 70 ft up ("Math Formulas" driver/operator study cards)', () => {
    const carries = recordSchemas.rigs.parse({
      name: 'Engine 7',
      ratedGpm: 1500,
      hose: [{ size: '2-1/2', lengthFt: 400 }],
    });
    const chart = pumpChartFor({ rig: carries });
    const row = chart.connections.find(({ kind }) => kind === 'standpipe')!;
    expect(row).toMatchObject({ lines: 2, hose: '2-1/2', lengthFt: 100 });
    expect(row.flowGpm).toBeCloseTo(265.8, 0);
    // Floor 8 is 70 ft up. The cards add 25 psi for the system at any flow, as the chart does, its
    // riser besides (0.374 · 2.658² · 0.8 = 2.1 psi), and take 0.5 psi a foot.
    const pdpPsi = row.cells[chart.floors.indexOf(8)]!.pdpPsi;
    expect(pdpPsi + 2.1 - 70 * 0.434 + 70 * 0.5).toBeCloseTo(136.8, 0);
  });

  it('has beside it the rule of thumb: 150 psi and 5 for each floor, 200 from floor 10; 150 for sprinklers ("Sprinkler/standpipe connection pressures")', () => {
    const chart = pumpChartFor({
      rig: recordSchemas.rigs.parse({ name: 'Engine 7', hose: [{ size: '3', lengthFt: 400 }] }),
    });
    const [standpipe, sprinkler] = chart.connections;
    const rule = chart.floors.map((floor, at) => [floor, standpipe!.rulePsi[at]]);
    expect(rule).toContainEqual([2, 160]);
    expect(rule).toContainEqual([6, 180]);
    expect(rule).toContainEqual([12, 200]);
    expect(sprinkler!.rulePsi).toEqual([150]);
  });

  it('loses 25 psi in the standpipe whatever the hand line takes ("Engineer’s Test 2014" study cards)', () => {
    // Two lines of 3 in, 100 ft: 0.8·(133/100)² = 1.4 psi; 150 ft of 2½ in: 2·2.658²·1.5 = 21.2;
    // floor 2 is 10 ft up: 4.3; the tip 50.
    const chart = pumpChartFor({
      rig: recordSchemas.rigs.parse({ name: 'Engine 7', hose: [{ size: '3', lengthFt: 400 }] }),
    });
    const [standpipe] = chart.connections;
    const byHand = 50 + 21.2 + 4.34 + 25 + 1.41;
    expect(standpipe!.cells[chart.floors.indexOf(2)]!.pdpPsi).toBeCloseTo(byHand, 0);
  });

  it.each([
    ['5', 1000, 185, 2062.5, '"Relay Pumping Operations" lesson, Firehouse'],
    ['4', 1000, 185, 825, 'relay table, from memory'],
    ['4', 500, 185, 3300, 'relay table, from memory'],
  ] as const)(
    'relay_distance: %s in hose at %s gpm needs %s psi over %s ft (%s)',
    (size, gpm, psi, lengthFt, _source) => {
      const carries = recordSchemas.rigs.parse({
        name: 'Engine 7',
        ratedGpm: 1500,
        hose: [{ size, lengthFt: 1000 }],
      });
      const chart = pumpChartFor({ rig: carries, supplyLengthsFt: [500, lengthFt] });
      const row = chart.supply[0]!.rows.find(({ flowGpm }) => flowGpm === gpm)!;
      expect(row.cells[1]!.pdpPsi).toBeCloseTo(psi, 0);
    },
  );
});

describe('a pump chart', () => {
  it('asks no pump for less than the department’s least, and says where it was raised', async () => {
    // 200 ft of 5 in at 500 gpm: 20 + 0.08·25·2 = 24 psi.
    const chart = pumpChartFor({ rig });
    expect(chart.supply[0]!.rows[0]!.cells[0]).toMatchObject({ pdpPsi: 50, over: ['M'] });
    const own = pumpChartFor({ rig, department: { limits: { leastDischargePsi: 70 } } });
    for (const { cells } of [...own.attack, ...own.connections, ...own.supply[0]!.rows]) {
      for (const { pdpPsi } of cells) expect(pdpPsi).toBeGreaterThanOrEqual(70);
    }
    const pages = await readBack(renderPumpChart(own, printed));
    expect(pages.map(textOf).join(' ')).toContain(
      'M raised to the least that a pump is set to (70 psi)',
    );
    expect(pages.map(textOf).join(' ')).not.toContain('23 psi');
  });

  it('marks each pressure that the next pump’s intake stands at rest past its relief, or past the limit where none is on record', async () => {
    const carries = recordSchemas.rigs.parse({
      name: 'Engine 7',
      ratedGpm: 1500,
      hose: [{ size: '3', lengthFt: 1000 }],
    });
    const receivers = [
      { name: 'Engine 2', intakeReliefPsi: 150 },
      { name: 'Engine 4', intakeReliefPsi: 200 },
      { name: 'Tender 1' },
    ];
    const chart = pumpChartFor({ rig: carries, receivers });
    expect(chart.intakeMost).toMatchObject({ psi: 150, relief: true });
    // 500 gpm through 3 in: 20 + 0.8·25·L/100: 140 psi over 600 ft, 180 over 800 ft.
    const row = chart.supply[0]!.rows.find(({ flowGpm }) => flowGpm === 500)!;
    const at = (lengthFt: number) => row.cells[chart.supply[0]!.lengthsFt.indexOf(lengthFt)]!;
    expect(at(600)).toMatchObject({ over: [] });
    expect(at(800)).toMatchObject({ over: ['I'] });
    const text = (await readBack(renderPumpChart(chart, printed))).map(textOf).join(' ');
    expect(text).toContain('Its relief opens at 150 psi');
    expect(text).toContain('I over the next pump’s intake relief (150 psi), which opens');
    expect(text).toContain('180');
    const unknown = pumpChartFor({ rig: carries, receivers: [{ name: 'Tender 1' }] });
    const cells = unknown.supply[0]!.rows.find(({ flowGpm }) => flowGpm === 500)!.cells;
    expect(cells[unknown.supply[0]!.lengthsFt.indexOf(800)]!.over).toEqual(['I']);
    const asked = (await readBack(renderPumpChart(unknown, printed))).map(textOf).join(' ');
    expect(asked).toContain('Its relief is not on record');
  });

  it('marks what the hose, the pump and its rating do not allow', () => {
    const chart = pumpChartFor({ rig, supplyLengthsFt: [200, 3000] });
    const [near, far] = chart.supply[0]!.rows.find(({ flowGpm }) => flowGpm === 1500)!.cells;
    expect(near!.over).toEqual([]);
    expect(far!.over).toContain('H');
    const small = recordSchemas.rigs.parse({ ...rig, ratedGpm: 500 });
    const rows = pumpChartFor({ rig: small }).supply[0]!.rows;
    expect(rows.find(({ flowGpm }) => flowGpm === 750)!.cells[0]!.over).toContain('R');
    const least = recordSchemas.rigs.parse({ ...rig, ratedGpm: 250 });
    const beyond = pumpChartFor({ rig: least }).supply[0]!.rows;
    expect(beyond.find(({ flowGpm }) => flowGpm === 500)!.cells[0]!.over).toContain('P');
  });

  it('prints what a fresh solve gives, and no pressure over the limit of the hose', async () => {
    const records = await demoRecords();
    const engine = (await records.all('rigs')).find(({ name }) => name === 'Engine 2')!;
    const chart = pumpChartFor({ rig: engine, department: records.department, nozzles: [] });
    const [front, back] = await readBack(renderPumpChart(chart, printed));
    const fresh = [100, 150, 200, 250, 300, 350, 400].map((lengthFt) => {
      const nozzle = fog(150);
      const plan = forwardLay({ attackLines: [{ hose: '1-3/4', lengthFt, nozzle }] });
      return `${Math.round(attackSettings({ ...plan, department: records.department }).pdpPsi)}`;
    });
    expect(rowOf(front!, '1¾ in')).toEqual(['150', ...fresh]);
    const over = chart.supply.flatMap(({ rows }) =>
      rows.flatMap(({ cells }) => cells.filter(({ over: marks }) => marks.includes('H'))),
    );
    expect(over.length).toBeGreaterThan(0);
    expect(back!.runs.filter(({ text }) => text === '—')).toHaveLength(over.length);
  });

  it('takes the department’s own coefficients and says so', async () => {
    const records = await demoRecords();
    const engine = (await records.all('rigs')).find(({ name }) => name === 'Engine 1')!;
    const own = pumpChartFor({ rig: engine, department: records.department });
    const book = pumpChartFor({ rig: engine });
    expect(own.attack[0]!.cells[2]!.pdpPsi).toBeLessThan(book.attack[0]!.cells[2]!.pdpPsi);
    const pages = await readBack(renderPumpChart(own, printed));
    expect(pages.map(textOf).join(' ')).toContain('Own hose test, 5 readings, 2025-05-20');
  });

  it('counts hose in service alone, and tells past which length it takes another rig’s', async () => {
    const id = '01JZ00000000000000000000R1';
    const carries = { ...rig, id };
    const length = (more: object = {}) =>
      recordSchemas.hose.parse({ name: 'L', size: '5', lengthFt: 100, rigId: id, ...more });
    const retired = (count: number) =>
      Array.from({ length: count }, () => length({ retiredOn: '2026-04-14' }));
    const sound = (count: number) => Array.from({ length: count }, () => length());
    const today = '2026-11-25';
    // 1,000 ft by its record; 3 lengths of 100 ft retired leave 700 ft.
    const chart = pumpChartFor({ rig: carries, lengths: [...retired(3), ...sound(7)], today });
    expect(chart.supply[0]!.carriedFt).toBe(700);
    const text = (await readBack(renderPumpChart(chart, printed))).map(textOf).join(' ');
    expect(text).toContain('Right of the line: past the 700 ft of it aboard');
    expect(text).toContain('3 of 10 retired or failed');
    expect(pumpChartFor({ rig: carries, lengths: retired(10), today }).supply).toEqual([]);
    expect(pumpChartFor({ rig: carries, today }).supply[0]!.carriedFt).toBe(1000);
  });

  it.each([
    ['lengthsFt', { lengthsFt: [100, -5] }],
    ['lengthsFt', { lengthsFt: [100] }],
    ['supplyLengthsFt', { supplyLengthsFt: [200, Number.NaN] }],
  ])('refuses %s that make no sense and says what may stand there', (field, given) => {
    expect(() => pumpChartFor({ rig, ...given })).toThrow(RangeError);
    expect(() => pumpChartFor({ rig, ...given })).toThrow(new RegExp(`${field}.*allowed`));
  });
});

describe('a pump chart on paper', async () => {
  const records = await demoRecords();
  const engine = (await records.all('rigs')).find(({ name }) => name === 'Engine 1')!;
  const nozzles = await records.all('nozzles');
  const longest = 'Engine of the Quarry and Wholesale Market Station with the Long Name '
    .repeat(2)
    .slice(0, 120);

  it.each([
    ['letter', 'us', engine.name],
    ['a4', 'si', engine.name],
    ['letter', 'si', longest],
    ['a4', 'us', longest],
  ] as const)('keeps every text in its place: %s, %s, %s', async (paper, units, name) => {
    const chart = pumpChartFor({
      rig: { ...engine, name },
      nozzles,
      department: records.department,
      invented: true,
      units,
    });
    const pages = await readBack(
      renderPumpChart(chart, { ...printed, paper, units, department: longest }),
    );
    expect(pages).toHaveLength(2);
    for (const [index, page] of pages.entries()) {
      if (units === 'si') expect(textOf(page)).not.toMatch(/\d (psi|gpm|ft|in)\b/);
      expect(overlaps(page)).toEqual([]);
      expect(outside(page)).toEqual([]);
      expect(page.images).toBe(0);
      expect(page.widthPt).toBeCloseTo(paper === 'letter' ? 612 : 595.28, 1);
      const text = textOf(page);
      expect(text).toContain(`Page ${index + 1} of 2`);
      expect(text).toContain('2026-11-25');
      expect(text).toContain('INVENTED FOR PRACTICE');
      expect(text).toContain('Defer to your department');
    }
  });

  it('has its figures at 14 pt or larger', async () => {
    const chart = pumpChartFor({ rig: engine, nozzles, department: records.department });
    const [front] = await readBack(renderPumpChart(chart, printed));
    const shown = new Set(
      chart.attack.flatMap(({ cells }) => cells.map(({ pdpPsi }) => `${Math.round(pdpPsi)}`)),
    );
    const sizes = front!.runs
      .filter(({ text, box }) => shown.has(text) && box[0] > 230 && box[1] > 130 && box[3] < 330)
      .map(({ sizePt }) => sizePt);
    expect(sizes.length).toBeGreaterThan(30);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(14);
  });

  it('is the same to the byte when printed at the same moment', async () => {
    const chart = pumpChartFor({ rig: engine, nozzles });
    const once = await buffer(renderPumpChart(chart, printed));
    const again = await buffer(renderPumpChart(chart, printed));
    expect(again.equals(once)).toBe(true);
  });
});
