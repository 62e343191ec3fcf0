import { describe, expect, test } from 'vitest';
import { boostedAtHydrant } from '../patterns/boosted-at-hydrant.ts';
import type { ReadIssue } from './issue.ts';
import { readPlan } from './read-plan.ts';
import { writePlan } from './write-plan.ts';

/** A sound plan; the tests break one line of it at a time. */
const sound = `plugside: 1
title: Mill Lane
scene: E3
hydrants:
  - id: H1
    elevation: 100 ft
    static: 62 psi
    residual: 44 psi
    flow: 1060 gpm
rigs:
  - id: E7
    role: booster
    elevation: 100 ft
    rated: 1500 gpm
    setting: 120 psi
  - id: E3
    role: attack
    elevation: 135 ft
    rated: 1500 gpm
    setting: 150 psi
appliances:
  - id: V1
    kind: assist-valve
    sits-on: H1.steamer
    handle: boost
lines:
  - {id: suction, from: V1.pump-suction, to: E7.intake1, hose: 5, length: 25 ft}
  - {id: discharge, from: E7.discharge1, to: V1.pump-discharge, hose: 5, length: 25 ft}
  - id: lay
    from: V1.supply
    to: E3.intake1
    hose: 5 in
    length: 900 ft
  - id: attack1
    from: E3.discharge1
    to: N1.inlet
    hose: 1-3/4
    length: 200 ft
nozzles:
  - id: N1
    kind: fog
    pressure: 100 psi
    flow: 150 gpm
`;

function issuesOf(text: string): ReadIssue[] {
  const reading = readPlan(text);
  return reading.ok ? [] : reading.issues;
}

const lineOf = (part: string) => sound.split('\n').findIndex((row) => row.includes(part)) + 1;

test('the sound plan is read, with heights of valve and nozzle from what feeds them', () => {
  const reading = readPlan(sound);
  expect(reading).toMatchObject({ ok: true, notices: [] });
  if (!reading.ok) return;
  expect(reading.plan.appliances[0]?.elevationFt).toBe(100);
  expect(reading.plan.nozzles[0]?.elevationFt).toBe(135);
  expect(reading.plan.lines.map((line) => line.hose)).toEqual(['5', '5', '5', '1-3/4']);
});

describe('one slip at a time', () => {
  // what stands there, what is put there, path, parts of the message
  test.each<[string, string, string, string[]]>([
    ['plugside: 1', 'plugside: 3', 'plugside', ['version 3', 'reads 1', 'Update Plugside']],
    ['plugside: 1', 'plugside: one', 'plugside', ['"one" is not a version']],
    ['plugside: 1', 'plugside: 0', 'plugside', ['0 is not a version']],
    ['title: Mill Lane', 'titel: Mill Lane', 'titel', ['"titel"', 'did you mean "title"?']],
    ['scene: E3', 'scene: E9', 'scene', ['no rig "E9"', 'E7, E3']],
    ['scene: E3', 'scene: H1', 'scene', ['"H1" is a hydrant, not a rig']],
    ['id: H1', 'id: H 1', 'hydrants[0].id', ['"H 1" cannot be an id', 'letters, digits']],
    ['static: 62 psi', 'static: 62 pis', 'hydrants[0].static', ['"pis" is not a unit', 'bar']],
    ['static: 62 psi', 'static: .nan', 'hydrants[0].static', ['NaN is not a pressure']],
    ['static: 62 psi', 'static: .inf', 'hydrants[0].static', ['Infinity is not a pressure']],
    ['static: 62 psi', 'static: 62000', 'hydrants[0].static', ['62,000 psi', '1 to 500 psi']],
    ['static: 62 psi', 'static:', 'hydrants[0].static', ['nothing is written']],
    ['residual: 44 psi', 'residual: 62 psi', 'hydrants[0].residual', ['not below static 62 psi']],
    ['residual: 44 psi', 'residual: 5 bar', 'hydrants[0].residual', ['not below static 62 psi']],
    ['flow: 1060 gpm', 'flow: 0 gpm', 'hydrants[0].flow', ['0 gpm is below 1 gpm', '20,000 gpm']],
    ['role: booster', 'role: bosster', 'rigs[0].role', ['did you mean "booster"?', 'attack']],
    ['setting: 120 psi', 'setting: fast', 'rigs[0].setting', ['fast', 'throttled', 'idle']],
    ['setting: 120 psi', 'setting: throttled 3', 'rigs[0].setting', ['0.3 to 1.1']],
    ['kind: assist-valve', 'kind: valve', 'appliances[0].kind', ['no kind "valve"', 'wye']],
    [
      'sits-on: H1.steamer',
      'sits-on: H1.side1',
      'appliances[0].sits-on',
      ['does not sit on the side outlet 1'],
    ],
    [
      'sits-on: H1.steamer',
      'sits-on: H2.steamer',
      'appliances[0].sits-on',
      ['no piece "H2"', 'mean "H1"?'],
    ],
    ['length: 900 ft', 'length: -900 ft', 'lines[2].length', ['−900 ft is below 0 ft']],
    ['length: 900 ft', 'length: 900 psi', 'lines[2].length', ['"psi" is not a unit of length']],
    ['length: 900 ft', 'length: [900]', 'lines[2].length', ['not a length']],
    ['length: 900 ft', 'length: 900 ft\n    lenght: 3', 'lines[2].lenght', ['mean "length"?']],
    ['hose: 5 in', 'hose: 7 in', 'lines[2].hose', ['"7 in" is not a hose size', '4-1/2']],
    ['hose: 5 in', 'hose: 5 in\n    count: 9', 'lines[2].count', ['9 does not fit', '1 to 6']],
    ['from: V1.supply', 'from: V1.suply', 'lines[2].from', ['no port "suply"', 'V1.pump-suction']],
    ['from: V1.supply', 'from: V1', 'lines[2].from', ['"V1" is not a port', 'H-114.steamer']],
    ['from: V1.supply', 'from: H1.steamer', 'lines[2].from', ['taken by V1', 'H1.side1']],
    ['to: E3.intake1', 'to: E3.discharge1', 'lines[2].to', ['does not go in', 'E3.intake1']],
    ['to: E3.intake1', 'to: E7.intake1', 'lines[2].to', ['taken by suction', 'E7.intake2']],
    ['to: E3.intake1', 'to: V1.supply', 'lines[2].to', ['from V1.supply to itself']],
    ['from: E3.discharge1', 'from: E3.intake2', 'lines[3].from', ['does not come out']],
    ['to: N1.inlet', 'to: N2.inlet', 'lines[3].to', ['no piece "N2"']],
    ['kind: fog', 'kind: fogg', 'nozzles[0].kind', ['did you mean "fog"?']],
    ['flow: 150 gpm', 'tip: 1 in', 'nozzles[0].flow', ['it is missing']],
    ['flow: 150 gpm', 'open: yes', 'nozzles[0].open', ['neither true nor false']],
  ])('%s → %s', (before, after, path, parts) => {
    const issues = issuesOf(sound.replace(before, after));
    const issue = issues.find((candidate) => candidate.path === path);
    expect(issue, JSON.stringify(issues.map((candidate) => candidate.message))).toBeDefined();
    for (const part of parts) expect(issue?.message).toContain(part);
    expect(issue?.allowed).not.toBe('');
    expect(issue?.remedy).toMatch(/\.$/);
    const missing = issue?.value === undefined && !after.includes(path);
    if (!missing) {
      const extra = after.split('\n').length - 1;
      expect(issue?.line).toBe(lineOf(before) + extra);
    }
  });

  test('a nozzle that nothing leads to', () => {
    const issues = issuesOf(sound.replace(/ {2}- id: attack1[\s\S]*?200 ft\n/, ''));
    expect(issues.map((issue) => [issue.path, issue.line])).toEqual([
      ['nozzles[0]', lineOf('- id: N1') - 5],
    ]);
    expect(issues[0]?.message).toContain('nozzle N1 is on nothing');
  });

  test('a pump that nothing feeds', () => {
    const issues = issuesOf(sound.replace(/ {2}- id: lay[\s\S]*?900 ft\n/, ''));
    expect(issues).toMatchObject([{ path: 'rigs[1]', line: 16 }]);
    expect(issues[0]?.message).toContain('the pump of E3 is fed by nothing');
  });

  test('its own open tank is enough; a tank that is not there is not', () => {
    const unfed = sound.replace(/ {2}- id: lay[\s\S]*?900 ft\n/, '');
    const withTank = unfed.replace('setting: 150 psi', 'tank: 750 gal\n    tank-valve: open');
    expect(issuesOf(withTank)).toEqual([]);
    const noTank = sound.replace('setting: 150 psi', 'tank-valve: open');
    expect(issuesOf(noTank)).toMatchObject([{ path: 'rigs[1].tank-valve', line: 20 }]);
  });

  test('pumps that only feed each other', () => {
    const ring = sound
      .replace('from: V1.supply', 'from: E7.discharge2')
      .replace('from: V1.pump-suction', 'from: E3.discharge2');
    const issues = issuesOf(ring);
    expect(issues.map((issue) => issue.path)).toEqual(['rigs[0]', 'rigs[1]']);
    expect(issues[0]?.message).toContain('lead back to no hydrant');
  });

  test('ids that are taken, by a line too', () => {
    expect(issuesOf(sound.replace('id: N1', 'id: E7'))[0]).toMatchObject({
      path: 'nozzles[0].id',
      line: lineOf('- id: N1'),
    });
    const asLine = issuesOf(sound.replace('id: attack1', 'id: lay'));
    expect(asLine).toMatchObject([{ path: 'lines[3].id', line: lineOf('- id: attack1') }]);
    expect(asLine[0]?.message).toContain('"lay" is taken by lines[2]');
  });

  test('a pump test out of order', () => {
    const withTest = (points: string) =>
      issuesOf(sound.replace('setting: 150 psi', `pump-test: [${points}]`));
    expect(withTest('300 psi at 0 gpm, 150 psi at 1500 gpm')).toEqual([]);
    expect(withTest('300 psi at 100 gpm, 150 psi at 1500 gpm')[0]?.path).toBe(
      'rigs[1].pump-test[0]',
    );
    expect(withTest('300 psi at 0 gpm, 310 psi at 1500 gpm')[0]?.message).toMatch(/rises/);
    expect(withTest('300 psi at 0 gpm, 250 psi at 0 gpm')[0]?.message).toMatch(/does not rise/);
    expect(withTest('300 psi at 0 gpm')[0]?.message).toMatch(/it has 1 entries.*2 or more/);
  });

  test('terrain past the end of its line', () => {
    const terrain = 'length: 900 ft\n    terrain: [{along: 950 ft, elevation: 3 ft}]';
    expect(issuesOf(sound.replace('length: 900 ft', terrain))).toMatchObject([
      { path: 'lines[2].terrain[0].along', line: 34 },
    ]);
  });
});

describe('whole files', () => {
  test.each<[string, string, RegExp]>([
    ['nothing', '', /this file is empty.*plugside: 1/],
    ['a list', '- 1\n- 2', /holds a list/],
    ['a word', 'hello', /holds "hello"/],
    ['no version', 'title: x', /version of this file is not known/],
    ['a misspelt version', 'plugsid: 1\ntitle: x', /is it "plugsid"\?/],
    ['broken YAML', 'plugside: 1\ntitle: [a', /not well formed/],
    ['broken JSON', '{"plugside": 1, "title": "a"', /not well formed/],
    ['the same key twice', 'plugside: 1\ntitle: a\ntitle: b', /not well formed.*unique/],
    ['two documents', 'plugside: 1\n---\nplugside: 1', /not well formed.*multiple documents/],
    ['a tag', 'plugside: 1\ntitle: !!js/function x', /not well formed.*tag/],
    ['an unknown alias', 'plugside: 1\ntitle: *x', /cannot be read.*alias/],
    ['__proto__', 'plugside: 1\ntitle: a\nscene: E\n__proto__: {a: 1}', /no key "__proto__"/],
  ])('%s', (_, text, message) => {
    const issues = issuesOf(text);
    expect(issues.length).toBeGreaterThan(0);
    expect(issues.some((issue) => message.test(issue.message))).toBe(true);
  });

  test('the line of a break in the text', () => {
    expect(issuesOf(sound.replace('scene: E3', 'scene: E3: E7'))[0]?.line).toBe(3);
    expect(issuesOf(sound.replace('    static', '\tstatic'))[0]?.line).toBe(7);
  });

  test('an alias bomb is defused', () => {
    const levels = Array.from(
      { length: 12 },
      (_, level) =>
        `x${level}: &x${level} [${Array(10)
          .fill(level === 0 ? 'a' : `*x${level - 1}`)
          .join(', ')}]`,
    );
    const issues = issuesOf(['plugside: 1', ...levels].join('\n'));
    expect(issues[0]?.message).toMatch(/alias/i);
  });

  test('a file over 1 MB is refused with its size and name', () => {
    const reading = readPlan(`${sound}note: ${'x'.repeat(1_500_000)}`, { fileName: 'mill.yaml' });
    expect(reading.ok).toBe(false);
    if (!reading.ok) expect(reading.issues[0]?.message).toMatch(/mill\.yaml is 1\.4 MB.*1 MB/);
  });

  test('more than 200 pieces are refused with their number', () => {
    const many = Array.from(
      { length: 250 },
      (_, index) => `  - {id: X${index}, kind: fog, pressure: 100, flow: 100}`,
    );
    const issues = issuesOf(`${sound}${many.join('\n')}\n`);
    expect(issues).toHaveLength(1);
    expect(issues[0]?.message).toMatch(/255 pieces.*200 pieces at most/);
  });

  test('nesting without end is refused', () => {
    expect(issuesOf(`plugside: 1\ntitle: ${'['.repeat(50_000)}`).length).toBeGreaterThan(0);
    expect(issuesOf(`plugside: 1\ntitle: ${'{a: '.repeat(20_000)}`).length).toBeGreaterThan(0);
  });

  test('no more than 50 issues are told', () => {
    const bad = Array.from({ length: 150 }, () => '  - {id: "?"}').join('\n');
    expect(issuesOf(`${sound}${bad}`)).toHaveLength(50);
  });

  test('something other than text is refused, not thrown at', () => {
    expect(readPlan(undefined as unknown as string).ok).toBe(false);
    expect(readPlan(new Uint8Array(3) as unknown as string).ok).toBe(false);
  });

  test('JSON with tabs and a byte order mark is read like any other', () => {
    const json = writePlan(boostedAtHydrant(), 'json');
    const tabbed = `\ufeff${JSON.stringify(JSON.parse(json), null, '\t')}`;
    expect(readPlan(tabbed)).toEqual({ ok: true, plan: boostedAtHydrant(), notices: [] });
    expect(readPlan(JSON.stringify(JSON.parse(json))).ok).toBe(true);
  });

  test('lines of JSON are counted too', () => {
    const json = writePlan(boostedAtHydrant(), 'json').replace('"length": 600', '"length": -600');
    const line = json.split('\n').findIndex((row) => row.includes('-600')) + 1;
    expect(issuesOf(json)).toMatchObject([{ path: 'lines[2].length', line }]);
  });

  test('Windows line ends do not shift the lines', () => {
    const text = sound.replace('length: 900 ft', 'length: -900 ft').replaceAll('\n', '\r\n');
    expect(issuesOf(text)).toMatchObject([{ line: lineOf('length: 900 ft') }]);
  });
});

describe('units beside the number', () => {
  test('the same plan in metric', () => {
    const metric = sound
      .replace('static: 62 psi', 'static: 4.27475 bar')
      .replace('flow: 1060 gpm', 'flow: 4012.54 L/min')
      .replace('length: 900 ft', 'length: 274.32 m')
      .replace('hose: 5 in', 'hose: 125 mm');
    const reading = readPlan(metric);
    expect(reading.ok).toBe(true);
    if (!reading.ok) return;
    const [hydrant] = reading.plan.hydrants;
    expect(hydrant?.staticPsi).toBeCloseTo(62, 3);
    expect(hydrant?.testGpm).toBeCloseTo(1060, 2);
    expect(reading.plan.lines[2]).toMatchObject({ hose: '5' });
    expect(reading.plan.lines[2]?.lengthFt).toBeCloseTo(900, 6);
  });

  test('bare numbers are in the inside units', () => {
    const bare = sound.replace(/ (psi|gpm|ft|in)$/gm, '');
    expect(readPlan(bare)).toEqual(readPlan(sound));
  });
});

test('a rig whose height was left out among others is told', () => {
  const reading = readPlan(sound.replace('    elevation: 135 ft\n', ''));
  expect(reading).toMatchObject({
    ok: true,
    notices: [{ path: 'rigs[1]', line: 16, message: expect.stringContaining('taken as 0 ft') }],
  });
});

describe('hydrants that share a main', () => {
  const two = sound.replace(
    'rigs:',
    `  - {id: H2, elevation: 96 ft, static: 60 psi, residual: 40 psi, flow: 900 gpm, main: Mill Lane}
group-tests:
  - {hydrants: [H1, H2], elevation: 98 ft, static: 61 psi, residual: 35 psi, flow: 1700 gpm, tested: 2025-05-01}
rigs:`,
  );

  test('main and tests together are read', () => {
    const reading = readPlan(two);
    if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
    expect(reading.plan.hydrants.map(({ main }) => main)).toEqual([undefined, 'Mill Lane']);
    expect(reading.plan.groupTests).toEqual([
      {
        hydrants: ['H1', 'H2'],
        elevationFt: 98,
        staticPsi: 61,
        residualPsi: 35,
        testGpm: 1700,
        testedOn: '2025-05-01',
      },
    ]);
  });

  test('a hydrant of unknown main beside another is told of, with its place', () => {
    const open = sound
      .replace(
        'rigs:',
        `  - {id: H2, elevation: 96 ft, static: 60 psi, residual: 40 psi, flow: 900 gpm, main: Mill Lane}
rigs:`,
      )
      .replace(
        'nozzles:',
        '  - {id: lay2, from: H2.steamer, to: E3.intake2, hose: 5, length: 300 ft}\nnozzles:',
      );
    const reading = readPlan(open);
    if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
    expect(reading.notices).toMatchObject([
      { path: 'hydrants[0]', line: 5, message: expect.stringContaining('H1 names no main') },
    ]);
    const named = readPlan(open.replace('flow: 1060 gpm', 'flow: 1060 gpm\n    main: Long Street'));
    expect(named).toMatchObject({ ok: true, notices: [] });
  });

  test('a plan without them is the plan that it was', () => {
    const reading = readPlan(sound);
    if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
    expect(Object.keys(reading.plan)).not.toContain('groupTests');
    expect(Object.keys(reading.plan.hydrants[0]!)).not.toContain('main');
  });

  test.each([
    ['[H1, H2]', '[H1, H3]', 'group-tests[0].hydrants[1]', /no hydrant "H3"/],
    ['[H1, H2]', '[H1, H1]', 'group-tests[0].hydrants[1]', /"H1" is named twice/],
    ['[H1, H2]', '[H1]', 'group-tests[0].hydrants', /1/],
    ['residual: 35 psi', 'residual: 70 psi', 'group-tests[0].residual', /70 psi is not below/],
  ])('%s as %s is refused by name', (from, to, path, fault) => {
    const [issue, ...others] = issuesOf(two.replace(from, to));
    expect(others).toEqual([]);
    expect(issue?.path).toBe(path);
    expect(issue?.message).toMatch(fault);
  });
});
