import {
  askedOf,
  askedText,
  type Choice,
  clock,
  deferral,
  findingText,
  laidTexts,
  otherMainsText,
  rankingText,
  type Situation,
  type SupplyWay,
  type TestFinding,
  usualRanking,
} from '@plugside/fireground';
import { bullets, paragraph } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';
import { mishapTable, openWater, shuttle, tanks } from './first-way.ts';
import { closing } from './notices.ts';

/** Ways shown in the table. */
const SHOWN = 12;

/** A choice for people: why, the ways, the first one's duties and pumps, what cannot be done. */
export function chosenSections(
  terminal: Terminal,
  choice: Choice,
  situation: Situation,
  notices: readonly TestFinding[],
): string[] {
  const { ink, width, units } = terminal;
  const [first] = choice.ways;
  const why = first?.meetsDemand ? `${first.title}. ${choice.why}` : choice.why;
  return [
    ink.answer(paragraph(why, width)),
    paragraph(`Chosen with: ${askedText(askedOf(situation), units)}`, width),
    ...(first
      ? [
          wayTable(terminal, choice),
          duties(terminal, first),
          laid(terminal, first),
          pumps(terminal, first, situation),
          openWater(terminal, first),
          shuttle(terminal, first),
          tanks(terminal, first, situation),
          mishapTable(terminal, first, choice.demandGpm),
        ]
      : []),
    refused(terminal, choice),
    closing(terminal, [
      ...(first?.notices ?? []),
      ...choice.notices.filter(({ text }) => text !== deferral),
      ...notices.map((one) => ({
        level: one.level === 'fact' ? ('fact' as const) : ('caution' as const),
        text: findingText(one, units),
      })),
    ]),
  ];
}

/** With what decides the order: the time of all its water, little to spare, mains that may be one. */
function wayTable({ figures, ink, units, width }: Terminal, { ways }: Choice): string {
  const shown = ways.slice(0, SHOWN);
  const notes = shown.map(({ littleToSpare, mains }) =>
    [littleToSpare ? 'little to spare' : undefined, otherMainsText(mains, units)]
      .filter((note) => note !== undefined)
      .join('; '),
  );
  const noted = notes.some((note) => note !== '');
  const rows = shown.map((way, index) => [
    String(index + 1),
    way.title,
    figures.bare(way.mostGpm, 'flow'),
    way.meetsDemand
      ? `+${figures.bare(way.marginGpm, 'flow')}`
      : `-${figures.bare(way.shortfallGpm, 'flow')}`,
    clock(way.time.waterAtMin),
    clock(way.time.fullAtMin),
    String(way.rigsUsed),
    figures.bare(way.hoseFt, 'length'),
    ...(noted ? [notes[index]!] : []),
  ]);
  const columns = [
    { head: '', number: true },
    { head: 'Way' },
    { head: figures.head('Brings', 'flow'), number: true },
    { head: 'To spare', number: true },
    { head: 'Water at', number: true },
    { head: 'All at', number: true },
    { head: 'Rigs', number: true },
    { head: figures.head('Hose', 'length'), number: true },
    ...(noted ? [{ head: 'Note' }] : []),
  ];
  const more = ways.length - rows.length;
  return [
    `${ink.head('Ways')}\n${table(columns, rows)}`,
    ...(more > 0 ? [`${more} more bring less or come later.`] : []),
    paragraph(rankingText(usualRanking, units), width),
  ].join('\n');
}

function duties({ ink, width }: Terminal, { duties: all, standBy = [], time }: SupplyWay): string {
  const lines = [...all, ...standBy].map(({ rigName, duty }) => `${rigName} ${duty}`);
  const steps = time.steps.map(({ text, startMin, endMin }) =>
    endMin > startMin
      ? `${clock(startMin)} to ${clock(endMin)}  ${text}`
      : `${clock(startMin)}  ${text}`,
  );
  return [
    ink.head('Who does what, the first way'),
    bullets(lines, width),
    '',
    ink.head('Minutes from the call'),
    ...steps.map((step) => `  ${step}`),
    `  ${clock(time.waterAtMin)}  Water at the engine`,
  ].join('\n');
}

/** Hose is laid in whole sections: more than the street is long. */
function laid({ ink, width, units }: Terminal, { parts = [] }: SupplyWay): string {
  const lines = laidTexts(parts, units);
  return lines.length === 0 ? '' : `${ink.head('Hose laid')}\n${bullets(lines, width)}`;
}

function pumps(
  { figures, ink }: Terminal,
  { orders, plan }: SupplyWay,
  { rigs }: Situation,
): string {
  if (orders.length === 0) return '';
  const lines = orders.map(({ id, pdpPsi, radio }) => {
    const drawn = plan?.rigs.find((rig) => rig.id === id);
    const name = drawn?.name ?? rigs.find(({ rig }) => rig.id === id)?.rig.name ?? id;
    // The way ends at the intakes of the engines at the fire, of which its plan has one.
    const atFire = plan !== null && (id === plan.scene || !drawn);
    const set = atFire ? 'as its lines need' : figures.full(pdpPsi, 'pressure');
    return `  ${name}: ${set}. "${radio}"`;
  });
  return `${ink.head('Pumps, and what their operators say')}\n${lines.join('\n')}`;
}

function refused({ ink, width }: Terminal, { refused: all }: Choice): string {
  if (all.length === 0) return '';
  const lines = all.map(({ title, reason }) => `${title}: ${reason}`);
  return `${ink.head('Looked at, and cannot be done')}\n${bullets(lines, width)}`;
}
