import { requireWithin } from '@plugside/hydraulics';
import { shuttleDefaults } from './shuttle-defaults.ts';
import { shuttleTravelMin, tenderRateGpm } from './tender-rate.ts';

/** A tender on the road between fill and dump. What is left out is `shuttleDefaults`. */
export interface Tender {
  id: string;
  name?: string;
  tankGal: number;
  usableShare?: number;
  /** What its fill piping takes [gpm]. */
  fillGpm?: number;
  dumpGpm?: number;
  fillHandlingMin?: number;
  dumpHandlingMin?: number;
}

/** The road from dump site to fill site. */
export interface ShuttleRoad {
  /** One way [mi]. */
  oneWayMi: number;
  /** On the road [min/mi]; 1.7 (35 mph) where left out. */
  minPerMi?: number;
  /** Start-and-stop time: on each way, as where left out, or once for the whole route. */
  startCounted?: 'each way' | 'once';
  /** Driven and timed [min]; each goes before the rule. */
  measuredOutMin?: number;
  measuredBackMin?: number;
}

/** A place where tenders are filled or emptied. */
export interface ShuttleSite {
  /** Tenders at once, 1 to 10. */
  points: number;
}

export interface FillSite extends ShuttleSite {
  /** What the source gives at each point [gpm]; left out: what the tender takes. */
  gpmEach?: number;
}

/** One round of a tender, in its parts. Minutes, gallons, gpm. */
export interface TenderTrip {
  /** Dropped on each round. */
  loadGal: number;
  /** Dump site to fill site, empty. */
  outMin: number;
  /** Handling and filling. */
  fillSiteMin: number;
  /** Fill site to dump site, loaded. */
  backMin: number;
  /** Handling and dumping. */
  dumpSiteMin: number;
  roundTripMin: number;
  gpm: number;
  /** Flow into it and out of it. */
  fillGpm: number;
  dumpGpm: number;
  fillHandlingMin: number;
  dumpHandlingMin: number;
}

/**
 * One round of a tender: out, fill, back, dump.
 *   minutes = out + (handling + load/fill) + back + (handling + load/dump); gpm = load/minutes
 * @param tender tank [gal], what it takes and gives [gpm], handling [min]
 * @param road one way [mi], or driven and timed [min]
 * @param fillSite what its points give [gpm]
 * @param place where the tender stands among others, for the field's name in a refusal: `tenders[0].`
 * @returns parts of the round [min], load [gal], flow [gpm]
 * Valid: no waiting. Only the load is filled again: what did not run out is still aboard.
 * Outside: throws QuantityError.
 * Source: shuttleTravelMin, tenderRateGpm; the split of handling is the lesson's fill site time and
 * dump site time.
 */
export function tenderTrip(
  tender: Tender,
  road: ShuttleRoad,
  fillSite: FillSite = { points: 1 },
  place = '',
): TenderTrip {
  const {
    tankGal,
    usableShare = shuttleDefaults.usableShare,
    dumpGpm = shuttleDefaults.dumpGpm,
    fillHandlingMin = shuttleDefaults.fillHandlingMin,
    dumpHandlingMin = shuttleDefaults.dumpHandlingMin,
  } = tender;
  const takesGpm = tender.fillGpm ?? fillSite.gpmEach ?? shuttleDefaults.fillGpm;
  const fillGpm = Math.min(takesGpm, fillSite.gpmEach ?? takesGpm);
  requireWithin(`${place}tankGal`, tankGal, [100, 15_000], 'gal');
  requireWithin(`${place}usableShare`, usableShare, [0.1, 1], '', 'Give the share as 0.1 to 1.');
  requireWithin(`${place}fillGpm`, fillGpm, [20, 5000], 'gpm');
  requireWithin(`${place}dumpGpm`, dumpGpm, [20, 5000], 'gpm');
  requireWithin(`${place}fillHandlingMin`, fillHandlingMin, [0, 60], 'min');
  requireWithin(`${place}dumpHandlingMin`, dumpHandlingMin, [0, 60], 'min');
  const { outMin, backMin } = roadTimes(road);
  const loadGal = usableShare * tankGal;
  const fillSiteMin = fillHandlingMin + loadGal / fillGpm;
  const dumpSiteMin = dumpHandlingMin + loadGal / dumpGpm;
  const roundTripMin = outMin + fillSiteMin + backMin + dumpSiteMin;
  return {
    loadGal,
    outMin,
    fillSiteMin,
    backMin,
    dumpSiteMin,
    roundTripMin,
    gpm: tenderRateGpm(tankGal, roundTripMin, usableShare),
    fillGpm,
    dumpGpm,
    fillHandlingMin,
    dumpHandlingMin,
  };
}

function roadTimes(road: ShuttleRoad): { outMin: number; backMin: number } {
  const { oneWayMi, minPerMi = shuttleDefaults.minPerMi, startCounted = 'each way' } = road;
  requireWithin('road.oneWayMi', oneWayMi, [0, 50], 'mi');
  requireWithin('road.minPerMi', minPerMi, [0.5, 20], 'min/mi');
  const startMin =
    startCounted === 'once' ? shuttleDefaults.startMin / 2 : shuttleDefaults.startMin;
  const ruleMin = shuttleTravelMin(oneWayMi, { minPerMi, startMin });
  const outMin = road.measuredOutMin ?? ruleMin;
  const backMin = road.measuredBackMin ?? ruleMin;
  requireWithin('road.measuredOutMin', outMin, [0, 500], 'min');
  requireWithin('road.measuredBackMin', backMin, [0, 500], 'min');
  return { outMin, backMin };
}
