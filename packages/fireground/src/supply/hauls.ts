/** Tender shuttles that could be run: a place to fill, who fills there, the tenders, what they keep up. */
import { QuantityError } from '@plugside/hydraulics';
import { draftAt } from '../draft/draft-at.ts';
import { sharing } from '../network/shared-mains.ts';
import { type ShuttleFlow, shuttleFlow } from '../shuttle/shuttle-flow.ts';
import type { Crew } from './crew.ts';
import { rigName } from './crew.ts';
import type { FillPlace, RespondingRig, Situation } from './situation.ts';

export interface Haul {
  place: FillPlace;
  /** Into a tender [gpm]: what the place gives and its engine pumps. */
  fillGpm: number;
  /** Drafts at open water and fills. */
  filling?: RespondingRig;
  tenders: readonly RespondingRig[];
  flow: ShuttleFlow;
}

/** Tenders are filled at no more than this [psi] and [gpm]: poly tanks, "Highway Hydraulics" part 3, Fire Apparatus. */
const FILL_PSI = 100;
const GREATEST_FILL_GPM = 1000;
/** Less is no filling [gpm]. */
const LEAST_FILL_GPM = 50;
/** The lift of the rating test [ft]. */
const USUAL_LIFT_FT = 10;
const FEET_PER_MILE = 5280;

/** Under this a tank hauls nothing worth a round [gal]. */
const LEAST_TANK_GAL = 100;

export function tendersOf(rigs: readonly RespondingRig[]): RespondingRig[] {
  return [...rigs]
    .filter(({ kind, rig }) => kind === 'tender' && (rig.tankGal ?? 0) >= LEAST_TANK_GAL)
    .sort((one, two) => one.arrivesMin - two.arrivesMin);
}

/** Places to fill at: those that the situation names, and its open water. */
function fillPlacesOf({ fillPlaces, waters }: Situation): FillPlace[] {
  const named = new Set(fillPlaces.map(({ id }) => id));
  return [
    ...fillPlaces,
    ...waters
      .filter(({ draft }) => !named.has(draft.id))
      .map(
        ({ draft, lengthFt, liftFt, access }): FillPlace => ({
          id: draft.id,
          name: draft.name ?? draft.id,
          roadMi: lengthFt / FEET_PER_MILE,
          fillGpm: GREATEST_FILL_GPM,
          kind: 'open water',
          liftFt,
          ...(access && { access }),
        }),
      ),
  ];
}

/**
 * One shuttle of every tender that comes for each place to fill, the strongest first.
 * @param used places and rigs that something else needs; hydrants on their mains are left out too
 */
export function haulsOf(
  situation: Situation,
  crew: Crew,
  used: { sources: readonly string[]; rigs: ReadonlySet<string> } = {
    sources: [],
    rigs: new Set(),
  },
): Haul[] {
  const tenders = tendersOf(situation.rigs);
  if (tenders.length === 0 || tenders.some(({ rig }) => used.rigs.has(rig.id))) return [];
  const known = situation.hydrants.map(({ hydrant }) => hydrant);
  const drawnOn = known.filter(({ id }) => used.sources.includes(id));
  const onTheirMain = (id: string) => {
    const own = known.find((hydrant) => hydrant.id === id);
    return own && drawnOn.some((other) => sharing({}, own, other, known) === 'shared');
  };
  return fillPlacesOf(situation)
    .filter(({ id }) => !used.sources.includes(id) && !onTheirMain(id))
    .flatMap((place) => haulFrom(place, tenders, crew, used.rigs) ?? [])
    .sort((one, two) => two.flow.gpm - one.flow.gpm);
}

function haulFrom(
  place: FillPlace,
  tenders: readonly RespondingRig[],
  { pumpers }: Crew,
  busy: ReadonlySet<string>,
): Haul | undefined {
  let { fillGpm } = place;
  let filling: RespondingRig | undefined;
  if (place.kind === 'open water') {
    filling = pumpers.find(({ rig }) => !busy.has(rig.id));
    if (!filling) return undefined;
    fillGpm = Math.min(fillGpm, draftedGpm(place, filling));
  }
  if (fillGpm < LEAST_FILL_GPM) return undefined;
  const flow = shuttleFlow({
    tenders: tenders.map(({ rig }) => ({
      id: rig.id,
      name: rigName({ rig }),
      tankGal: rig.tankGal!,
    })),
    road: { oneWayMi: place.roadMi },
    fillSite: { points: 1, gpmEach: fillGpm },
    dumpSite: { points: 1 },
  });
  return { place, fillGpm, tenders, flow, ...(filling && { filling }) };
}

/** What an engine drafts there and pumps into a tender [gpm]; 0 where no pump lifts it. */
function draftedGpm({ liftFt = USUAL_LIFT_FT }: FillPlace, { rig }: RespondingRig): number {
  const { ratedGpm, capability } = rig;
  try {
    return draftAt({
      liftFt,
      ratedGpm,
      ...(capability && { capability }),
      dischargePsi: FILL_PSI,
    }).mostGpm;
  } catch (error) {
    if (error instanceof QuantityError) return 0;
    throw error;
  }
}
