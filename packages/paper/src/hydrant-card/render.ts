/** Hydrant cards on paper: one by itself, or a stack of them as one file. */
import type { Readable } from 'node:stream';
import {
  findingText,
  formatHoseSize,
  formatQuantity,
  type LimitKind,
  toInside,
  type UnitSystem,
} from '@plugside/fireground';
import { PSI_PER_FT } from '@plugside/hydraulics';
import { inTens } from '../sheet/figures.ts';
import { cautions } from '../sheet/notes.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { overIntake } from '../sheet/over-intake.ts';
import { documentOf, type Sheet } from '../sheet/sheet.ts';
import { type Cell, type Column, table, WORDS_ROOM } from '../sheet/table.ts';
import { fitted, put, wrapped, wrappedTo } from '../sheet/text.ts';
import { supplyCurve } from './curve.ts';
import type { CardTest, HydrantCard, LayFlow, LayTable } from './data.ts';

const CURVE_HEIGHT = 146;
/** What gives way where a card has much to beware of; figures are read from an arm's length [pt]. */
interface Room {
  neighbours: number;
  figurePt: number;
  notePt: number;
}

const ROOMS: readonly Room[] = [
  { neighbours: 6, figurePt: 15, notePt: 9.5 },
  { neighbours: 6, figurePt: 14, notePt: 9 },
  { neighbours: 5, figurePt: 13.5, notePt: 9 },
  { neighbours: 4, figurePt: 13, notePt: 8.5 },
  { neighbours: 3, figurePt: 12.5, notePt: 8.5 },
  { neighbours: 2, figurePt: 12, notePt: 8 },
];

/** The loosest that still ends on this page; the tightest where none does. */
function roomFor(sheet: Sheet, card: HydrantCard): Room {
  const facts = 10 + 14 * factRows(sheet, card).length;
  const rows = card.lays.reduce((sum, { rows: some }) => sum + some.length, 0);
  const bounds = card.lays.reduce((sum, lay) => sum + whoseHose(sheet, lay).size, 0);
  const texts = beware(sheet, card);
  const from = numbersFrom(card);
  const needed = ({ neighbours, figurePt, notePt }: Room) => {
    const near = Math.min(neighbours, card.neighbours.length);
    const beside = facts + (near > 0 ? 18 : 0) + 12.8 * near;
    const indent = notePt * 1.3;
    const lines = (text: string, size: number, width: number) =>
      wrapped(sheet.ink, text, width, { size }).length;
    const noted = texts.reduce(
      (sum, text) => sum + lines(text, notePt, sheet.width - indent) * notePt * 1.25 + 3,
      0,
    );
    return (
      Math.max(beside, card.test ? CURVE_HEIGHT + 8 : 0) +
      card.lays.length * 67 +
      rows * figurePt * 1.34 +
      bounds * WORDS_ROOM +
      (card.noLays ? 60 : 0) +
      NOTES_HEAD +
      noted +
      lines(from, SOURCE_PT, sheet.width) * SOURCE_PT * 1.3
    );
  };
  return ROOMS.find((room) => sheet.y + needed(room) <= sheet.bottom) ?? ROOMS.at(-1)!;
}

const SOURCE_PT = 8;
/** Heading of the notes, and the gap above the sources [pt]. */
const NOTES_HEAD = 28;

/**
 * One hydrant's card as a PDF, a page as a rule.
 * @returns the PDF as it is made
 */
export function renderHydrantCard(card: HydrantCard, options: PaperOptions): Readable {
  return documentOf(`Hydrant card, ${card.name}`, options, (sheet) => drawHydrantCard(sheet, card));
}

/** Draws a card, beginning a page for it. */
export function drawHydrantCard(sheet: Sheet, card: HydrantCard): void {
  const { test } = card;
  sheet.begin({
    kind: 'Hydrant card',
    name: card.name,
    aside: test?.class ? `class ${test.class.name}, ${test.class.colour}` : 'class not known',
    from: test ? `flow test of ${test.testedOn}` : 'no usable flow test',
    invented: card.invented,
  });
  if (card.outOfService) outOfService(sheet, card.outOfService.reason);
  if (test) figures(sheet, test);
  const room = roomFor(sheet, card);
  curveAndFacts(sheet, card, room);
  for (const lay of card.lays) layTable(sheet, card, lay, room);
  if (card.noLays) {
    sheet.heading('At the attack engine’s intake');
    cautions(sheet, [card.noLays], 12);
  }
  notes(sheet, card, room);
}

function outOfService(sheet: Sheet, reason: string | undefined): void {
  const { ink, left, width } = sheet;
  const why = wrappedTo(ink, reason ?? 'No reason on record.', width - 24, { size: 13 }, 2, 8);
  const height = 38 + why.lines.length * (why.style.size * 1.25) + 4;
  sheet.y += 8;
  ink.box(left + 1.5, sheet.y, width - 3, height, { widthPt: 3, tone: 'ink' });
  sheet.y += 29;
  put(ink, 'OUT OF SERVICE', left + 12, sheet.y, { size: 27, bold: true });
  sheet.y += 4;
  for (const line of why.lines) {
    sheet.y += why.style.size * 1.25;
    put(ink, line, left + 12, sheet.y, why.style);
  }
  sheet.y += 12;
}

/** The five numbers of the card, side by side. */
function figures(sheet: Sheet, test: CardTest): void {
  const { bare, full, unit } = sheet.figures;
  const cells: [head: string, figure: string, unit: string, share: number][] = [
    ['Static', bare(test.staticPsi, 'pressure'), unit('pressure'), 0.15],
    [
      `Residual at ${full(test.testGpm, 'flow')}`,
      bare(test.residualPsi, 'pressure'),
      unit('pressure'),
      0.22,
    ],
    [
      `Flow at ${full(20, 'pressure')}`,
      test.q20Gpm > 0 ? bare(test.q20Gpm, 'flow') : '—',
      unit('flow'),
      0.23,
    ],
    ['Tested', test.testedOn, '', 0.2],
    [test.overdue ? 'Test again: overdue since' : 'Test again by', test.retestOn, '', 0.2],
  ];
  const { ink } = sheet;
  let x: number = sheet.left;
  const head = sheet.y + 17;
  const line = sheet.y + 40;
  for (const [label, figure, shownUnit, share] of cells) {
    const width = sheet.width * share;
    const said = fitted(ink, label, width - 6, { size: 9.5, tone: 'soft' }, 6.5);
    put(ink, said.text, x, head, said.style);
    const size = shownUnit === '' ? 17 : 22;
    const end = put(ink, figure, x, line, { size, bold: true });
    put(ink, shownUnit, end + 4, line, { size: 11 });
    x += width;
  }
  sheet.y += 47;
  ink.line([sheet.left, sheet.y], [sheet.right, sheet.y], { widthPt: 0.5, tone: 'line' });
}

function curveAndFacts(sheet: Sheet, card: HydrantCard, room: Room): void {
  const { ink } = sheet;
  const top = sheet.y + 8;
  const curveWidth = card.test ? sheet.width * 0.56 : 0;
  if (card.test) {
    supplyCurve(sheet, card.test, card.mainResidualPsi, {
      x: sheet.left,
      y: top,
      width: curveWidth,
      height: CURVE_HEIGHT,
    });
  }
  const gap = card.test ? 18 : 0;
  const x = sheet.left + curveWidth + gap;
  const width = sheet.right - x;
  let y = top + 2;
  const row = (head: string, text: string) => {
    const headWidth = 62;
    const shown = wrappedTo(ink, text, width - headWidth, { size: 10.5 }, 2, 7.5);
    put(ink, head, x, y + 10, { size: 9.5, tone: 'soft' });
    shown.lines.forEach((lineText, index) => {
      put(ink, lineText, x + headWidth, y + 10 + index * shown.style.size * 1.15, shown.style);
    });
    y += 14 + (shown.lines.length - 1) * shown.style.size * 1.15;
  };
  for (const [head, text] of factRows(sheet, card)) row(head, text);
  if (card.neighbours.length > 0) {
    y += 4;
    put(ink, 'Next hydrants', x, y + 10, { size: 9.5, bold: true });
    y += 14;
    for (const near of card.neighbours.slice(0, room.neighbours)) {
      const { full } = sheet.figures;
      const flow = near.q20Gpm === undefined ? 'flow not known' : `${full(near.q20Gpm, 'flow')}`;
      const aside = near.outOfService ? 'OUT OF SERVICE' : flow;
      const end = `${full(near.alongFt, 'length')}, ${aside}`;
      const endWidth = ink.widthOf(end, 9.5, false);
      const name = fitted(ink, near.name, width - endWidth - 8, { size: 10.5 }, 7);
      put(ink, name.text, x, y + 9.5, name.style);
      put(ink, end, x + width, y + 9.5, { size: 9.5 }, 'right');
      y += 12.8;
    }
  }
  sheet.y = Math.max(y, card.test ? top + CURVE_HEIGHT : top) + 2;
}

function factRows(sheet: Sheet, { facts }: HydrantCard): [string, string][] {
  const { full } = sheet.figures;
  const inches = (size: number) => full(size, 'diameter');
  const outlets = [
    facts.steamerIn === undefined ? 'no large outlet' : `${inches(facts.steamerIn)} steamer`,
    facts.sideOutlets === 0 ? '' : `${facts.sideOutlets} × ${inches(facts.sideOutletIn)}`,
  ];
  const rows: [string, string | undefined][] = [
    ['Outlets', outlets.filter(Boolean).join(', ')],
    ['Main', facts.mainIn === undefined ? 'size not on record' : inches(facts.mainIn)],
    ['Type', facts.type],
    ['Owner', facts.owner],
    ['Height', facts.elevationFt === undefined ? undefined : full(facts.elevationFt, 'length')],
    ['Street', facts.street],
    ['Place', placeWords(facts)],
  ];
  return rows.filter((row): row is [string, string] => row[1] !== undefined);
}

function placeWords({ latitude, longitude }: HydrantCard['facts']): string {
  const north = `${Math.abs(latitude).toFixed(5)} ${latitude < 0 ? 'S' : 'N'}`;
  return `${north}, ${Math.abs(longitude).toFixed(5)} ${longitude < 0 ? 'W' : 'E'}`;
}

/** What stops more, in a table's cell. */
const STOPPED: Record<LimitKind, string> = {
  'main residual': 'main',
  'booster intake': 'booster’s intake',
  'relay intake': 'relay’s intake',
  'attack intake': 'attack intake',
  'draft vacuum': 'lift',
  'hose pressure': 'hose',
  'hilltop pressure': 'hilltop',
  'pump capability': 'pump',
  'scene pumps': 'pumps at the scene',
  'nozzle pressure': 'nozzle',
  'hose velocity': 'hose',
};

const stopped = ({ stoppedBy }: LayFlow) =>
  [...new Set(stoppedBy.map((kind) => STOPPED[kind]))].join(', ') || '—';

function layTable(sheet: Sheet, card: HydrantCard, lay: LayTable, { figurePt }: Room): void {
  const { bare, full, unit, units } = sheet.figures;
  const hose = formatHoseSize(lay.hose, units);
  sheet.heading(`At the attack engine’s intake, one line of ${hose}`, {
    aside:
      lay.carriers.length === 0
        ? 'no rig has it on record'
        : `${card.attack.name} carries ${full(lay.carriedFt, 'length')} of it`,
    withPt: 150,
  });
  const columns: Column[] = [
    { head: 'Lay', unit: unit('length'), share: 0.9, number: true, size: figurePt - 1 },
    { head: 'Flow', unit: unit('flow'), share: 1.2, number: true, size: figurePt, bold: true },
    { head: 'stopped by', share: 1.6, size: 11.5 },
    { head: 'Flow', unit: unit('flow'), share: 1.2, number: true, size: figurePt, bold: true },
    {
      head: 'booster set to',
      unit: unit('pressure'),
      share: 1.2,
      number: true,
      size: figurePt - 1,
    },
    { head: 'stopped by', share: 1.6, size: 11.5 },
  ];
  const valve = card.valve ? ' through its assist valve' : '';
  const clapper = card.valve ? ', through the clapper' : '';
  const rows = lay.rows.map(({ lengthFt, alone, boosted }): Cell[] => [
    bare(lengthFt, 'length'),
    bare(alone.flowGpm, 'flow'),
    stopped(alone),
    bare(boosted.flowGpm, 'flow'),
    setTo(card, boosted.pdpPsi, bare(boosted.pdpPsi, 'pressure')),
    stopped(boosted),
  ]);
  table(sheet, columns, rows, {
    rowPt: figurePt * 1.3,
    wordsAbove: whoseHose(sheet, lay),
    over: [
      { from: 1, to: 3, text: `Hydrant pressure alone${clapper}` },
      { from: 3, to: 6, text: `Boosted by ${card.booster.name}${valve}` },
    ],
  });
}

/** A booster's pressure, marked where the attack engine's intake gets more than it should at rest. */
function setTo(card: HydrantCard, pdpPsi: number, text: string): Cell {
  if (pdpPsi <= 0) return 'not pumping';
  return passesIntake(card, pdpPsi) ? { text, mark: 'I' } : text;
}

/** As pump charts mark it. */
function passesIntake({ intakeMost }: HydrantCard, pdpPsi: number): boolean {
  return pdpPsi > intakeMost.psi + 0.5;
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** By row: what holds from there on, where the hose of one rig, or of all, no longer reaches. */
function whoseHose(sheet: Sheet, { rows, carriers }: LayTable): Map<number, string> {
  const { full } = sheet.figures;
  const words = new Map<number, string>();
  const reachFt = (rigs: number) =>
    carriers.slice(0, rigs).reduce((sum, { lengthFt }) => sum + lengthFt, 0);
  rows.forEach(({ rigs }, at) => {
    const before = at === 0 ? 1 : rows[at - 1]!.rigs;
    if (rigs === before || carriers.length === 0) return;
    const past = `Past ${full(reachFt(rigs === null ? carriers.length : rigs - 1), 'length')}`;
    if (rigs === null) {
      words.set(
        at,
        carriers.length === 1
          ? `${past}: more of this hose than is on record; no other rig carries it`
          : `${past}: more of this hose than all rigs carry together`,
      );
      return;
    }
    const names = carriers
      .slice(0, rigs)
      .map(({ name, lengthFt }) => `${name} ${full(lengthFt, 'length')}`);
    words.set(at, `${past}: hose of ${COUNTS[rigs] ?? rigs} rigs (${names.join(', ')})`);
  });
  return words;
}

/** Facts of a test that bear on how far it is trusted. */
const TOLD_FACTS = ['drop-under-25', 'below-20'];

/** A round height in either system: 10 ft, 5 m. */
const RISE_FT: Record<UnitSystem, number> = { us: 10, si: toInside(5, 'length', 'm') };

function beware(sheet: Sheet, card: HydrantCard): string[] {
  const { full, units } = sheet.figures;
  const stepFt = RISE_FT[units];
  const rise = formatQuantity(stepFt * PSI_PER_FT, 'pressure', units, {
    digits: units === 'us' ? 1 : 2,
  });
  const told = card.findings
    .filter(({ level, code }) => level !== 'fact' || TOLD_FACTS.includes(code))
    .map((found) => inTens(findingText(found, units)));
  if (!card.test && card.findings.length === 0) {
    told.push('No flow test on record: test it before a plan rests on it.');
  }
  const loss = card.valve?.clapperLoss;
  return [
    ...card.cautions,
    ...told,
    ...(loss && card.lays.length > 0
      ? [
          `Hydrant pressure alone passes the assist valve’s clapper: ${full(loss.lossPsi, 'pressure')} at ${full(loss.atGpm, 'flow')} is counted.`,
        ]
      : []),
    ...(card.lays.some(({ rows }) => rows.some(({ boosted }) => passesIntake(card, boosted.pdpPsi)))
      ? [`I: ${overIntake(card.intakeMost, full(card.intakeMost.psi, 'pressure'))}`]
      : []),
    `Keep at least ${full(card.mainResidualPsi, 'pressure')} in the main: drawn lower it can take in foul water or collapse. Other hydrants on the same main share its flow.`,
    `Level ground: each ${full(stepFt, 'length')} that the engine stands higher costs ${rise.number} ${rise.unit}.`,
  ];
}

function numbersFrom({ sources }: HydrantCard): string {
  const told = sources.map(({ what, from }) => `${what}: ${from.replace(/\.$/, '')}`);
  return `Numbers from: ${told.join('. ')}.`;
}

function notes(sheet: Sheet, card: HydrantCard, { notePt }: Room): void {
  sheet.heading('Beware', { withPt: 40, abovePt: 15 });
  cautions(sheet, beware(sheet, card), notePt);
  sheet.y += 3;
  sheet.paragraph(numbersFrom(card), { size: SOURCE_PT, tone: 'soft' });
}
