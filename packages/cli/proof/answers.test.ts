import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Plugside, preparePlugside } from './run-plugside.ts';
import { unbalanced } from './xml-balance.ts';

// Each run is a process of its own, and a machine may be busy.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let plugside: Plugside;
beforeAll(async () => {
  plugside = await preparePlugside();
});
afterAll(() => plugside.remove());

const coldStore = 'examples/cold-store.yaml';

/**
 * Hydrant 62/44/1060, 900 ft of 5 in, 35 ft up, default valve and hookup. Answers by the EPANET
 * toolkit, an independent solver: alone, boosted, boosted with a 3 in and a 5 in side line.
 */
const independent = { aloneGpm: 505.602, boostedGpm: 1304.999, sideLinesGpm: 1394.842 };
/** Gallons to litres as in NIST Special Publication 811. */
const LITRES = 3.785412;
const WITHIN_GPM = 0.5;

const near = (found: number, expected: number) =>
  expect(Math.abs(found - expected), `${found} against ${expected}`).toBeLessThan(WITHIN_GPM);

describe('most', () => {
  it('answers a plan from new as the independent solver does, and names what binds', () => {
    const flags = ['--hydrant', '62/44/1060', '--length', '900 ft', '--rise', '35'];
    const made = plugside.run(['new', 'boosted-at-hydrant', ...flags, '-o', 'most.yaml']);
    expect(made).toMatchObject({ status: 0, stdout: 'Wrote most.yaml.\n' });
    const { answer, plan } = plugside.json(['most', 'most.yaml']);
    near(answer.flowGpm, independent.boostedGpm);
    expect(answer.binding.map(({ kind }: { kind: string }) => kind)).toEqual(['booster intake']);
    expect(plan.invented).toBe(false);
    const { stdout } = plugside.run(['most', 'most.yaml']);
    expect(stdout.split('\n')[2]).toMatch(/^1,305 gpm reaches Attack engine/);
    expect(stdout).toMatch(/Stopped by Booster's intake: 10 psi, limit 10 psi\./);
    expect(stdout.trimEnd()).toMatch(/Training and planning aid\.[^\n]*(\n[^\n]+)?$/);
  });

  it('with side lines is stopped by the hose', () => {
    const { answer } = plugside.json(['most', coldStore]);
    near(answer.flowGpm, independent.sideLinesGpm);
    expect(answer.binding[0].kind).toBe('hose pressure');
  });

  it('tells the same flow in litres', () => {
    const { stdout } = plugside.run(['most', coldStore, '--units', 'si']);
    const litres = Math.round(independent.sideLinesGpm * LITRES).toLocaleString('en-US');
    expect(stdout).toContain(`${litres} L/min reaches Engine 3`);
    // The published figures at the end stay in the units they were printed in.
    const [figures = ''] = stdout.split('What the numbers rest on');
    expect(figures).not.toMatch(/\b(psi|gpm|ft|ft\/s|lbf)\b/);
  });

  it('offers only changes that bring more', () => {
    const { improvements } = plugside.json(['most', coldStore]);
    expect(improvements.length).toBeGreaterThan(0);
    for (const { flowGpm, gainGpm } of improvements) {
      near(flowGpm - gainGpm, independent.sideLinesGpm);
      expect(gainGpm).toBeGreaterThan(0);
    }
  });

  it('writes its settings into a plan that then flows so', () => {
    expect(plugside.run(['most', coldStore, '-w', 'set-most.yaml']).stdout).toContain(
      'Wrote set-most.yaml.',
    );
    const engine = plugside
      .json(['now', 'set-most.yaml'])
      .answer.state.rigs.find(({ id }: { id: string }) => id === 'E7');
    expect(engine.pdpPsi).toBeCloseTo(185, 1);
  });
});

describe('set', () => {
  it('meets a demand below the greatest flow and says what each pump holds', () => {
    const { status, stdout } = plugside.run(['set', coldStore, '--demand', '1200 gpm']);
    expect(status).toBe(0);
    expect(stdout).toMatch(/For 1,200 gpm at Engine 3: set Engine 7 to \d+ psi/);
  });

  it('says how much is missing of one above it, with exit code 1', () => {
    const { status, stdout } = plugside.run(['set', coldStore, '--demand', '1500', '--json']);
    expect(status).toBe(1);
    const { answer } = JSON.parse(stdout);
    near(answer.shortfallGpm, 1500 - independent.sideLinesGpm);
    expect(answer.possible).toBe(false);
  });

  it('reads litres', () => {
    const { answer } = plugside.json(['set', coldStore, '--demand', '4000 L/min']);
    expect(answer.demandGpm).toBeCloseTo(4000 / LITRES, 2);
  });
});

describe('compare', () => {
  it('sets hydrant pressure alone beside the boosted lay, and finds where boosting pays', () => {
    const { answer } = plugside.json(['compare', coldStore, '--demand', '500']);
    near(answer.unassisted.flowGpm, independent.aloneGpm);
    near(answer.boosted.flowGpm, independent.sideLinesGpm);
    // 506 gpm go through 900 ft alone, so 500 gpm go a little further.
    expect(answer.boostPays).toBe('from length');
    expect(answer.boostPaysFromFt).toBeGreaterThan(900);
    expect(answer.boostPaysFromFt).toBeLessThan(1000);
  });
});

describe('sweep and curves', () => {
  it('fall with length and pass through the known point', () => {
    const args = ['--vary', 'lay-length', '--from', '300', '--to', '1500', '--step', '300'];
    const { rows } = plugside.json(['sweep', coldStore, ...args]).answer;
    expect(rows.map(({ value }: { value: number }) => value)).toEqual([300, 600, 900, 1200, 1500]);
    near(rows[2].flowGpm, independent.sideLinesGpm);
    for (let at = 1; at < rows.length; at++)
      expect(rows[at].flowGpm).toBeLessThanOrEqual(rows[at - 1].flowGpm);
  });

  it('give spreadsheet rows of equal length with plain numbers', () => {
    const values = ['--vary', 'hose', '--values', '4, 5'];
    const rows = plugside
      .run(['sweep', coldStore, ...values, '--csv'])
      .stdout.trim()
      .split('\n');
    expect(rows).toHaveLength(3);
    expect(rows[2]).toMatch(/^5 in,1395,/);
  });

  it('end where the greatest flow is', () => {
    const { curves } = plugside.json(['curves', coldStore]).answer;
    near(curves[0].mostGpm, independent.aloneGpm);
    near(curves[1].mostGpm, independent.sideLinesGpm);
  });
});

describe('profile', () => {
  it('draws a well-formed picture with the plan in it', () => {
    const { status } = plugside.run(['profile', coldStore, '-o', 'cold.svg']);
    expect(status).toBe(0);
    const svg = readFileSync(join(plugside.folder, 'cold.svg'), 'utf8');
    expect(svg).toMatch(/^<\?xml version="1.0" encoding="UTF-8"\?>\n<svg /);
    expect(unbalanced(svg)).toBeNull();
    expect(svg).toContain('Hydrant 114');
    expect(svg).toContain('1,395 gpm');
  });

  it('falls along the hose by what friction and height take', () => {
    const { profile } = plugside.json(['profile', coldStore]).answer;
    const { stations } = profile.supply[0];
    const last = stations.length - 1;
    const intake = stations.findIndex(
      ({ piece, kind }: { piece: string; kind: string }) => piece === 'E3' && kind === 'intake',
    );
    expect(intake).toBeGreaterThan(0);
    expect(intake).toBeLessThanOrEqual(last);
    // C·(Q/100)²·(L/100) and 0.434 psi/ft over the last 900 ft.
    const fall = 0.08 * 13.94842 ** 2 * 9 + 0.434 * 35;
    expect(stations[intake - 1].psi - stations[intake].psi).toBeCloseTo(fall, 1);
  });
});

describe('plans written and read', () => {
  it('are the same plan after YAML, JSON and back, through a pipe too', () => {
    const json = plugside.run(['convert', coldStore]).stdout;
    const yaml = plugside.run(['convert', '-', '--to', 'yaml'], json).stdout;
    expect(yaml).toContain('length: 900 ft');
    expect(plugside.run(['convert', '-'], yaml).stdout).toBe(json);
  });

  it('are the same plan when they are written in SI units', () => {
    const si = plugside.run(['convert', coldStore, '--to', 'yaml', '--units', 'si']).stdout;
    // 900 ft of 0.3048 m (NIST SP 811).
    expect(si).toContain('length: 274.32 m');
    expect(si).not.toMatch(/\d (ft|psi|gpm|gal|in)\b/);
    // The same plan: the same most water.
    const most = (plan: string) => plugside.run(['most', '-'], plan).stdout;
    expect(most(si)).toBe(most(plugside.run(['convert', coldStore, '--to', 'yaml']).stdout));
  });

  it('come from every pattern and answer', () => {
    const { patterns } = plugside.json(['new']).answer;
    expect(patterns.length).toBeGreaterThanOrEqual(13);
    for (const { id } of patterns) {
      const plan = plugside.run(['new', id]).stdout;
      const { status, stdout } = plugside.run(['most', '-'], plan);
      expect(status, `${id}: ${stdout}`).toBe(0);
      expect(stdout, id).toMatch(/\(made up for practice\)\n\n[\d,]+ gpm reaches/);
    }
  });
});

describe('JSON', () => {
  it.each([
    [
      'most',
      ['answer', 'coefficientBand', 'deferral', 'improvements', 'plan', 'plugside', 'units'],
    ],
    ['set', ['answer', 'deferral', 'plan', 'plugside', 'units']],
    ['now', ['answer', 'deferral', 'plan', 'plugside', 'units']],
    ['compare', ['answer', 'deferral', 'plan', 'plugside', 'units']],
    ['check', ['answer', 'deferral', 'plugside', 'units']],
  ])('of %s has the keys that docs/command-line.md lists', (command, keys) => {
    const document = plugside.json([command, coldStore]);
    expect(Object.keys(document).sort()).toEqual(keys);
    expect(document.plugside).toEqual({ command, format: 1 });
    expect(document.units).toMatchObject({ flow: 'gpm (US)', pressure: 'psi gauge' });
  });

  it('is in inside units whatever the reader is shown', () => {
    const us = plugside.json(['most', coldStore]);
    const si = plugside.json(['most', coldStore, '--units', 'si']);
    expect(si.answer.flowGpm).toBe(us.answer.flowGpm);
  });

  it('holds a plan that reads back', () => {
    const { answer } = plugside.json(['most', coldStore]);
    expect(plugside.run(['check', '-'], JSON.stringify(answer.plan)).status).toBe(0);
  });
});
