import {
  amountWords,
  clockText,
  createDrill,
  evolutionOf,
  judge,
  replayTo,
  sceneFromPlan,
  step,
  TICKS_PER_S,
  viewFor,
} from '@plugside/drill';
import { patternList } from '@plugside/fireground';
import {
  type DrillReport,
  type DrillReportRequest,
  drillReportFor,
  type PaperOptions,
  renderDrillReport,
} from '@plugside/paper';
import { beforeAll, describe, expect, it } from 'vitest';
import { longRun, played, shortRun } from './drill-run.ts';
import { outside, overlaps, type ReadPage, readBack, textOf } from './read-back.ts';

const printed: PaperOptions = { printedAt: new Date('2026-11-25T16:00:00Z') };
type As = Pick<PaperOptions, 'paper' | 'units'>;

async function pagesOf(run: DrillReportRequest, as: As = {}): Promise<ReadPage[]> {
  const { units = 'us' } = as;
  const report = await drillReportFor({ ...run, units });
  return readBack(renderDrillReport(report, { ...printed, ...as }));
}

function keepsItsPlace(pages: readonly ReadPage[]): void {
  for (const [index, page] of pages.entries()) {
    expect(overlaps(page)).toEqual([]);
    expect(outside(page)).toEqual([]);
    expect(page.images).toBe(0);
    expect(textOf(page)).toContain(`Page ${index + 1} of ${pages.length}`);
  }
}

/** All runs on one line of the page with a text, left to right. */
function lineWith(page: ReadPage, text: string): string {
  const label = page.runs.find((run) => run.text === text);
  if (!label) throw new Error(`"${text}" is not on the page.`);
  return page.runs
    .filter(({ box }) => box[1] < label.box[3] + 6 && box[3] > label.box[1] - 6)
    .sort((a, b) => a.box[0] - b.box[0])
    .map((run) => run.text)
    .join(' ');
}

describe('the report of a relay that was not flowed', () => {
  let report: DrillReport;
  let first: ReadPage;
  beforeAll(async () => {
    const run = played(evolutionOf('relay')!.scene(), { seed: 3, lastS: 20 });
    report = await drillReportFor({ ...run, units: 'si' });
    const [page] = await readBack(renderDrillReport(report, { ...printed, units: 'si' }));
    first = page!;
  });

  it('has the engines along the water, the one at the fire first', () => {
    const engines = report.panels.map(({ name }) => name).filter((name) => /engine/.test(name));
    expect(engines).toEqual(['Attack engine', 'Relay engine 1', 'Source engine']);
  });

  it('times no boost: none is drilled', () => {
    const boost = report.score.find(({ label }) => label === 'Time to boost');
    expect(boost?.notJudged).toMatch(/No boost is drilled/);
    expect(textOf(first)).not.toContain('no benchmark set');
    expect(textOf(first)).toContain('Not judged:');
  });

  it('draws nozzles that never had water on a scale that water could be read on', () => {
    // Two nozzles, the spare one left out; 50 psi are 3.4 bar.
    const panel = report.panels.find(({ name }) => name === 'At the nozzles')!;
    expect(panel.lines.every(({ valuesPsi }) => valuesPsi.every((psi) => psi === 0))).toBe(true);
    const numbers = first.runs.map(({ text }) => text);
    expect(numbers).not.toContain('0.2');
    expect(numbers.filter((text) => text === '4').length).toBeGreaterThan(0);
    expect(overlaps(first)).toEqual([]);
  });
});

describe('a drill’s report', () => {
  let run: DrillReportRequest;
  let report: DrillReport;
  let pages: ReadPage[];
  beforeAll(async () => {
    run = shortRun();
    report = await drillReportFor(run);
    pages = await readBack(renderDrillReport(report, printed));
  }, 60_000);
  const end = () => replayTo(run.scene, run.seed, run.log, run.tick);

  it('says of each criterion what the judge says of the drill', () => {
    const judged = judge(run.scene, end().state);
    expect(judged.some(({ met }) => !met)).toBe(true);
    for (const { label, value, unit, benchmark, met, moments } of judged) {
      const line = lineWith(pages[0]!, label);
      expect(line).toContain(value === undefined ? 'never' : amountWords(value, unit));
      const stands = benchmark === undefined ? 'not judged' : met ? 'met' : 'missed';
      expect(line.startsWith(stands)).toBe(true);
      if (moments[0]) expect(line).toContain(clockText(moments[0].fromTick / TICKS_PER_S));
    }
    const counted = judged.filter(
      ({ benchmark, notJudged }) => benchmark !== undefined && notJudged === undefined,
    );
    const met = counted.filter((one) => one.met).length;
    expect(textOf(pages[0]!)).toContain(`${met} of ${counted.length} benchmarks met`);
  });

  it('says as it was judged then, where that is kept', async () => {
    const result = judge(run.scene, end().state).map((one) =>
      one.key === 'connections' ? { ...one, value: 3, met: false } : one,
    );
    const { score } = await drillReportFor({ ...run, result });
    expect(score.find(({ label }) => label === 'Wrong connections')).toMatchObject({
      value: 3,
      stands: 'missed',
    });
  });

  it('draws what the gauges read', () => {
    const { panels, timesS } = report;
    expect(panels.map(({ name }) => name)).toEqual([
      'Attack engine',
      'Booster',
      'At the nozzles',
      'In the main',
    ]);
    for (const timeS of [0, 33, 95, 180]) {
      const { state } = replayTo(run.scene, run.seed, run.log, timeS * TICKS_PER_S);
      const { gauges } = viewFor('observer', run.scene, state);
      const read = (id: string) => gauges.find((one) => one.id === id)?.value;
      const at = timesS.indexOf(timeS);
      const drawn = panels.flatMap(({ lines }) => lines.map(({ valuesPsi }) => valuesPsi[at]));
      expect(drawn, `${timeS} s`).toEqual([
        read('A1.discharge'),
        read('A1.intake'),
        read('B1.discharge'),
        read('B1.intake'),
        // The spare line lay ready and was never opened.
        ...state.nozzles
          .filter(({ id }) => id !== run.scene.spareNozzle)
          .map(({ id }) => read(`${id}.pressure`)),
        state.hydrants[0]!.mainPsi,
      ]);
    }
  });

  it('prints the log whole, numbered in order, each entry at its time', () => {
    const { entries } = report;
    expect(entries).toHaveLength(run.log.length);
    const list = pages.slice(1).map(textOf).join(' ');
    const squeezed = list.replace(/\s+/g, '');
    entries.forEach(({ timeS, what }, at) => {
      expect(timeS).toBe(run.log[at]!.tick / TICKS_PER_S);
      const words = `${at + 1}${clockText(timeS)}`;
      expect(squeezed).toContain(words.replace(/\s+/g, ''));
      expect(squeezed).toContain(what.split(' ').slice(0, 2).join(''));
    });
    expect(list).toContain('“Watch the intake at 20 psi.”');
    expect(list).toContain('Nozzle crew');
    expect(list).toContain('Not possible:');
  });

  it('tells what was made to go wrong, when, and until when', () => {
    const kinked = lineWith(pages[1]!, 'Supply hose kinked');
    expect(kinked).toContain('1:20');
    expect(kinked).toContain('by the instructor');
    expect(kinked).toContain('1:50');
    expect(lineWith(pages[1]!, 'Booster: engine dead')).toContain('not lifted');
  });

  it('says who drilled what, when, how long, and that it is practice', () => {
    const text = textOf(pages[0]!);
    for (const told of [
      'B shift, Engine 7',
      '2026-11-25, 14:05 UTC',
      '3:00',
      'INVENTED FOR PRACTICE',
    ])
      expect(text).toContain(told);
    const { title, cautions } = evolutionOf(run.scene.evolution!)!;
    expect(text).toContain(title);
    expect(pages.map(textOf).join(' ')).toContain(cautions[0]!.slice(0, 40));
    for (const page of pages) expect(textOf(page)).toContain('Defer to your department');
  });

  it('keeps every text in its place', () => keepsItsPlace(pages));

  it('reads in SI throughout', async () => {
    const text = (await pagesOf(run, { paper: 'a4', units: 'si' })).map(textOf).join(' ');
    expect(text).not.toMatch(/\d (psi|gpm|ft)\b/);
    expect(text).toContain('bar');
  });

  it('stops where it is no longer wanted', async () => {
    await expect(drillReportFor(run, AbortSignal.abort(new Error('gone')))).rejects.toThrow('gone');
  });
});

describe('a report of half an hour with the longest names', () => {
  let run: DrillReportRequest;
  beforeAll(() => {
    run = longRun();
  }, 120_000);

  it.each([
    ['letter', 'us'],
    ['a4', 'si'],
  ] as const)(
    'keeps its place and prints all of it, on %s in %s',
    async (paper, units) => {
      const pages = await pagesOf(run, { paper, units });
      keepsItsPlace(pages);
      expect(run.log.length).toBeGreaterThan(1000);
      const first = textOf(pages[0]!);
      expect(first).toContain('Messages missed');
      expect(first).toContain('In the main');
      const last = textOf(pages.at(-1)!);
      expect(last).toContain(` ${run.log.length} `);
      // A page holds twenty-five entries of the longest names and sentences at least.
      expect(pages.length).toBeLessThan(3 + run.log.length / 25);
    },
    120_000,
  );
});

describe('a report of a drill from a plan', () => {
  it.each(patternList.map(({ id }) => id))(
    'keeps every text in its place: %s',
    async (id) => {
      const plan = patternList.find((one) => one.id === id)!.make();
      const scene = sceneFromPlan(plan, { start: 'water flowing' });
      const pages = await pagesOf(played(scene, { seed: 3, lastS: 20 }));
      keepsItsPlace(pages);
      expect(textOf(pages[0]!)).toContain('Plan');
      expect(textOf(pages[0]!)).toContain('Messages missed');
    },
    60_000,
  );

  it('can be printed of a drill that ended before it began', async () => {
    const scene = evolutionOf('relay')!.scene();
    const drill = createDrill(scene, 1);
    step(drill, [{ role: 'instructor', action: { do: 'pause' } }]);
    const run = { ...played(scene, { seed: 1, lastS: 0 }), log: drill.log };
    const pages = await pagesOf(run);
    keepsItsPlace(pages);
    expect(textOf(pages[1]!)).toContain('Clock stopped');
  });
});
