import { readFileSync } from 'node:fs';
import { demandOf, type Plan, patternList, readPlan, settingsFor } from '@plugside/fireground';
import { drillSheetFor, type PaperOptions, renderDrillSheet } from '@plugside/paper';
import { describe, expect, it } from 'vitest';
import { outside, overlaps, readBack, textOf } from './read-back.ts';

const printed: PaperOptions = { printedAt: new Date('2026-11-25T12:00:00Z') };

function example(name: string): Plan {
  const text = readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), 'utf8');
  const read = readPlan(text);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.plan;
}

const pattern = (id: string) => patternList.find((one) => one.id === id)!.make();
const boosted = { ...pattern('boosted-at-hydrant'), demandGpm: 1200 };

const stepsOf = (plan: Plan, role: string) =>
  drillSheetFor({ plan })
    .roles.find((one) => one.role === role)!
    .steps.map(({ text }) => text);

describe('a drill sheet', () => {
  it('flushes, connects, opens, boosts, in that order', () => {
    const steps = stepsOf(boosted, 'Hydrant engine');
    const at = (words: RegExp) => {
      const place = steps.findIndex((text) => words.test(text));
      expect(place, `${words} in\n${steps.join('\n')}`).toBeGreaterThanOrEqual(0);
      return place;
    };
    const order = [
      /flush/,
      /^Connect/,
      /open .* fully, slowly/,
      /Bleed/,
      /turn the handle/,
      /raise/,
    ];
    const places = order.map(at);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('names every line of the plan once, with its length, by the crew that connects it', () => {
    const plan = example('cold-store');
    const all = drillSheetFor({ plan }).roles.flatMap(({ steps }) => steps.map(({ text }) => text));
    const connected = all.filter((text) => text.startsWith('Connect'));
    expect(connected).toHaveLength(plan.lines.length);
    expect(connected.some((text) => text.includes('900 ft of 5 in'))).toBe(true);
  });

  it('sets each pump as the question asked afresh does', () => {
    const plan = example('hill-relay');
    const { orders } = settingsFor(plan, demandOf(plan));
    const texts = drillSheetFor({ plan }).roles.flatMap(({ steps }) =>
      steps.map(({ text }) => text),
    );
    for (const { pdpPsi, radio } of orders) {
      const said = texts.find((text) => text.includes(radio));
      expect(said).toContain(`${Math.round(pdpPsi)} psi`);
    }
  });

  it('primes where the water is drafted, and says what drafting risks', () => {
    const { roles } = drillSheetFor({ plan: pattern('draft') });
    const told = JSON.stringify(roles);
    expect(told).toContain('Prime within the time');
    expect(told).toContain('deep water');
  });

  it('says what is short', async () => {
    const plan = { ...boosted, demandGpm: 4000 };
    const drill = drillSheetFor({ plan });
    expect(drill.shortGpm).toBeGreaterThan(1000);
    const [page] = await readBack(renderDrillSheet(drill, printed));
    expect(textOf(page!)).toContain('short of its demand');
  });

  it('leaves blanks for the department’s targets, or prints them', async () => {
    const benchmarks = [{ text: 'Supply water at the intake', target: '4 min' }];
    const drill = drillSheetFor({ plan: boosted, benchmarks });
    const pages = await readBack(renderDrillSheet(drill, printed));
    expect(pages.map(textOf).join(' ')).toContain('4 min');
    expect(drillSheetFor({ plan: boosted }).benchmarks.every((one) => !one.target)).toBe(true);
  });
});

const long =
  'Rescue Engine of the Wholesale Market and River Quarter Station, the second one there is';
const renamed = (plan: Plan): Plan => {
  const name = <T extends object>(one: T): T => ({ ...one, name: long });
  return {
    ...plan,
    title: `${long} ${long}`.slice(0, 120),
    hydrants: plan.hydrants.map(name),
    rigs: plan.rigs.map(name),
    nozzles: plan.nozzles.map(name),
    appliances: plan.appliances.map(name),
  };
};

describe('a drill sheet on paper', () => {
  const plans: [name: string, plan: Plan][] = [
    ['cold-store', example('cold-store')],
    ['hill-relay', example('hill-relay')],
    ['two-hydrants', example('two-hydrants')],
    ['the longest names', renamed(example('cold-store'))],
    ...patternList.map(({ id, make }): [string, Plan] => [id, make()]),
  ];

  it.each(plans)('keeps every text in its place: %s', async (_name, plan) => {
    for (const [paper, units] of [
      ['letter', 'us'],
      ['a4', 'si'],
    ] as const) {
      const drill = drillSheetFor({ plan, units });
      const pages = await readBack(renderDrillSheet(drill, { ...printed, paper, units }));
      expect(pages.length).toBeGreaterThanOrEqual(2);
      for (const [index, page] of pages.entries()) {
        expect(overlaps(page)).toEqual([]);
        expect(outside(page)).toEqual([]);
        expect(page.images).toBe(0);
        expect(textOf(page)).toContain(`Page ${index + 1} of ${pages.length}`);
      }
    }
  });
});
