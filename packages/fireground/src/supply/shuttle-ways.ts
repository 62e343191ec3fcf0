/** Tender shuttles as ways, alone and beside another that falls short. */
import type { ShuttleFlow } from '../shuttle/shuttle-flow.ts';
import { shuttleFlow, tendersNeeded } from '../shuttle/shuttle-flow.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { sayIn } from '../words/say.ts';
import type { CandidateContext } from './candidate.ts';
import type { Duty, RefusedWay, SupplyWay, TimeToWater } from './choice.ts';
import { rigName } from './crew.ts';
import { rigNames } from './leg.ts';
import type { FillPlace, RespondingRig, Situation } from './situation.ts';
import { MET_WITHIN_GPM } from './solve-legs.ts';
import { numberWord } from './title.ts';

/** Hose from the engine at the portable tank to the attack engine [ft], laid where both stand. */
const TANK_LINE_FT = 100;

/** Ways that a shuttle is put beside, the strongest first. */
const BESIDE_TRIED = 2;

interface Haul {
  place: FillPlace;
  tenders: readonly RespondingRig[];
  flow: ShuttleFlow;
}

/** One shuttle of every tender that comes for each fill place. */
export function shuttleWays(context: CandidateContext, situation: Situation): SupplyWay[] {
  return haulsOf(situation).map((haul) => aloneWay(context, haul));
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
 * needs at the portable tank: the attack engine cannot draft while a line feeds it.
 */
export function shuttleBeside(
  context: CandidateContext,
  situation: Situation,
  ways: readonly SupplyWay[],
): SupplyWay[] {
  const hauls = haulsOf(situation);
  const [strongest] = [...hauls].sort((one, two) => two.flow.gpm - one.flow.gpm);
  if (!strongest) return [];
  return [...ways]
    .filter(({ plan }) => plan !== null)
    .sort((one, two) => two.mostGpm - one.mostGpm)
    .flatMap((way) => besideWay(context, strongest, way) ?? [])
    .slice(0, BESIDE_TRIED);
}

function tendersOf(rigs: readonly RespondingRig[]): RespondingRig[] {
  return [...rigs]
    .filter(({ kind, rig }) => kind === 'tender' && (rig.tankGal ?? 0) >= 100)
    .sort((one, two) => one.arrivesMin - two.arrivesMin);
}

function haulsOf({ rigs, fillPlaces }: Situation): Haul[] {
  const tenders = tendersOf(rigs);
  if (tenders.length === 0) return [];
  return fillPlaces.map((place) => ({
    place,
    tenders,
    flow: shuttleFlow({
      tenders: tenders.map(({ rig }) => ({
        id: rig.id,
        name: rigName({ rig }),
        tankGal: rig.tankGal!,
      })),
      road: { oneWayMi: place.roadMi },
      fillSite: { points: 1, gpmEach: place.fillGpm },
      dumpSite: { points: 1 },
    }),
  }));
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
  const more = needed > tenders.length ? `; ${needed} alike would meet the demand` : '';
  return `The tenders are the limit: ${tenders.length} keep up ${most}${more}.`;
}

function tenderDuties({ place, tenders }: Haul): Duty[] {
  return tenders.map((tender) => ({
    rigId: tender.rig.id,
    rigName: rigName(tender),
    duty: `dumps into the portable tank, then hauls from ${place.name}`,
  }));
}

/** Tenders come full: the first load is there when its tender is and the pump has its prime. */
function timeOf(
  { tenders, flow }: Haul,
  drafting: RespondingRig,
  { times }: CandidateContext,
): TimeToWater {
  const steps: TimeToWater['steps'] = tenders.map((tender, at) => {
    const trip = flow.trips[at]!;
    const startMin = tender.arrivesMin;
    const text = `${rigName(tender)} dumps its first load`;
    return { text, startMin, endMin: startMin + trip.dumpSiteMin, rigId: tender.rig.id };
  });
  const startMin = Math.max(drafting.arrivesMin, Math.min(...tenders.map((one) => one.arrivesMin)));
  const waterAtMin = startMin + times.setUpDraftMin;
  const text = `${rigName(drafting)} sets up the portable tank and takes its prime`;
  steps.push({ text, startMin, endMin: waterAtMin, rigId: drafting.rig.id });
  const last = Math.max(...steps.map(({ endMin }) => endMin));
  return { steps, waterAtMin, fullAtMin: Math.max(waterAtMin, last) };
}

const haulCaution = {
  level: 'caution',
  text: 'Tender shuttle: loads shift and roll over, backing at the dump site needs a guide on foot. No flow is worth haste on the road.',
} as const;

const rotaFact = {
  level: 'fact',
  text: "The shuttle's flow is what it keeps up with every tender in the rota, none waiting; the first loads come full.",
} as const;

function aloneWay(context: CandidateContext, haul: Haul): SupplyWay {
  const { crew, demandGpm, units } = context;
  const { attack } = crew;
  const marginGpm = haul.flow.gpm - demandGpm;
  return {
    id: `tender-shuttle-${haul.place.id}`,
    kind: 'tender shuttle',
    title: titleOf(haul),
    sources: [haul.place.id],
    duties: [
      {
        rigId: attack.rig.id,
        rigName: rigName(attack),
        duty: 'goes to the fire, drafts from the portable tank and attacks',
      },
      ...tenderDuties(haul),
    ],
    rigsUsed: 1 + haul.tenders.length,
    hoseFt: 0,
    hoseSections: 0,
    plan: null,
    mostGpm: haul.flow.gpm,
    ...against(marginGpm),
    binding: [],
    bindingText: limitText(haul, demandGpm, units),
    orders: [],
    time: timeOf(haul, attack, context),
    notices: [haulCaution, rotaFact],
  };
}

function against(marginGpm: number): Pick<SupplyWay, 'meetsDemand' | 'marginGpm' | 'shortfallGpm'> {
  const meetsDemand = marginGpm >= -MET_WITHIN_GPM;
  return { meetsDemand, marginGpm, shortfallGpm: meetsDemand ? 0 : -marginGpm };
}

function besideWay(context: CandidateContext, haul: Haul, way: SupplyWay): SupplyWay | undefined {
  const { crew, demandGpm, units } = context;
  const used = new Set(way.duties.map(({ rigId }) => rigId));
  const pump = crew.pumpers.find(({ rig }) => !used.has(rig.id));
  const lines = way.plan!.lines.filter(({ to }) => to.startsWith(`${crew.attack.rig.id}.`));
  if (!pump || lines.length >= crew.attack.rig.intakes) return undefined;
  const say = sayIn(units);
  const mostGpm = way.mostGpm + haul.flow.gpm;
  const time = timeOf(haul, pump, context);
  const tank: Duty = {
    rigId: pump.rig.id,
    rigName: rigName(pump),
    duty: `drafts from the portable tank and feeds ${rigName(crew.attack)} through ${say.full(TANK_LINE_FT, 'length')} of supply hose`,
  };
  const tenders = haul.tenders.filter(({ rig }) => !used.has(rig.id));
  if (tenders.length < haul.tenders.length) return undefined;
  return {
    ...way,
    id: `combined-${way.id}-&-shuttle-${haul.place.id}`,
    kind: 'combined',
    title: `${way.title}; ${titleOf(haul)}`,
    sources: [...way.sources, haul.place.id],
    duties: [...way.duties, tank, ...tenderDuties(haul)],
    rigsUsed: way.rigsUsed + 1 + tenders.length,
    hoseFt: way.hoseFt + TANK_LINE_FT,
    hoseSections: way.hoseSections + 1,
    mostGpm,
    ...against(mostGpm - demandGpm),
    bindingText: `${way.bindingText} ${limitText(haul, demandGpm - way.mostGpm, units)}`.trim(),
    time: {
      steps: [...way.time.steps, ...time.steps].sort((one, two) => one.startMin - two.startMin),
      waterAtMin: Math.min(way.time.waterAtMin, time.waterAtMin),
      fullAtMin: Math.max(way.time.fullAtMin, time.fullAtMin),
    },
    notices: [
      {
        level: 'fact',
        text: `The plan shows what hose brings, ${say.full(way.mostGpm, 'flow')}; the shuttle brings ${say.full(haul.flow.gpm, 'flow')} beside it.`,
      },
      ...way.notices,
      haulCaution,
      rotaFact,
    ],
  };
}
