/** A haul played from the rigs' arrival on: when water is there, and how the portable tank fares. */
import { practice } from '../catalogue/origins.ts';
import type { ShuttleRun } from '../shuttle/shuttle-run.ts';
import { simulateShuttle } from '../shuttle/simulate-shuttle.ts';
import { clock } from '../words/clock.ts';
import type { Say } from '../words/say.ts';
import type { Given, ShuttlePart, TenderRound, TimeToWater } from './choice.ts';
import { rigName } from './crew.ts';
import type { Haul } from './hauls.ts';
import type { RespondingRig } from './situation.ts';
import type { TaskTimes } from './task-times.ts';

/** Unfolding the tank [min]; common practice, no source. */
const UNFOLD_MIN = 1;
/** A portable tank holds two fifths more than the tender that fills it (NFPA 1901, from memory). */
const TANK_SHARE = 1.4;
/** The tank is shown over this [min]. */
const SHOWN_MIN = 90;
/** Far as a shuttle is played [min]. */
const MOST_MIN = 720;

export interface PlayedHaul {
  time: TimeToWater;
  tank: Pick<
    ShuttlePart,
    'tankGal' | 'drawGpm' | 'drawFromMin' | 'level' | 'runsDryAtMin' | 'text'
  >;
  tenders: TenderRound[];
}

/**
 * Tenders come full and bring the tank: it is unfolded, the first load dumped, the prime taken. The
 * flow drawn is what is wanted of the shuttle, no more than it keeps up.
 * @param feeds minutes from the prime to water at the attack engine, with what is done in them;
 *   left out: the attack engine drafts itself
 */
export function playHaul(
  haul: Haul,
  drafting: RespondingRig,
  wantedGpm: number,
  times: TaskTimes,
  say: Say,
  feeds: { rig: RespondingRig; words: string; lastsMin: number; notBeforeMin?: number }[] = [],
): PlayedHaul {
  const { tenders, flow, place, filling } = haul;
  const first = Math.min(...tenders.map(({ arrivesMin }) => arrivesMin));
  const startMin = Math.max(drafting.arrivesMin, first);
  const unfoldedMin = startMin + UNFOLD_MIN;
  const primedMin = Math.max(startMin + times.setUpDraftMin, unfoldedMin);
  const steps: TimeToWater['steps'] = [];
  const step = (rig: RespondingRig, words: string, from: number, to: number) =>
    steps.push({ text: `${rigName(rig)} ${words}`, startMin: from, endMin: to, rigId: rig.rig.id });
  step(drafting, 'sets up the portable tank', startMin, unfoldedMin);
  step(drafting, 'sets its suction in the tank, takes its prime', unfoldedMin, primedMin);
  let waterAtMin = primedMin;
  for (const { rig, words, lastsMin, notBeforeMin = 0 } of feeds) {
    const from = Math.max(waterAtMin, notBeforeMin);
    waterAtMin = from + lastsMin;
    step(rig, words, from, waterAtMin);
  }
  if (filling) {
    const words = `sets up at draft at ${place.name} to fill tenders`;
    step(filling, words, filling.arrivesMin, filling.arrivesMin + times.setUpDraftMin);
  }

  const drawGpm = Math.max(0, Math.min(wantedGpm, flow.gpm));
  const firstAtMin = Object.fromEntries(
    tenders.map(({ rig, arrivesMin }) => [rig.id, Math.max(arrivesMin, unfoldedMin)]),
  );
  const tankGal = tankFor(tenders);
  const run = simulateShuttle({
    tenders: tenders.map(({ rig }) => ({
      id: rig.id,
      name: rigName({ rig }),
      tankGal: rig.tankGal!,
    })),
    road: { oneWayMi: place.roadMi },
    fillSite: { points: 1, gpmEach: haul.fillGpm },
    dumpSite: { points: 1 },
    tankGal: tankGal.value,
    drawGpm,
    drawFromMin: waterAtMin,
    untilMin: Math.min(MOST_MIN, Math.ceil(waterAtMin + SHOWN_MIN)),
    firstAtMin,
  });
  const rounds = tenders.map((tender, at): TenderRound => {
    const { loadGal, outMin, fillSiteMin, backMin, dumpSiteMin, roundTripMin, gpm } =
      flow.trips[at]!;
    const emptyAt = run.events.find(
      ({ kind, tenderId }) => kind === 'leaves empty' && tenderId === tender.rig.id,
    )?.atMin;
    const dumpedMin = emptyAt ?? firstAtMin[tender.rig.id]! + dumpSiteMin;
    const words = 'dumps its first load into the portable tank';
    step(tender, words, Math.max(firstAtMin[tender.rig.id]!, dumpedMin - dumpSiteMin), dumpedMin);
    return {
      rigId: tender.rig.id,
      rigName: rigName(tender),
      tankGal: tender.rig.tankGal!,
      loadGal,
      outMin,
      fillMin: fillSiteMin,
      backMin,
      dumpMin: dumpSiteMin,
      roundTripMin,
      gpm,
      firstAtMin: firstAtMin[tender.rig.id]!,
    };
  });
  const fullAtMin = Math.max(
    waterAtMin,
    ...steps
      .filter(({ rigId }) => tenders.some(({ rig }) => rig.id === rigId))
      .map((one) => one.endMin),
  );
  return {
    time: {
      steps: steps.sort((one, two) => one.startMin - two.startMin || one.endMin - two.endMin),
      waterAtMin,
      fullAtMin,
    },
    tank: {
      tankGal,
      drawGpm,
      drawFromMin: waterAtMin,
      level: run.level,
      runsDryAtMin: run.runsDryAtMin,
      text: [tankText(run, drawGpm, tankGal.value, waterAtMin, say), waitText(haul, run, times)]
        .filter(Boolean)
        .join(' '),
    },
    tenders: rounds,
  };
}

function tankFor(tenders: readonly RespondingRig[]): Given {
  const largest = Math.max(...tenders.map(({ rig }) => rig.tankGal!));
  return {
    value: 100 * Math.ceil((TANK_SHARE * largest) / 100),
    origin: practice(
      'Two fifths more than the largest tender’s tank (NFPA 1901, from memory); give your own',
    ),
  };
}

/** The first tender back may be there before the engine that fills it is ready. */
function waitText({ filling, flow, place }: Haul, run: ShuttleRun, times: TaskTimes): string {
  const first = run.events.find(({ kind }) => kind === 'leaves empty');
  if (!filling || !first) return '';
  const readyMin = filling.arrivesMin + times.setUpDraftMin;
  const thereMin = first.atMin + flow.trips[0]!.outMin;
  if (readyMin <= thereMin) return '';
  return `${rigName(filling)} is ready to fill at ${place.name} at ${clock(readyMin)}; the first tender is there at ${clock(thereMin)} and waits.`;
}

function tankText(
  run: ShuttleRun,
  drawGpm: number,
  tankGal: number,
  fromMin: number,
  say: Say,
): string {
  const drawn = `${say.full(drawGpm, 'flow')} drawn from a portable tank of ${say.full(tankGal, 'volume')} from ${clock(fromMin)} on`;
  if (run.runsDryAtMin !== null) {
    return `${drawn}: it is dry at ${clock(run.runsDryAtMin)}, for ${clock(run.dryMin)} min in all. Draw less until every tender is in the rota, or set up a second tank.`;
  }
  const lowest = Math.min(
    ...run.level.filter(({ atMin }) => atMin >= fromMin).map(({ gal }) => gal),
  );
  return `${drawn}: it never runs dry; at its lowest it holds ${say.full(lowest, 'volume')}.`;
}
