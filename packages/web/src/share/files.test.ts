import { boostedAtHydrant, writePlan } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { fileNameFor, linkTo, openText } from './files.ts';
import { planTextIn } from './link.ts';

const plan = boostedAtHydrant({ title: 'Quarry Lane, 2nd alarm' });

describe('plan files', () => {
  it('opens what it wrote, the same plan', () => {
    const opened = openText(writePlan(plan), 'a.yaml');
    expect(opened.ok && opened.plan).toEqual(plan);
  });

  it('lists what is wrong with a bad file, with its lines', () => {
    const opened = openText('title: A\nhydrants:\n  - id: H1\n    static: deep\n', 'bad.yaml');
    expect(opened.ok).toBe(false);
    if (opened.ok) return;
    expect(opened.message.text).toContain('bad.yaml');
    expect(opened.message.details?.length).toBeGreaterThan(0);
    for (const one of opened.message.details ?? []) expect(one.where).toMatch(/^line \d+$/);
  });

  it('carries a whole plan in a link and back', () => {
    const link = linkTo(plan, 'http://localhost:4173/#old');
    const text = planTextIn(new URL(link).hash);
    const opened = openText(text ?? '', 'link');
    expect(opened.ok && opened.plan).toEqual(plan);
  });

  it('makes a plain file name from any title', () => {
    expect(fileNameFor(plan, 'yaml')).toBe('quarry-lane-2nd-alarm.yaml');
    expect(fileNameFor({ ...plan, title: '…' }, 'json')).toBe('plan.json');
    expect(fileNameFor({ ...plan, title: 'Caf\u00e9/../x' }, 'yaml')).toBe('cafe-x.yaml');
  });
});
