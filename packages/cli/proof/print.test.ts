import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { attackSettings, forwardLay } from '@plugside/fireground';
import { fillDemo, openStore } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Plugside, preparePlugside } from './run-plugside.ts';

// Each run is a process of its own, and a machine may be busy.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

let plugside: Plugside;
const path = (name: string) => join(plugside.folder, name);

beforeAll(async () => {
  plugside = await preparePlugside();
  const store = await openStore({ file: path('district.db') });
  await fillDemo(store);
  await store.close();
});
afterAll(() => plugside.remove());

const isPdf = (name: string) => {
  const text = readFileSync(path(name), 'latin1');
  return text.startsWith('%PDF-1.') && text.trimEnd().endsWith('%%EOF');
};

describe('print', () => {
  it('writes a pump chart whose figures a fresh solve gives', () => {
    const args = ['print', 'pump-chart', '--rig', 'engine 2', '--db', 'district.db', '-o', 'c.pdf'];
    const { answer } = plugside.json(args);
    expect(isPdf('c.pdf')).toBe(true);
    const row = answer.chart.attack.find(
      ({ line }: { line: { nozzle: { kind: string; ratedPsi: number } } }) =>
        line.nozzle.kind === 'fog' && line.nozzle.ratedPsi === 100,
    );
    const at = answer.chart.lengthsFt.indexOf(200);
    const plan = forwardLay({ attackLines: [{ lengthFt: 200 }] });
    // The department's own coefficient for 1¾ in is told on the chart.
    const own = answer.chart.sources.find(({ what }: { what: string }) => what.startsWith('1¾ in'));
    const coefficient = Number(/coefficient ([\d.]+)/.exec(own.what)?.[1]);
    const origin = { kind: 'department', text: 'own' } as const;
    const fresh = attackSettings({
      ...plan,
      department: { coefficients: { '1-3/4': { coefficient, origin } } },
    });
    expect(row.cells[at].pdpPsi).toBeCloseTo(fresh.pdpPsi, 3);
  });

  it('writes one card, and a stack of those that are named', () => {
    const one = plugside.run([
      'print',
      'hydrant-card',
      '--hydrant',
      'H-114',
      '--db',
      'district.db',
      '-o',
      'h.pdf',
    ]);
    expect(one).toMatchObject({
      status: 0,
      stderr: '',
      stdout: 'Wrote the card of H-114 to h.pdf.\n',
    });
    expect(isPdf('h.pdf')).toBe(true);
    const many = plugside.run([
      ...['print', 'hydrant-cards', '--hydrant', 'H-104', 'H-114', '--db', 'district.db'],
      ...['-o', 'stack.pdf', '--paper', 'a4', '--units', 'si'],
    ]);
    expect(many).toMatchObject({ status: 0, stderr: '', stdout: 'Wrote 2 cards to stack.pdf.\n' });
    expect(isPdf('stack.pdf')).toBe(true);
  });

  it('writes a building’s plan, and says by its exit code whether the demand is met', () => {
    const args = ['print', 'building-plan', '--building', 'Works, 19 Anvil Way'];
    const met = plugside.run([
      ...args,
      '--demand',
      '600 gpm',
      '--db',
      'district.db',
      '-o',
      'w.pdf',
    ]);
    expect(met).toMatchObject({ status: 0, stderr: '' });
    expect(isPdf('w.pdf')).toBe(true);
    const most = [...args, '--demand', '20000 gpm', '--db', 'district.db', '-o', 'most.pdf'];
    expect(plugside.run(most).status).toBe(1);
  });

  it('writes a drill sheet from a plan file, with our own targets', () => {
    const args = ['print', 'drill-sheet', 'examples/cold-store.yaml', '-o', 'd.pdf'];
    const { answer } = plugside.json([...args, '--benchmark', 'Water at the intake=4 min']);
    expect(isPdf('d.pdf')).toBe(true);
    expect(answer.benchmarks).toEqual([{ text: 'Water at the intake', target: '4 min' }]);
    expect(answer.roles.map(({ role }: { role: string }) => role)).toContain('Hydrant engine');
    const wrong = plugside.run([...args, '--force', '--benchmark', '=4 min']);
    expect(wrong.status).toBe(2);
    expect(wrong.stderr).toContain('allowed');
  });

  it.each([
    [
      'no such building',
      ['building-plan', '--building', 'Nowhere'],
      /No building on record is called "Nowhere"/,
    ],
    ['no such rig', ['pump-chart', '--rig', 'Engine 99'], /no rig "Engine 99".*Engine 1/],
    ['no such hydrant', ['hydrant-card', '--hydrant', 'X-1'], /no hydrant "X-1".*There are: H-/],
    ['no such booster', ['hydrant-cards', '--booster', 'X'], /no rig "X"/],
    ['no such paper', ['pump-chart', '--rig', 'Engine 1', '--paper', 'a5'], /a5.*letter, a4/s],
  ])('refuses %s and writes nothing', (_what, args, message) => {
    const run = plugside.run(['print', ...args, '--db', 'district.db', '-o', 'none.pdf']);
    expect(run.status).toBe(2);
    expect(run.stderr).toMatch(message);
    expect(existsSync(path('none.pdf'))).toBe(false);
    expect(readdirSync(plugside.folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('refuses to write over a file, to the terminal, and from records that are not there', () => {
    writeFileSync(path('there.pdf'), 'mine');
    const chart = ['print', 'pump-chart', '--rig', 'Engine 1'];
    const over = plugside.run([...chart, '--db', 'district.db', '-o', 'there.pdf']);
    expect(over).toMatchObject({ status: 2 });
    expect(readFileSync(path('there.pdf'), 'utf8')).toBe('mine');
    expect(plugside.run([...chart, '--db', 'district.db', '-o', '-'])).toMatchObject({ status: 2 });
    const none = plugside.run([...chart, '--db', 'nosuch.db', '-o', 'x.pdf']);
    expect(none.status).toBe(2);
    expect(none.stderr).toMatch(/no file nosuch\.db/);
  });
});
