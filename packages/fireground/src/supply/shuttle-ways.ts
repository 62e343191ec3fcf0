/** Tender shuttles as ways, alone and beside another that falls short. */
import { hoseFrictionPsi } from '@plugside/hydraulics';
import { coefficientFor } from '../catalogue/hose.ts';
import { limitsFor } from '../catalogue/limits.ts';
import type { HoseSize } from '../plan/plan.ts';
import { tendersNeeded } from '../shuttle/shuttle-flow.ts';
import { formatHoseSize } from '../units/hose-size.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { CandidateContext } from './candidate.ts';
import type { Duty, RefusedWay, ShuttlePart, SourcePart, SupplyWay } from './choice.ts';
import { carried, rigName } from './crew.ts';
import { type Haul, haulsOf, tendersOf } from './hauls.ts';
import { supplySizes } from './hose-pool.ts';
import { listed, rigNames } from './leg.ts';
import { type PlayedHaul, playHaul } from './shuttle-run-of-way.ts';
import type { RespondingRig, Situation } from './situation.ts';
import { MET_WITHIN_GPM } from './solve-legs.ts';
import { numberWord } from './title.ts';

/** Hose from the engine at the portable tank to the attack engine [ft], laid where both stand. */
const TANK_LINE_FT = 100;

/** Ways that a shuttle is put beside, the strongest first. */
const BESIDE_TRIED = 2;

/** Shuttles alone that are shown, the strongest first. */
const ALONE_SHOWN = 3;

/** One shuttle of every tender that comes for each of the best fill places. */
export function shuttleWays(context: CandidateContext, situation: Situation): SupplyWay[] {
  return haulsOf(situation, context.crew)
    .slice(0, ALONE_SHOWN)
    .map((haul) => aloneWay(context, haul));
}

/** What keeps a shuttle from being a way. */
export function shuttleRefusals({ rigs, fillPlaces }: Situation): RefusedWay[] {
  if (fillPlaces.length === 0 || tendersOf(rigs).length > 0) return [];
  const without = rigs.filter(({ kind }) => kind === 'tender');
  const reason =
    without.length > 0
      ? `No tank is known of ${rigNames(without)}.`
      : 'No tender comes to haul water.';
  return [{ kind: 'tender shuttle', title: 'A tender shuttle', reason }];
}

/**
 * A shuttle beside the ways that bring most and fall short, with an engine that no part of them
 * needs at the portable tank: the attack engine cannot draft while a line feeds it. It fills where
 * the way takes no water, nor from a main that the way draws on.
 */
export function shuttleBeside(
  context: CandidateContext,
  situation: Situation,
  ways: readonly SupplyWay[],
): SupplyWay[] {
  return [...ways]
    .filter(({ plan }) => plan !== null)
    .sort((one, two) => two.mostGpm - one.mostGpm)
    .flatMap((way) => besideWay(context, situation, way) ?? [])
    .slice(0, BESIDE_TRIED);
}

function titleOf({ place, tenders }: Haul): string {
  return tenders.length > 3
    ? `${numberWord(tenders.length)} tenders from ${place.name}`
    : `${rigNames(tenders)} hauling from ${place.name}`;
}

function limitText({ tenders, flow, place }: Haul, demandGpm: number, units: UnitSystem): string {
  const most = sayIn(units).full(flow.gpm, 'flow');
  if (flow.limitedBy !== 'tenders') {
    const site = flow.limitedBy === 'fill site' ? `Filling at ${place.name}` : 'Dumping';
    return `${site} is the limit (${most}): a second place there would give more.`;
  }
  const each = flow.gpm / tenders.length;
  const needed = tendersNeeded(demandGpm, { gpm: each });
  const names = rigNames(tenders);
  const [keep, like] = tenders.length === 1 ? ['keeps', 'it'] : ['keep', 'them'];
  const more =
    needed > tenders.length ? `; ${numberWord(needed)} like ${like} would meet the demand` : '';
  return `The tenders are the limit: ${names} ${keep} up ${most}${more}.`;
}

/** Each rig's steps of the shuttle in the same words, and what it goes on doing. */
function dutiesOf(haul: Haul, { time }: PlayedHaul, drafting: RespondingRig, last: string): Duty[] {
  const { filling, tenders, place } = haul;
  const duty = (rig: RespondingRig, more: string[]): Duty => {
    const own = time.steps.filter(({ rigId }) => rigId === rig.rig.id);
    const words = own.map(({ text }) => text.slice(rigName(rig).length + 1));
    return { rigId: rig.rig.id, rigName: rigName(rig), duty: listed([...words, ...more]) };
  };
  return [
    duty(drafting, [last]),
    ...(filling ? [duty(filling, [])] : []),
    ...tenders.map((tender) => duty(tender, [`hauls from ${place.name}`])),
  ];
}

const haulCaution = {
  level: 'caution',
  text: 'Tender shuttle: loads shift and roll over, backing at the dump site needs a guide on foot. No flow is worth haste on the road.',
} as const;

const rotaFact = {
  level: 'fact',
  text: "The shuttle's flow is what it keeps up with every tender in the rota, none waiting; the first loads come full.",
} as const;

function shuttlePart(haul: Haul, played: PlayedHaul, pump: ShuttlePart['pump']): ShuttlePart {
  const { place, fillGpm, filling, flow } = haul;
  return {
    place: {
      id: place.id,
      name: place.name,
      kind: place.kind ?? 'hydrant',
      roadMi: place.roadMi,
      fillGpm,
      ...(filling && { fillingRig: { rigId: filling.rig.id, rigName: rigName(filling) } }),
      ...(place.access && { access: place.access }),
    },
    tenders: played.tenders,
    gpm: flow.gpm,
    limitedBy: flow.limitedBy,
    ...played.tank,
    pump,
  };
}

/** While the tank never runs dry it gives its flow from the first water on. */
function sourcePart(
  { place, flow }: Haul,
  { time, tank }: PlayedHaul,
  drafting: RespondingRig,
  hose: readonly HoseSize[],
): SourcePart {
  return {
    sourceId: place.id,
    sourceName: `${place.name} by tender`,
    kind: 'portable tank',
    pumps: [drafting.rig.id],
    valve: false,
    hose: [...hose],
    suction: [],
    lengthFt: hose.length > 0 ? TANK_LINE_FT : 0,
    setGpm: tank.drawGpm,
    mostGpm: flow.gpm,
    startGpm: tank.runsDryAtMin === null ? flow.gpm : 0,
    waterAtMin: time.waterAtMin,
    fullAtMin: time.fullAtMin,
  };
}

function aloneWay(context: CandidateContext, haul: Haul): SupplyWay {
  const { crew, demandGpm, units, times } = context;
  const { attack } = crew;
  const say = sayIn(units);
  const marginGpm = haul.flow.gpm - demandGpm;
  const played = playHaul(haul, attack, demandGpm, times, say);
  const text = `${rigName(attack)} drafts from the portable tank and pumps as its lines need: ${say.full(haul.flow.gpm, 'flow')} are kept up.`;
  const pump = { rigId: attack.rig.id, rigName: rigName(attack), pdpPsi: null, text };
  const [first, ...others] = dutiesOf(haul, played, attack, 'attacks');
  return {
    id: `tender-shuttle-${haul.place.id}`,
    kind: 'tender shuttle',
    title: titleOf(haul),
    sources: [haul.place.id],
    duties: [{ ...first!, duty: `goes to the fire, ${first!.duty}` }, ...others],
    rigsUsed: 1 + haul.tenders.length + (haul.filling ? 1 : 0),
    hoseFt: 0,
    hoseSections: 0,
    plan: null,
    mostGpm: haul.flow.gpm,
    ...against(marginGpm),
    binding: [],
    bindingText: limitText(haul, demandGpm, units),
    orders: [],
    time: { ...played.time, atFireMin: attack.arrivesMin },
    parts: [sourcePart(haul, played, attack, [])],
    shuttle: shuttlePart(haul, played, pump),
    notices: [...accessNotices(haul), haulCaution, rotaFact],
  };
}

function accessNotices({ place }: Haul): SupplyWay['notices'] {
  if (!place.access) return [];
  const text = `Access to ${place.name}: ${place.access.replace(/\.$/, '')}.`;
  return [{ level: 'fact', piece: place.id, text }];
}

function against(marginGpm: number): Pick<SupplyWay, 'meetsDemand' | 'marginGpm' | 'shortfallGpm'> {
  const meetsDemand = marginGpm >= -MET_WITHIN_GPM;
  return { meetsDemand, marginGpm, shortfallGpm: meetsDemand ? 0 : -marginGpm };
}

function besideWay(
  context: CandidateContext,
  situation: Situation,
  way: SupplyWay,
): SupplyWay | undefined {
  const { crew, demandGpm, units, department, times } = context;
  const { attack } = crew;
  const used = new Set(way.duties.map(({ rigId }) => rigId));
  const lines = way.plan!.lines.filter(({ to }) => to.startsWith(`${attack.rig.id}.`));
  const taken = lines.reduce((sum, { count }) => sum + count, 0);
  if (taken >= attack.rig.intakes) return undefined;
  const pump = crew.pumpers.find((one) => !used.has(one.rig.id) && lineOf(one) !== undefined);
  if (!pump) return undefined;
  const rigs = new Set([...used, pump.rig.id]);
  const [haul] = haulsOf(situation, crew, { sources: way.sources, rigs });
  if (!haul) return undefined;
  const hose = lineOf(pump)!;
  const say = sayIn(units);
  const mostGpm = way.mostGpm + haul.flow.gpm;
  const wantedGpm = demandGpm - way.mostGpm;
  const line = `${say.full(TANK_LINE_FT, 'length')} of ${formatHoseSize(hose, units)}`;
  const played = playHaul(haul, pump, wantedGpm, times, say, [
    {
      rig: attack,
      words: 'connects the line from the portable tank to its intake',
      lastsMin: times.connectIntakeMin,
      notBeforeMin: Math.max(
        0,
        ...way.time.steps.filter(({ rigId }) => rigId === attack.rig.id).map((one) => one.endMin),
      ),
    },
    {
      rig: pump,
      words: `sets its pressure for ${line} to ${rigName(attack)}`,
      lastsMin: times.setPressureMin,
    },
  ]);
  const { coefficient } = coefficientFor({ department }, { hose });
  const leastPsi = limitsFor({ department }).hoseFedIntakePsi;
  const pdpPsi = leastPsi + hoseFrictionPsi(coefficient, played.tank.drawGpm, TANK_LINE_FT);
  const text = `${rigName(pump)} drafts from the portable tank; set ${say.full(pdpPsi, 'pressure')} for ${say.full(played.tank.drawGpm, 'flow')} through ${line}: ${rigName(attack)}'s intake then stands at ${say.full(leastPsi, 'pressure')}.`;
  const part = shuttlePart(haul, played, {
    rigId: pump.rig.id,
    rigName: rigName(pump),
    pdpPsi,
    text,
  });
  const tenders = new Set(haul.tenders.map(({ rig }) => rig.id));
  const standBy = (way.standBy ?? []).filter(({ rigId }) => !tenders.has(rigId));
  const { standBy: _, ...base } = way;
  return {
    ...base,
    id: `combined-${way.id}-&-shuttle-${haul.place.id}`,
    kind: 'combined',
    title: `${way.title}; ${titleOf(haul)}`,
    sources: [...way.sources, haul.place.id],
    duties: [
      ...way.duties,
      ...dutiesOf(haul, played, pump, `feeds ${rigName(attack)} from the portable tank`),
    ],
    rigsUsed: way.rigsUsed + 1 + tenders.size + (haul.filling ? 1 : 0),
    hoseFt: way.hoseFt + TANK_LINE_FT,
    hoseSections: way.hoseSections + 1,
    mostGpm,
    ...against(mostGpm - demandGpm),
    bindingText: `${way.bindingText} ${limitText(haul, wantedGpm, units)}`.trim(),
    time: {
      ...way.time,
      steps: [...way.time.steps, ...played.time.steps].sort(
        (one, two) => one.startMin - two.startMin,
      ),
      waterAtMin: Math.min(way.time.waterAtMin, played.time.waterAtMin),
      fullAtMin: Math.max(way.time.fullAtMin, played.time.fullAtMin),
    },
    parts: [...(way.parts ?? []), sourcePart(haul, played, pump, [hose])],
    shuttle: part,
    ...(standBy.length > 0 && { standBy }),
    notices: [
      {
        level: 'fact',
        text: `The plan shows what hose brings, ${say.full(way.mostGpm, 'flow')}; the shuttle brings ${say.full(haul.flow.gpm, 'flow')} beside it.`,
      },
      ...way.notices,
      ...accessNotices(haul),
      haulCaution,
      rotaFact,
    ],
  };
}

/** Largest supply hose aboard that reaches from the portable tank to the attack engine. */
function lineOf(rig: RespondingRig): HoseSize | undefined {
  return supplySizes([rig]).find((size) => carried(rig, size) >= TANK_LINE_FT);
}
