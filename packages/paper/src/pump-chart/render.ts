/** A pump chart on paper: front for attack lines, back for supply and for where it all comes from. */
import type { Readable } from 'node:stream';
import { formatHoseSize, formatQuantity } from '@plugside/fireground';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { cautions, type Source } from '../sheet/notes.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { overIntake } from '../sheet/over-intake.ts';
import { documentOf, type Sheet } from '../sheet/sheet.ts';
import { type Cell, type Column, table } from '../sheet/table.ts';
import { put } from '../sheet/text.ts';
import { nozzleWords, originWords } from '../words.ts';
import type { ChartCell, ChartLine, ConnectionRow, OverMark, PumpChart } from './data.ts';

/** Read at the pump panel from an arm's length [pt]. */
const FIGURE_SIZE = 15;
const HEAD_SIZE = 14;

/**
 * A rig's pump chart as a PDF, two pages as a rule.
 * @returns the PDF as it is made
 */
export function renderPumpChart(chart: PumpChart, options: PaperOptions): Readable {
  return documentOf(`Pump chart, ${chart.rigName}`, options, (sheet) => {
    const { full, unit } = sheet.figures;
    sheet.begin({
      kind: 'Pump chart',
      name: chart.rigName,
      aside: `rated ${full(chart.ratedGpm, 'flow')}`,
      from: 'rig’s records, solved',
      invented: chart.invented,
    });
    sheet.paragraph(
      `Pump discharge pressure in ${unit('pressure')} for the nozzle’s rated pressure, nozzle level with the pump.`,
      { size: 10.5 },
    );
    attackLines(sheet, chart);
    floors(sheet, chart);
    standpipe(sheet, chart);
    sprinklers(sheet, chart);
    legend(sheet, chart, [...chart.attack, ...chart.connections]);
    before(sheet, chart.cautions);
    for (const block of chart.supply) supply(sheet, chart, block);
    if (chart.supply.length > 0) atRest(sheet, chart);
    legend(
      sheet,
      chart,
      chart.supply.flatMap(({ rows }) => rows),
    );
    from(sheet, chart);
  });
}

function attackLines(sheet: Sheet, chart: PumpChart): void {
  const { bare, unit } = sheet.figures;
  sheet.heading('Attack lines', { aside: `lengths in ${unit('length')}` });
  const columns: Column[] = [
    { head: 'Line and nozzle', share: 3.6, size: 12, bold: true },
    { head: 'Flow', unit: unit('flow'), share: 1.15, number: true, size: 14 },
    ...chart.lengthsFt.map((lengthFt) => ({
      head: bare(lengthFt, 'length'),
      headSize: HEAD_SIZE,
      share: 1.1,
      number: true,
      size: FIGURE_SIZE,
      bold: true,
    })),
  ];
  const rows = chart.attack.map((row): Cell[] => [
    lineWords(sheet, row.line),
    bare(row.flowGpm, 'flow'),
    ...row.cells.map((cell) => pressure(sheet, cell)),
  ]);
  table(sheet, columns, rows, { rowPt: 25 });
}

function lineWords(sheet: Sheet, line: ChartLine): Cell {
  const { units, bare } = sheet.figures;
  const nozzle = nozzleWords(line.nozzle, units);
  const hose = formatHoseSize(line.hose, units);
  switch (line.kind) {
    case 'hand line':
      return { text: hose, below: nozzle };
    case 'wyed lines':
      return {
        text: `${formatHoseSize(line.leader, units)} to a wye`,
        below: `then ${line.lines} × ${bare(line.lengthFt, 'length')} ${sheet.figures.unit('length')} of ${hose}, ${nozzle}`,
      };
    case 'master stream':
      return { text: `Monitor, ${line.lines} × ${hose}`, below: `${nozzle}; length of each line` };
  }
}

/** A pressure that the hose must not be given is not told, so that none sets it; what else is passed is marked. */
function pressure({ figures }: Sheet, { pdpPsi, over }: ChartCell): Cell {
  const text = over.includes('H') ? '—' : figures.bare(pdpPsi, 'pressure');
  return over.length > 0 ? { text, mark: over.join('') } : text;
}

function floors(sheet: Sheet, chart: PumpChart): void {
  const { full, units } = sheet.figures;
  const exact = formatQuantity(chart.storeyPsi, 'pressure', units, {
    digits: units === 'us' ? 1 : 2,
  });
  const storey = `${exact.number} ${exact.unit}`;
  sheet.heading('Nozzle above or below the pump', {
    aside: `convention; by height a storey of ${full(chart.storeyFt, 'length')} is ${storey}`,
    withPt: 46,
  });
  const steps = [1, 2, 3, 4, 5, 6];
  const width = sheet.width / (steps.length + 1);
  const baseline = sheet.y + 16;
  put(sheet.ink, 'For each floor', sheet.left, sheet.y + 12, { size: 9.5, tone: 'soft' });
  put(sheet.ink, 'up add, down take off', sheet.left, sheet.y + 24, { size: 9.5, tone: 'soft' });
  steps.forEach((floorsUp, index) => {
    const right = sheet.left + (index + 2) * width - 6;
    put(
      sheet.ink,
      `${floorsUp} ${floorsUp === 1 ? 'floor' : 'floors'}`,
      right,
      sheet.y + 10,
      { size: 8.5, tone: 'soft' },
      'right',
    );
    put(
      sheet.ink,
      `± ${full(floorsUp * chart.perFloorPsi, 'pressure')}`,
      right,
      baseline + 10,
      { size: FIGURE_SIZE - 1, bold: true },
      'right',
    );
  });
  sheet.y += 32;
}

function standpipe(sheet: Sheet, chart: PumpChart): void {
  const found = chart.connections.filter(({ kind }) => kind === 'standpipe');
  if (found.length === 0) return;
  const { bare, full, unit, units } = sheet.figures;
  sheet.heading('Into a standpipe', { aside: 'by the floor that the nozzle is on', withPt: 60 });
  const columns: Column[] = [
    { head: 'Lines, then the hand line', share: 3.6, size: 12, bold: true },
    { head: 'Flow', unit: unit('flow'), share: 1.15, number: true, size: 14 },
    ...chart.floors.map((floor) => ({
      head: `${floor}`,
      headSize: HEAD_SIZE,
      share: 1.1,
      number: true,
      size: FIGURE_SIZE,
      bold: true,
    })),
  ];
  const rows = found.flatMap((row): Cell[][] => {
    const hand = row.handLine!;
    return [
      [
        {
          text: 'Rule of thumb',
          below: `at the connection: ${full(150, 'pressure')} and ${full(chart.perFloorPsi, 'pressure')} for each floor, ${full(200, 'pressure')} from floor 10`,
        },
        '',
        ...row.rulePsi.map((psi) => bare(psi, 'pressure')),
      ],
      [
        {
          text: `Solved: ${feed(sheet, row)}`,
          below: `then ${full(hand.lengthFt, 'length')} of ${formatHoseSize(hand.hose, units)}, ${nozzleWords(hand.nozzle, units)}; ${full(chart.systemPsi, 'pressure')} for the system`,
        },
        bare(row.flowGpm, 'flow'),
        ...row.cells.map((cell) => pressure(sheet, cell)),
      ],
    ];
  });
  table(sheet, columns, rows, { rowPt: 25 });
  cautions(
    sheet,
    [
      'Pressure-reducing valves: go by the sign at the connection. NFPA 13E and the local code go before this chart; where nothing is known, begin at the rule of thumb and ask the nozzle.',
    ],
    9.5,
  );
}

function sprinklers(sheet: Sheet, chart: PumpChart): void {
  const found = chart.connections.filter(({ kind }) => kind === 'sprinkler');
  if (found.length === 0) return;
  const { bare, full, unit } = sheet.figures;
  sheet.heading('Into a sprinkler connection', {
    aside: 'the system’s placard counts',
    withPt: 60,
  });
  const columns: Column[] = [
    { head: 'Lines', share: 3.6, size: 12, bold: true },
    { head: 'Flow', unit: unit('flow'), share: 1.15, number: true, size: 14 },
    {
      head: 'Pressure',
      unit: unit('pressure'),
      share: 1.1,
      number: true,
      size: FIGURE_SIZE,
      bold: true,
    },
    { head: '', share: 6.6, size: 10 },
  ];
  const rows = found.flatMap((row): Cell[][] => [
    [
      'Rule of thumb',
      '',
      bare(row.rulePsi[0]!, 'pressure'),
      'at the connection, where its sign says nothing else',
    ],
    [
      `Solved: ${feed(sheet, row)}`,
      bare(row.flowGpm, 'flow'),
      pressure(sheet, row.cells[0]!),
      `for a system that needs ${full(row.basePsi ?? 0, 'pressure')} at its connection`,
    ],
  ]);
  table(sheet, columns, rows, { rowPt: 19 });
}

function feed({ figures: { full, units } }: Sheet, row: ConnectionRow): string {
  return `${row.lines} × ${full(row.lengthFt, 'length')} of ${formatHoseSize(row.hose, units)}`;
}

function supply(sheet: Sheet, chart: PumpChart, block: PumpChart['supply'][number]): void {
  const { bare, full, unit, units } = sheet.figures;
  const hose = formatHoseSize(block.hose, units);
  sheet.heading(`Supplying another pump through ${hose}`, {
    aside: `lengths in ${unit('length')}; leaves ${full(chart.nextIntakePsi, 'pressure')} at its intake; hose limit ${full(block.limitPsi, 'pressure')}`,
    withPt: 170,
  });
  const columns: Column[] = [
    { head: 'Flow', unit: unit('flow'), share: 1.1, number: true, size: FIGURE_SIZE - 1 },
    ...block.lengthsFt.map((lengthFt) => ({
      head: bare(lengthFt, 'length'),
      headSize: HEAD_SIZE,
      share: 1.3,
      number: true,
      size: FIGURE_SIZE,
      bold: true,
    })),
  ];
  const rows = block.rows.map((row): Cell[] => [
    bare(row.flowGpm, 'flow'),
    ...row.cells.map((cell) => pressure(sheet, cell)),
  ]);
  const past = block.lengthsFt.findIndex((lengthFt) => lengthFt > block.carriedFt);
  table(sheet, columns, rows, { rowPt: 21.5, ...(past >= 0 && { barBefore: past + 1 }) });
  if (past < 0) return;
  sheet.y += 3;
  sheet.paragraph(
    `${past === 0 ? 'All of these' : 'Right of the line'}: past the ${full(block.carriedFt, 'length')} of it aboard; it takes another rig’s hose too.`,
    { size: 9 },
  );
}

/** What no flowing figure tells. */
function atRest(sheet: Sheet, { intakeMost }: PumpChart): void {
  const { full } = sheet.figures;
  const most = full(intakeMost.psi, 'pressure');
  const set = intakeMost.relief
    ? `Its relief opens at ${most}: see that it works and where it dumps.`
    : `Its relief is not on record: set one, and ask before its intake gets more than ${most}.`;
  sheet.y += 2;
  cautions(
    sheet,
    [
      `With no water moving the next pump’s intake stands the whole pressure set here. ${set} Shut down slowly, from the fire end.`,
    ],
    10,
  );
}

const MARKS: Record<OverMark, (chart: PumpChart, sheet: Sheet) => string> = {
  H: ({ limits }, { figures: { full } }) =>
    `H over the hose’s limit (attack ${full(limits.attackHosePsi, 'pressure')}, supply ${full(limits.supplyHosePsi, 'pressure')}): do not set it; shorten the lay, lay larger hose or another line.`,
  I: ({ intakeMost }, { figures: { full } }) =>
    `I ${overIntake(intakeMost, full(intakeMost.psi, 'pressure'))} Larger hose, another line or a pump in the line needs less.`,
  M: ({ limits }, { figures: { full } }) =>
    `M raised to the least that a pump is set to (${full(limits.leastDischargePsi, 'pressure')}): gate the line where that is too much.`,
  P: ({ pump }, { figures: { full } }) =>
    `P more than the pump can add at that flow with ${full(pump.intakePsi, 'pressure')} at its intake.`,
  R: () => 'R flow above the pump’s rating: prove it by test before you count on it.',
};

/** What the marks in these rows mean. */
function legend(sheet: Sheet, chart: PumpChart, rows: readonly { cells: ChartCell[] }[]): void {
  const used = new Set(rows.flatMap(({ cells }) => cells).flatMap(({ over }) => over));
  sheet.y += 3;
  for (const mark of ['H', 'I', 'P', 'R', 'M'] as const) {
    if (used.has(mark)) sheet.paragraph(MARKS[mark](chart, sheet), { size: 9 });
  }
}

function before(sheet: Sheet, own: readonly string[]): void {
  sheet.heading('Before you set it', { withPt: 50, abovePt: 15 });
  cautions(sheet, [
    ...own,
    'One line is charted at a time: with several lines open set the pump for the one that needs most and gate the others.',
    'Figures are for level ground but for the floors given; each storey and each hill counts.',
    'Raise the pressure slowly and in steps, and never beyond the hose’s own marking.',
  ]);
}

/** NIST SP 811, B.8: a foot is 0.3048 m. */
const FT_PER_M = 1 / 0.3048;

function from(sheet: Sheet, chart: PumpChart): void {
  const { full, units } = sheet.figures;
  const heightFt = units === 'us' ? 1 : FT_PER_M;
  const weight = formatQuantity(heightFt * PSI_PER_FT, 'pressure', units, { digits: 3 });
  const perHeight = `${weight.number} ${weight.unit}`;
  sheet.heading('Where the numbers come from', { withPt: 50 });
  const list: Source[] = [
    { what: 'Pump', from: originWords(chart.pump.origin, units) },
    {
      what: `Next pump’s intake ${full(chart.intakeMost.psi, 'pressure')} at most`,
      from: originWords(chart.intakeMost.origin, units),
    },
    {
      what: `${full(chart.perFloorPsi, 'pressure')} for each floor`,
      from: `Common practice, as in “Math Formulas” driver/operator study cards. Standpipe pressures are solved by height instead: ${perHeight} for each ${units === 'us' ? 'foot' : 'metre'}, the weight of water.`,
    },
    ...chart.sources,
  ];
  const told = list.map(({ what, from: where }) => `${what}: ${where.replace(/\.$/, '')}`);
  sheet.paragraph(`${told.join('. ')}.`, { size: 8.5 });
}
