/** The legs worth trying from one source. */
import { applianceLossPsi, hoseFrictionPsi, supplyCurvePsi } from '@plugside/hydraulics';
import { coefficientFor, hoseCatalogue } from '../catalogue/hose.ts';
import { wholeSectionsFt } from '../catalogue/hose-sections.ts';
import { limitsFor } from '../catalogue/limits.ts';
import { usualHookup } from '../patterns/boosted-at-hydrant.ts';
import type { HoseSize } from '../plan/plan.ts';
import { type Crew, pumpsWorthTrying } from './crew.ts';
import { broughtFt, supplySizes } from './hose-pool.ts';
import { groundOf, type Leg, type LegSource, type Stretch } from './leg.ts';
import { marginWantedGpm } from './rank.ts';
import { type RelayHose, type RelayQuestion, relayMostGpm, relayPlan } from './relay-plan.ts';
import type { RespondingRig, Situation } from './situation.ts';

/** Sizes tried side by side, the largest first. */
const SIZES_TRIED = 3;
/** Further suction lines tried at a hydrant, and sizes of hose for them. */
const SUCTION_LINES_TRIED = 2;
const SUCTION_SIZES_TRIED = 2;

/** Changes of size tried along a lay. */
const CHANGES_TRIED = 2;

/** Lines of one or two that the hose brought is long enough for. */
export function layLines(crew: Crew, lengthFt: number): HoseSize[][] {
  const sizes = supplySizes(crew.all).filter((size) => broughtFt(crew.all, size) >= lengthFt);
  const tried = sizes.slice(0, SIZES_TRIED);
  const lines: HoseSize[][] = tried.map((size) => [size]);
  tried.forEach((one, at) => {
    for (const two of tried.slice(at)) {
      if (one !== two || broughtFt(crew.all, one) >= 2 * lengthFt) lines.push([one, two]);
    }
  });
  return lines;
}

/** The lays from a source to the fire: of one or two lines, or where no size reaches of one size and then another. */
function laysOf(source: LegSource, crew: Crew): Stretch[][] {
  const { lengthFt } = source.at;
  const lines = layLines(crew, lengthFt);
  if (lines.length === 0) return changingLays(crew, lengthFt).map((one) => [one]);
  return lines.map((of) => [{ lines: of, fromFt: 0, toFt: lengthFt }]);
}

/**
 * Lays of one line that change once to a smaller size, the larger from the water on as far as it
 * goes: whole sections of it.
 */
export function changingLays(crew: Crew, lengthFt: number): Stretch[] {
  const sizes = supplySizes(crew.all);
  const lays: Stretch[] = [];
  sizes.forEach((large, at) => {
    const { sectionFt } = hoseCatalogue[large];
    const fromFt = Math.floor(broughtFt(crew.all, large) / sectionFt) * sectionFt;
    if (fromFt <= 0 || fromFt >= lengthFt) return;
    for (const small of sizes.slice(at + 1)) {
      if (broughtFt(crew.all, small) < lengthFt - fromFt) continue;
      lays.push({ lines: [large], fromFt: 0, toFt: lengthFt, change: { hose: small, fromFt } });
    }
  });
  return lays.slice(0, CHANGES_TRIED);
}

/** On hydrant pressure alone. */
export function directLegs(source: LegSource, crew: Crew): Leg[] {
  if (source.kind !== 'hydrant') return [];
  return laysOf(source, crew).map((stretches) => ({
    source,
    pumps: [],
    stretches,
    valve: false,
    suction: [],
  }));
}

/** One engine at the hydrant, on a valve where any rig brings one that can get there; or one at draft. */
export function pumpedLegs(
  source: LegSource,
  crew: Crew,
  pumps: readonly RespondingRig[] = pumpsWorthTrying(crew),
): Leg[] {
  const legs: Leg[] = [];
  const hydrant = source.kind === 'hydrant' ? source.at : undefined;
  const valve = !!hydrant?.steamer && crew.all.some((rig) => rig.assistValve);
  for (const pump of pumps) {
    const sides = hydrant ? hydrant.hydrant.sideOutlets - (hydrant.steamer ? 0 : 1) : 0;
    const most = Math.max(0, Math.min(SUCTION_LINES_TRIED, sides, pump.rig.intakes - 1));
    const sets = suctionSets(crew, most);
    for (const stretches of laysOf(source, crew)) {
      for (const suction of sets) legs.push({ source, pumps: [pump], stretches, valve, suction });
    }
  }
  return legs;
}

/** No further suction line, one, two: of the sizes aboard, the larger first. */
function suctionSets(crew: Crew, most: number): HoseSize[][] {
  const sizes = supplySizes(crew.all).slice(0, SUCTION_SIZES_TRIED);
  const ones = sizes.map((size) => [size]);
  const twos = sizes.flatMap((one, at) => sizes.slice(at).map((two) => [one, two]));
  return [[], ...(most > 0 ? ones : []), ...(most > 1 ? twos : [])];
}

/**
 * Relays of two pumps and more, as few as carry the demand with what should be left to spare, else as
 * carry the demand; where none does, one of every pump
 * for as much as it carries.
 */
export function relayLegs(source: LegSource, crew: Crew, situation: Situation): Leg[] {
  const legs: Leg[] = [];
  const most = crew.pumpers.length;
  const { demandGpm } = situation;
  const flows = [demandGpm + marginWantedGpm(situation), demandGpm];
  for (const hose of relayHose(crew, source.at.lengthFt)) {
    const carries = flows
      .flatMap((flowGpm) =>
        countsOf(most).map((count) =>
          pumpRows(crew.pumpers, count).flatMap((row) => relayAt(row, flowGpm)),
        ),
      )
      .find((found) => found.length > 0);
    if (carries) legs.push(...carries);
    else for (const row of pumpRows(crew.pumpers, most)) legs.push(...relayAtMost(row));

    function relayAt(pumps: readonly RespondingRig[], flowGpm: number): Leg[] {
      const plan = relayPlan(relayQuestion(source, hose, pumps, situation, flowGpm));
      if (!plan.possible || plan.stations.length < 2) return [];
      const stretches = plan.stations.map(({ lines, alongFt, legFt, change }) => ({
        lines,
        fromFt: alongFt,
        toFt: Math.min(alongFt + legFt, source.at.lengthFt),
        ...(change && { change: { hose: change.hose, fromFt: change.alongFt } }),
      }));
      const row = pumps.slice(0, plan.stations.length);
      return [{ source, pumps: row, stretches, valve: false, suction: [] }];
    }

    function relayAtMost(pumps: readonly RespondingRig[]): Leg[] {
      const asked = relayQuestion(source, hose, pumps, situation, demandGpm);
      const mostGpm = relayMostGpm(asked, demandGpm);
      return mostGpm > 0 ? relayAt(pumps, mostGpm) : [];
    }
  }
  return legs;
}

/** 2, 3 … up to a count. */
function countsOf(most: number): number[] {
  return Array.from({ length: Math.max(0, most - 1) }, (_, at) => at + 2);
}

function relayQuestion(
  source: LegSource,
  hose: readonly RelayHose[],
  pumps: readonly RespondingRig[],
  situation: Situation,
  flowGpm: number,
): RelayQuestion {
  // Laid in whole sections: longer than the street.
  const lengthFt = hose.reduce((ft, part) => ft + part.lengthFt, 0);
  return {
    ground: { ...groundOf(source, situation.scene), lengthFt },
    hose,
    flowGpm,
    pumps: pumps.map(({ rig }) => rig),
    department: situation.department,
    sourceIntakePsi: sourceIntakePsi(source, flowGpm, situation),
  };
}

/** Intake of a pump at the source at a flow [psi], its hookup taken off; no less than it may be. */
function sourceIntakePsi(source: LegSource, flowGpm: number, { department }: Situation): number {
  if (source.kind === 'water') return 0;
  const { hydrant, steamer } = source.at;
  const { hose, suctionFt } = usualHookup;
  const { coefficient } = coefficientFor({ department }, { hose });
  const psi =
    supplyCurvePsi(hydrant, flowGpm) -
    applianceLossPsi(steamer ? hydrant.steamerLoss : hydrant.sideLoss, flowGpm) -
    hoseFrictionPsi(coefficient, flowGpm, suctionFt);
  return Math.max(psi, limitsFor({ department }).boosterIntakePsi);
}

/** One size all the way, two lines of a size, or the larger hose as far as it goes and then smaller. */
function relayHose(crew: Crew, lengthFt: number): RelayHose[][] {
  const choices: RelayHose[][] = layLines(crew, lengthFt)
    .filter(([one, two]) => two === undefined || one === two)
    .map((lines) => [{ lines, lengthFt: wholeSectionsFt(lines[0]!, lengthFt) }]);
  const [large, small] = supplySizes(crew.all);
  if (large && small && broughtFt(crew.all, large) < lengthFt) {
    const first = Math.floor(broughtFt(crew.all, large) / 100) * 100;
    if (first > 0 && broughtFt(crew.all, small) >= lengthFt - first) {
      choices.push([
        { lines: [large], lengthFt: first },
        { lines: [small], lengthFt: wholeSectionsFt(small, lengthFt - first) },
      ]);
    }
  }
  return choices;
}

/** Rows of so many pumps to try: as they come, and the strongest; the largest stands at the water. */
function pumpRows(pumpers: readonly RespondingRig[], count: number): RespondingRig[][] {
  if (count < 2 || count > pumpers.length) return [];
  const strongest = [...pumpers]
    .sort((one, two) => two.rig.ratedGpm - one.rig.ratedGpm)
    .slice(0, count);
  const sets = [pumpers.slice(0, count), pumpers.filter((rig) => strongest.includes(rig))];
  if (sets[0]!.every((rig, at) => rig === sets[1]![at])) sets.pop();
  return sets.map((set) => {
    const largest = Math.max(...set.map(({ rig }) => rig.ratedGpm));
    const source = set.find(({ rig }) => rig.ratedGpm === largest)!;
    return [source, ...set.filter((rig) => rig !== source)];
  });
}
