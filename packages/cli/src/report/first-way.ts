/** What the first way rests on and what can befall it. */
import {
  type DraftPart,
  mishaps,
  mishapVerdict,
  type Situation,
  type SupplyWay,
  tanksOfWay,
} from '@plugside/fireground';
import { bullets, paragraph } from '../output/paragraph.ts';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';

/** Two lines of an initial attack: 300 gpm (NFPA 1410, from "Engine Evolutions", Fire Engineering). */
const INITIAL_ATTACK_GPM = 300;
/** From the engine at the fire to water from its first line [min]; common practice, no source. */
const FIRST_WATER_MIN = 1.5;

/** Pumps at draft: what each stands at, what it can do there, how long the water lasts. */
export function openWater({ figures, ink, width }: Terminal, { drafts = [] }: SupplyWay): string {
  if (drafts.length === 0) return '';
  const lines = drafts.flatMap((draft) => [
    `${draft.rigName} at ${draft.sourceName}: lift ${figures.full(draft.liftFt.value, 'length')} (${originOf(draft)}), ${figures.full(draft.vacuumInHg, 'vacuum')} of the ${figures.full(draft.vacuumLimitInHg, 'vacuum')} to count on`,
    `Its pump gives ${figures.full(draft.pumpMostGpm, 'flow')} there at ${figures.full(draft.dischargePsi, 'pressure')}. ${draft.bindingText}`,
    ...(draft.usableGal === undefined || draft.lastsMin === undefined
      ? []
      : [
          `${figures.full(draft.usableGal, 'volume')} to draw from: ${Math.floor(draft.lastsMin)} min`,
        ]),
    ...(draft.access ? [`Access: ${draft.access}`] : []),
  ]);
  return `${ink.head('At draft')}\n${bullets(lines, width)}`;
}

function originOf({ liftFt: { origin } }: DraftPart): string {
  return `${origin.text[0]!.toLowerCase()}${origin.text.slice(1)}`;
}

/** Each tender's round and how the portable tank fares. */
export function shuttle({ figures, ink, width }: Terminal, { shuttle: one }: SupplyWay): string {
  if (!one) return '';
  const { place, tenders, pump, text } = one;
  const filled = place.fillingRig ? `, ${place.fillingRig.rigName} filling` : '';
  const columns = [
    { head: 'Tender' },
    { head: figures.head('Load', 'volume'), number: true },
    { head: 'Out, min', number: true },
    { head: 'Fill', number: true },
    { head: 'Back', number: true },
    { head: 'Dump', number: true },
    { head: figures.head('Keeps up', 'flow'), number: true },
  ];
  const rows = tenders.map((tender) => [
    tender.rigName,
    figures.bare(tender.loadGal, 'volume'),
    ...[tender.outMin, tender.fillMin, tender.backMin, tender.dumpMin].map((min) => min.toFixed(1)),
    figures.bare(tender.gpm, 'flow'),
  ]);
  return [
    ink.head(`Tenders from ${place.name}${filled}`),
    table(columns, rows),
    paragraph(`${pump.text} ${text}`, width),
  ].join('\n');
}

/** The attack engine's tank against the supply. */
export function tanks(
  { figures, ink, width, units }: Terminal,
  way: SupplyWay,
  situation: Situation,
): string {
  const given = { flowGpm: INITIAL_ATTACK_GPM, firstWaterMin: FIRST_WATER_MIN };
  const answer = tanksOfWay(way, situation, given, { units });
  if (!answer) return '';
  const head = `Tank water, with ${figures.full(INITIAL_ATTACK_GPM, 'flow')} from the first lines`;
  return `${ink.head(head)}\n${paragraph(answer.text, width)}`;
}

/** One mishap a row, as screen and paper have it. */
export function mishapTable(
  { figures, ink, units }: Terminal,
  way: SupplyWay,
  demandGpm: number,
): string {
  const all = mishaps(way, demandGpm, { units });
  if (all.length === 0) return '';
  const columns = [
    { head: 'If' },
    { head: figures.head('As set', 'flow'), number: true },
    { head: figures.head('Set anew', 'flow'), number: true },
    { head: figures.head('Wanted', 'flow'), number: true },
    { head: 'Then' },
  ];
  const rows = all.map((one) => {
    const { words, past } = mishapVerdict(one, way.plan, units);
    return [
      one.what,
      figures.bare(one.flowGpm, 'flow'),
      figures.bare(one.resetGpm, 'flow'),
      figures.bare(one.wantedGpm, 'flow'),
      past ? `${words}; as set past ${past}` : words,
    ];
  });
  return `${ink.head('What can go wrong, the first way')}\n${table(columns, rows)}`;
}
