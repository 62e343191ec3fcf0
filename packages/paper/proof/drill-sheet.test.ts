import { readFileSync } from 'node:fs';
import {
  demandOf,
  forwardLay,
  nameOf,
  type Plan,
  patternList,
  profileOf,
  readPlan,
  settingsFor,
  solveNow,
} from '@plugside/fireground';
import { drillSheetFor, type PaperOptions, renderDrillSheet } from '@plugside/paper';
import { describe, expect, it } from 'vitest';
import { outside, overlaps, readBack, rowOf, textOf } from './read-back.ts';

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
  it('flushes, charges the lay through the valve, hooks up, boosts, in that order', () => {
    const steps = stepsOf(boosted, 'Hydrant engine');
    const at = (words: RegExp) => {
      const place = steps.findIndex((text) => words.test(text));
      expect(place, `${words} in\n${steps.join('\n')}`).toBeGreaterThanOrEqual(0);
      return place;
    };
    const order = [
      /flush/,
      /open .* fully, slowly/,
      /^Connect/,
      /Bleed/,
      /turn the handle/,
      /raise/,
    ];
    const places = order.map(at);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('takes side lines on after the lay is charged and the engine hooked up, as the example tells it', () => {
    const steps = stepsOf(example('cold-store'), 'Hydrant engine');
    const order = [
      /flush/,
      /^Gates on the side outlets/,
      /open .* fully, slowly/,
      /^Connect .*pump suction/,
      /turn the handle/,
      /^Connect .*side outlet/,
      /^Open the gates/,
      /raise/,
    ].map((words) => steps.findIndex((text) => words.test(text)));
    expect(
      order.every((place) => place >= 0),
      steps.join('\n'),
    ).toBe(true);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('gives each engine at the fire its own lines, water and part', () => {
    const plan: Plan = {
      ...pattern('two-hydrants'),
      demandGpm: 1500,
    };
    const scene = plan.rigs.find(({ id }) => id === plan.scene)!;
    const lays = plan.lines.filter(({ to }) => to.startsWith(`${plan.scene}.`));
    const [one, two] = lays as [(typeof lays)[0], (typeof lays)[0]];
    expect(lays).toHaveLength(2);
    const shared: Plan = {
      ...plan,
      sceneEngines: [
        { name: nameOf(scene), mostGpm: 1500, lines: [one.id] },
        { name: 'Ladder 1', mostGpm: 2000, lines: [two.id] },
      ],
    };
    const duties = [
      {
        rigId: 'L1',
        rigName: 'Ladder 1',
        duty: 'goes to the fire, connects the supply from H-2 to its intake and pumps at the fire',
      },
      {
        rigId: scene.id,
        rigName: nameOf(scene),
        duty: 'lays 300 ft of 5 in from H-1 to the fire, with an adapter from 5 in to 4 in, leaves a crew at H-1 to connect, connects the supply from H-1 to its intake and attacks',
      },
    ];
    const drill = drillSheetFor({ plan: shared, duties });
    const texts = (who: string) =>
      drill.roles.find((role) => role.who === who)!.steps.map(({ text }) => text);
    const connected = (who: string) => texts(who).filter((text) => text.startsWith('Connect'));
    expect(connected('Ladder 1')).toHaveLength(1);
    expect(connected('Ladder 1')[0]).toMatch(/to Ladder 1, intake\.$/);
    expect(connected(nameOf(scene)).some((text) => text.includes('Ladder'))).toBe(false);
    // Solved by the question asked afresh: what its own line carries.
    const state = settingsFor(shared, 1500).state;
    const carries = (id: string) => Math.round(state.lines.find((line) => line.id === id)!.flowGpm);
    const figure = (id: string) => `${carries(id).toLocaleString('en-US')} gpm coming`;
    expect(texts('Ladder 1').join(' ')).toContain(figure(two.id));
    expect(texts(nameOf(scene)).join(' ')).toContain(figure(one.id));
    expect(drill.orders.map(({ id }) => id)).toContain('Ladder 1');
    expect(drill.cautions[0]).toMatch(/^Needs 2 engines at the fire/);
    // Told once, to the crew: who lays, and no duty in the third person before the same work.
    expect(texts(nameOf(scene)).slice(0, 2)).toEqual([
      'Lay 300 ft of 5 in from H-1 to the fire, with an adapter from 5 in to 4 in.',
      'Leave a crew at H-1 to connect.',
    ]);
    expect(
      drill.roles.flatMap(({ steps }) => steps).some(({ text }) => /^Goes|^Lays/.test(text)),
    ).toBe(false);
  });

  it('tells the officer what comes where that is less than is wanted', () => {
    const plan = { ...pattern('boosted-at-hydrant'), demandGpm: 4000 };
    const drill = drillSheetFor({ plan });
    const most = Math.round(4000 - drill.shortGpm).toLocaleString('en-US');
    const officer = drill.roles[0]!.steps.map(({ text }) => text).join(' ');
    expect(officer).toContain(`there will be ${most} gpm; 4,000 gpm is wanted`);
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
    const { roles, points } = drillSheetFor({ plan: pattern('draft') });
    const told = JSON.stringify(roles);
    expect(told).toContain('within the time that its maker allows');
    expect(told).toContain('deep water');
    expect(points.join(' ')).not.toContain('Hydrant');
    expect(points.join(' ')).toContain('prime');
    expect(told).not.toContain('hydrants');
  });

  it('drafts in the order of the trade: position, lay, connect, suction, prime, discharge slowly, set ("Chapter 11 Static Water Supply Sources" study cards)', () => {
    const steps = stepsOf(pattern('draft'), 'Source engine');
    const order = [
      /^Position/,
      /^Lay /,
      /^Connect .*discharge 1/,
      /^Connect .*water to/,
      /strainer/,
      /^Shut every/,
      /^Prime/,
      /open the discharge slowly/,
      /raise the discharge in steps/,
    ];
    const places = order.map((words) => steps.findIndex((text) => words.test(text)));
    expect(
      places.every((place) => place >= 0),
      steps.join('\n'),
    ).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('has each line between two engines connected by one crew and looked over by the other', () => {
    const plan = example('hill-relay');
    const { roles } = drillSheetFor({ plan });
    const all = roles.flatMap(({ steps }) => steps.map(({ text }) => text));
    expect(all.filter((text) => /^Connect /.test(text))).toHaveLength(plan.lines.length);
    const relay = stepsOf(plan, 'Relay engine').join('\n');
    expect(relay).toMatch(/^Check .*Engine 5, intake 1/m);
    expect(relay).toMatch(/^Connect .*Engine 5, discharge 1 to Engine 8/m);
  });

  it('puts the first lines on the tank before the supply is connected, and none on a tank that there is not', () => {
    const plan = {
      ...boosted,
      rigs: boosted.rigs.map((rig) => (rig.id === 'A1' ? { ...rig, tankGal: 750 } : rig)),
    };
    const steps = stepsOf(plan, 'Attack engine');
    const at = (words: RegExp) => steps.findIndex((text) => words.test(text));
    expect(at(/^Tank to pump/)).toBeGreaterThanOrEqual(0);
    expect(at(/^Charge the lines from the tank/)).toBeGreaterThan(at(/to Nozzle/));
    expect(at(/supply to Attack engine/)).toBeGreaterThan(at(/^Charge the lines from the tank/));
    expect(at(/shut tank to pump/)).toBeGreaterThan(at(/supply to Attack engine/));
    const dry = drillSheetFor({ plan: boosted });
    expect(JSON.stringify(dry.benchmarks)).not.toContain('from the tank');
    expect(JSON.stringify(drillSheetFor({ plan }).benchmarks)).toContain('from the tank');
  });

  it('asks of each nozzle its own pressure: 80 psi of a master stream’s tip, 50 of a hand line’s, 100 of fog ("Pump Ops ch 7" study cards)', () => {
    const wanted = (id: string) =>
      drillSheetFor({ plan: pattern(id) })
        .roles.flatMap(({ steps }) => steps.map(({ text }) => text))
        .filter((text) => text.includes('wanted:'))
        .join(' ');
    expect(wanted('master-stream')).toContain('80 psi (1½ in tip)');
    expect(wanted('standpipe')).toContain('50 psi (1⅛ in tip)');
    expect(wanted('boosted-at-hydrant')).toContain('100 psi (fog)');
  });

  it('has no hands on a monitor: a portable one is set and tied, one on a rig is aimed', () => {
    const portable = stepsOf(pattern('master-stream'), 'Master stream crew').join(' ');
    expect(portable).toContain('firm ground');
    expect(portable).not.toMatch(/stretch it|two hands|kinks/);
    const deckGun = stepsOf(example('hill-relay'), 'Master stream crew').join(' ');
    expect(deckGun).toContain('lock its mount');
    expect(deckGun).not.toMatch(/firm ground|stretch it|two hands/);
  });

  it('sets no discharge where the plan ends at the intake, and tells the flow that comes', async () => {
    const plan = {
      ...forwardLay({ attack: { pdpPsi: 150 } }),
      demandGpm: 400,
    };
    const steps = stepsOf(plan, 'Attack engine').join(' ');
    expect(steps).toContain('Set what your own lines need');
    expect(steps).not.toMatch(/Raise the discharge/);
    const [page] = await readBack(renderDrillSheet(drillSheetFor({ plan }), printed));
    expect(textOf(page!)).toContain('Sets what its lines need');
    expect(rowOf(page!, 'Attack engine', 1).at(-1)).toBe('400');
  });

  it('has for a building its name, each rig’s part as chosen, and an aerial without a pump in the plan', () => {
    const duties = [
      { rigId: 'E1', rigName: 'Attack engine', duty: 'goes to the fire and attacks' },
      { rigId: 'E3', rigName: 'Ladder 1', duty: 'lays 500 ft of 5 in from H-1 to the fire' },
    ];
    const drill = drillSheetFor({ plan: boosted, place: 'Hotel, 10 Alder Street', duties });
    expect(drill.title).toBe('Hotel, 10 Alder Street');
    expect(drill.supply).toBe(boosted.title);
    const ladder = drill.roles.find(({ who }) => who === 'Ladder 1')!;
    expect(ladder.role).toBe('Aerial');
    expect(ladder.steps[0]!.text).toBe('Lay 500 ft of 5 in from H-1 to the fire.');
    const all = drill.roles.flatMap(({ steps }) => steps.map(({ text }) => text));
    // Who lays is told there: nobody else is told to.
    expect(all.filter((text) => /^Lay /.test(text))).toHaveLength(1);
  });

  it('draws every source’s leg', async () => {
    const plan = example('two-hydrants');
    const pages = await readBack(renderDrillSheet(drillSheetFor({ plan }), printed));
    const all = pages.map(textOf).join(' ');
    for (const { label } of profileOf(plan, solveNow(plan)).supply) expect(all).toContain(label);
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
        if (units === 'si') expect(textOf(page)).not.toMatch(/\d (psi|gpm|ft|in)\b/);
        for (const { text, sizePt } of page.runs) expect(sizePt, text).toBeGreaterThanOrEqual(7.99);
        expect(textOf(page)).toContain(`Page ${index + 1} of ${pages.length}`);
      }
    }
  });
});
