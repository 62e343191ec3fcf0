import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Plugside, preparePlugside } from './run-plugside.ts';

// Each run is a process of its own, and a machine may be busy.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let plugside: Plugside;
beforeAll(async () => {
  plugside = await preparePlugside();
  const put = (name: string, text: string | Buffer) =>
    writeFileSync(join(plugside.folder, name), text);
  const sound = readFileSync(join(plugside.folder, coldStore), 'utf8');
  put('empty.yaml', '');
  put('broken.yaml', 'plugside: 1\ntitle: "never closed\n');
  put('negative.yaml', sound.replace('length: 900 ft', 'length: -5 ft'));
  put('slip.yaml', sound.replace('    residual: 44 psi', '    residul: 44 psi'));
  put('later.yaml', sound.replace('plugside: 1', 'plugside: 99'));
  put('large.yaml', `# ${'x'.repeat(1_200_000)}\n${sound}`);
  put('image.yaml', Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46]));
  put('sound.yaml', sound);
  put('there.yaml', 'mine');
  mkdirSync(join(plugside.folder, 'folder'));
});
afterAll(() => plugside.remove());

const coldStore = 'examples/cold-store.yaml';

/** The line of the example that a changed field stands on. */
const lineOf = (text: string) =>
  readFileSync(join(plugside.folder, coldStore), 'utf8').split('\n').indexOf(text) + 1;

describe('a file at fault', () => {
  it.each([
    ['is not there', 'nosuch.yaml', /There is no file nosuch\.yaml\. .*plugside new/],
    ['is a folder', 'examples', /examples is a folder\. .*examples\/cold-store\.yaml/],
    ['is an empty folder', 'folder', /folder is a folder\. Name a plan file\.\n$/],
    ['is empty', 'empty.yaml', /empty\.yaml:1:1: .*is empty.*Allowed: a plan/],
    ['is not well formed', 'broken.yaml', /broken\.yaml:\d+:\d+: .*not well formed/],
    ['is over 1 MB', 'large.yaml', /large\.yaml is over 1 MB; allowed: 1 MB/],
    ['is no text', 'image.yaml', /image\.yaml is not UTF-8 text/],
    ['is of a later version', 'later.yaml', /version 99.*Update Plugside/],
  ])('that %s is refused with exit code 2', (_, file, words) => {
    const { status, stdout, stderr } = plugside.run(['most', file]);
    expect(stderr).toMatch(words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  });

  it('is told with line, value, what is allowed and the remedy', () => {
    const { status, stderr } = plugside.run(['most', 'negative.yaml']);
    expect(status).toBe(2);
    const line = lineOf('    length: 900 ft');
    expect(stderr).toMatch(new RegExp(`^negative\\.yaml:${line}:\\d+: lines\\[0\\]\\.length: `));
    expect(stderr).toMatch(/[-−]5 ft.*Allowed: 0 to 100,000 ft/);
  });

  it('with a slip in a key gets the likely one', () => {
    const { stderr } = plugside.run(['set', 'slip.yaml']);
    expect(stderr).toMatch(/residul.*residual/);
  });

  it('is told as JSON where JSON was asked for', () => {
    const { status, stdout, stderr } = plugside.run(['most', 'negative.yaml', '--json']);
    expect({ status, stderr }).toEqual({ status: 2, stderr: '' });
    const { failure } = JSON.parse(stdout);
    expect(failure.exitCode).toBe(2);
    expect(failure.issues[0]).toMatchObject({
      path: 'lines[0].length',
      line: lineOf('    length: 900 ft'),
    });
  });

  it('among several is the only one that check faults', () => {
    const run = plugside.run(['check', 'sound.yaml', 'negative.yaml', 'nosuch.yaml']);
    expect(run.status).toBe(2);
    expect(run.stdout).toMatch(/sound\.yaml: sound\. /);
    expect(run.stdout).toMatch(/negative\.yaml: 1 fault\./);
    expect(run.stdout).toMatch(/There is no file nosuch\.yaml/);
  });
});

describe('standard input', () => {
  it('is read for -', () => {
    const sound = readFileSync(join(plugside.folder, coldStore));
    expect(plugside.run(['check', '-'], sound).stdout).toMatch(/^standard input: sound\./);
  });

  it('is named in faults, and read no further than a plan can be long', () => {
    expect(plugside.run(['most', '-'], 'x: 1').stderr).toMatch(/^standard input:1:1: /);
    const { status, stderr } = plugside.run(['most', '-'], '#'.repeat(3_000_000));
    expect(status).toBe(2);
    expect(stderr).toMatch(/^standard input is over 1 MB/);
  });
});

describe('an option at fault', () => {
  it.each([
    [['set', coldStore, '--demand', '-5'], /'-5' is invalid.*Allowed: 1 to 20,000 gpm/],
    [['set', coldStore, '--demand', '5 psi'], /"psi" is not a unit of flow/],
    [['set', coldStore, '--demand', 'lots'], /does not begin with a number/],
    [['most', coldStore, '--at', 'hydrant'], /Allowed choices are intake, nozzles/],
    [['most', coldStore, '--units', 'metric'], /Allowed choices are us, si/],
    [['mots', coldStore], /unknown command 'mots'\n\(Did you mean most\?\)/],
    [['most'], /missing required argument 'PLAN'/],
    [['most', coldStore, '--jason'], /unknown option '--jason'\n\(Did you mean --json\?\)/],
    [['sweep', coldStore], /required option '-v, --vary <what>' not specified/],
    [['sweep', coldStore, '--vary', 'colour'], /Allowed: "lay length", "rise"/],
    [['sweep', coldStore, '--vary', 'rise'], /needs its values: --values/],
    [
      ['sweep', coldStore, '--vary', 'pdp', '--values', '2000'],
      /--values: Allowed: 0 to 1,000 psi/,
    ],
    [['sweep', coldStore, '--vary', 'hose', '--values', '7'], /no hose of size "7"/],
    [['sweep', coldStore, '--vary', 'lay lines', '--values', '1.5'], /a whole number from 1 to 6/],
    [['sweep', coldStore, '--vary', 'static', '--values', '10'], /below the 18 psi .* H-114/],
    [
      ['sweep', coldStore, '--vary', 'rise', '--from', '0', '--to', '100', '--step', '0'],
      /--step is "0"; allowed: a number above 0/,
    ],
    [
      ['sweep', coldStore, '--vary', 'rise', '--from', '0', '--to', '100', '--step', '0.01'],
      /10,001 values; allowed: 500/,
    ],
    [
      ['sweep', coldStore, '--vary', 'rise', '--from', '9', '--to', '1', '--step', '1'],
      /--to is below --from/,
    ],
    [
      ['sweep', coldStore, '--vary', 'pdp', '--values', '150', '--rig', 'E9'],
      /no rig "E9"\. Its rigs are E7, E3/,
    ],
    [['new', 'sideways'], /no pattern sideways\. Allowed: forward-lay/],
    [['new', 'forward-lay', '--hydrant', '44/62/1060'], /residual \(62\) is not below the static/],
    [['new', 'forward-lay', '--hydrant', '62/44'], /static\/residual\/flow/],
    [['new', 'draft', '--hydrant', '62/44/1060'], /draft has no hydrant/],
    [['new', 'forward-lay', '--pumps', '3'], /--pumps goes with relay/],
    [['new', 'relay', '--pumps', '41'], /a whole number from 2 to 40/],
    [['new', 'forward-lay', '--hose', '7'], /Allowed: 3\/4, 1, /],
    [['catalogue', 'engines'], /Allowed choices are hose, nozzles/],
  ])('%j is refused with exit code 2 and nothing on standard output', (args, words) => {
    const { status, stdout, stderr } = plugside.run(args);
    expect(stderr).toMatch(words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  });

  it('is told as JSON where JSON was asked for', () => {
    const { status, stdout, stderr } = plugside.run(['set', coldStore, '-d', '-5', '--json']);
    expect({ status, stderr }).toEqual({ status: 2, stderr: '' });
    expect(JSON.parse(stdout).failure.message).toMatch(/Allowed: 1 to 20,000 gpm/);
  });
});

describe('a file to write', () => {
  it.each([
    [['convert', coldStore, '-o', 'there.yaml'], /there\.yaml is already there.*--force/],
    [['convert', coldStore, '-o', 'folder'], /folder is a folder\. Name a file in it/],
    [['profile', coldStore, '-o', 'none/a.svg'], /no folder none to write a\.svg in/],
    [['most', coldStore, '-w', 'there.yaml/a.yaml'], /there\.yaml is a file, not a folder/],
  ])('%j is refused before anything is written', (args, words) => {
    const { status, stderr } = plugside.run(args);
    expect(stderr).toMatch(words);
    expect(status).toBe(2);
    expect(readFileSync(join(plugside.folder, 'there.yaml'), 'utf8')).toBe('mine');
  });

  it('is written over whole with --force, and nothing is left beside it', () => {
    const path = join(plugside.folder, 'again.yaml');
    writeFileSync(path, 'old');
    expect(plugside.run(['convert', coldStore, '-o', 'again.yaml', '--force']).status).toBe(0);
    expect(readFileSync(path, 'utf8')).toMatch(/^plugside: 1\n/);
    expect(readdirSync(plugside.folder).filter((name) => name.includes('.part'))).toEqual([]);
  });

  it('may be the plan that was read', () => {
    writeFileSync(
      join(plugside.folder, 'same.yaml'),
      readFileSync(join(plugside.folder, coldStore)),
    );
    const args = ['convert', 'same.yaml', '-o', 'same.yaml', '--force'];
    expect(plugside.run(args).status).toBe(0);
    expect(plugside.run(['check', 'same.yaml']).status).toBe(0);
  });

  it('is not there after a plan at fault', () => {
    expect(plugside.run(['profile', 'negative.yaml', '-o', 'never.svg']).status).toBe(2);
    expect(existsSync(join(plugside.folder, 'never.svg'))).toBe(false);
  });
});

describe('a plan that reads well but has no answer', () => {
  it('for want of water to a piece ends with exit code 3 and names it', () => {
    const dry = readFileSync(join(plugside.folder, coldStore), 'utf8')
      .replace('appliances:\n', 'appliances:\n  - id: W9\n    kind: wye\n')
      .replace('from: E3.discharge1\n', 'from: W9.outlet1\n');
    const { status, stdout, stderr } = plugside.run(['now', '-'], dry);
    expect({ status, stdout }).toEqual({ status: 3, stdout: '' });
    expect(stderr).toMatch(/^The plan cannot be solved\. .*W9/);
  });
});

describe('a reader that stops reading', () => {
  it('ends the command quietly', () => {
    const line = `${plugside.shellWords} schema | head -c 10; ${plugside.shellWords} catalogue --json | true`;
    const { stderr, status } = spawnSync('sh', ['-c', line], {
      cwd: plugside.folder,
      encoding: 'utf8',
    });
    expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
  });
});

describe('colour', () => {
  const controlSequence = '\u001b[';
  it('is never in what is piped on', () => {
    expect(plugside.run(['most', coldStore]).stdout).not.toContain(controlSequence);
  });
});
