/** When to boost, asked of a way as it is. */
import { DROP_EXPONENT } from '@plugside/hydraulics';
import { hoseCatalogue } from '../catalogue/hose.ts';
import { sharing } from '../network/shared-mains.ts';
import type { Hydrant } from '../plan/plan.ts';
import type { UnitSystem } from '../units/quantities.ts';
import type { SourcePart, SupplyWay, WhenToBoost } from './choice.ts';
import { crewOf } from './crew.ts';
import { broughtFt } from './hose-pool.ts';
import { groundOf, listed, sourceName } from './leg.ts';
import type { Situation } from './situation.ts';
import { whenToBoost } from './when-to-boost.ts';

/** Of a way that falls short its own flow is asked for, a little under its limit [gpm]. */
const SHORT_GPM = 0.5;
/** Lays compared where none are named. */
const LENGTHS = 16;

/**
 * When a second engine pays at a hydrant of a way: with the way's own hose, pump, valve and share of
 * what it is set to (the demand, or its most), the ground as it lies up to the building and level past it, and no lay longer than the
 * hose that the rigs carry.
 * @param way one of `chooseSupply`'s
 * @param situation the one that it was chosen for
 * @param options `sourceId`: which of its hydrants; the first that is pumped, else the first.
 *   `lengths` to compare at [ft]; evenly over the hose carried where left out. `units` for the rule
 * @returns null where the way takes from no hydrant, relays from it, or no second engine is free
 */
export function boostOfWay(
  way: Pick<SupplyWay, 'parts' | 'duties'>,
  situation: Situation,
  options: { sourceId?: string; lengths?: readonly number[]; units?: UnitSystem } = {},
): WhenToBoost | null {
  const part = partAsked(way.parts ?? [], options.sourceId);
  const at = situation.hydrants.find(({ hydrant }) => hydrant.id === part?.sourceId);
  const crew = crewOf(situation);
  if (!part || !at || !crew || part.pumps.length > 1) return null;
  const busy = new Set(
    (way.parts ?? []).filter((one) => one !== part).flatMap(({ pumps }) => pumps),
  );
  const booster =
    crew.pumpers.find(({ rig }) => rig.id === part.pumps[0]) ??
    crew.pumpers.find(({ rig }) => !busy.has(rig.id));
  const setGpm = (way.parts ?? []).reduce((sum, one) => sum + one.setGpm, 0);
  if (!booster || setGpm <= 0 || part.setGpm <= 0) return null;
  const pumped = part.pumps.length > 0;
  const source = { kind: 'hydrant' as const, at };
  const carriedFt = carriedOf(part, situation);
  // The hose that lies there; the street under it is shorter.
  const layFt = part.laidFt ?? at.lengthFt;
  const asFarFt = Math.max(carriedFt, layFt);
  const short = setGpm < situation.demandGpm - SHORT_GPM;
  const demandGpm = short ? part.setGpm - SHORT_GPM : part.setGpm;
  const others = (way.parts ?? []).flatMap((one) => {
    const other = situation.hydrants.find(({ hydrant }) => hydrant.id === one.sourceId);
    const shared = other && sharing(situation, at.hydrant, other.hydrant) === 'shared';
    return one !== part && shared ? [{ hydrant: other.hydrant, gpm: one.setGpm }] : [];
  });
  const found = whenToBoost(
    {
      hydrant: drawnDown(at.hydrant, others, demandGpm),
      steamer: at.steamer,
      hose: part.hose[0]!,
      lines: part.hose,
      suction: part.suction,
      rigs: [crew.attack, booster],
      demandGpm,
      ground: groundOf(source, situation.scene),
      carriedFt: asFarFt,
      valve: {
        alone: part.valve,
        boosted: pumped ? part.valve : at.steamer && booster.assistValve,
      },
      sourceName: sourceName({ source }),
      lengths: options.lengths ?? lengthsTo(asFarFt, layFt),
      department: situation.department,
    },
    options.units ? { units: options.units } : {},
  );
  const when = { ...found, layFt };
  if (others.length === 0) return when;
  const names = listed(others.map(({ hydrant }) => hydrant.name ?? hydrant.id));
  return { ...when, rule: `${when.rule} Counted while ${names} draws on the same main.` };
}

/**
 * A hydrant while others draw on its main: its test as a gauge would read it then, at the flow asked
 * about. What it shares with another is the lesser of their losses, as in a plan.
 */
function drawnDown(
  hydrant: Hydrant,
  others: readonly { hydrant: Hydrant; gpm: number }[],
  atGpm: number,
): Hydrant {
  const [other] = others;
  if (!other) return hydrant;
  const lossAtOne = (one: Hydrant) =>
    (one.staticPsi - one.residualPsi) / one.testGpm ** DROP_EXPONENT;
  const own = lossAtOne(hydrant);
  const common = Math.min(own, lossAtOne(other.hydrant));
  const otherGpm = others.reduce((sum, { gpm }) => sum + gpm, 0);
  const psiAt = (gpm: number) =>
    hydrant.staticPsi -
    common * (gpm + otherGpm) ** DROP_EXPONENT -
    (own - common) * gpm ** DROP_EXPONENT;
  // More than the main has left: its test at what it has.
  let testGpm = atGpm;
  while (testGpm > 1 && psiAt(testGpm) < 0) testGpm /= 2;
  const staticPsi = Math.max(1, psiAt(0));
  return {
    ...hydrant,
    staticPsi,
    residualPsi: Math.max(0, Math.min(staticPsi - 0.1, psiAt(testGpm))),
    testGpm,
  };
}

function partAsked(parts: readonly SourcePart[], id: string | undefined): SourcePart | undefined {
  const hydrants = parts.filter(({ kind }) => kind === 'hydrant');
  if (id !== undefined) return hydrants.find(({ sourceId }) => sourceId === id);
  return hydrants.find(({ pumps }) => pumps.length > 0) ?? hydrants[0];
}

/** Longest lay of these lines that the rigs carry the hose for [ft]. */
function carriedOf({ hose }: SourcePart, { rigs }: Situation): number {
  return Math.min(
    ...hose.map((size) => {
      const like = hose.filter((one) => one === size).length;
      const { sectionFt } = hoseCatalogue[size];
      return Math.floor(broughtFt(rigs, size) / like / sectionFt) * sectionFt;
    }),
  );
}

/** In even steps of whole hundreds over the hose carried, the lay itself among them [ft]. */
function lengthsTo(mostFt: number, layFt: number): number[] {
  const stepFt = 100 * Math.max(1, Math.ceil(mostFt / LENGTHS / 100));
  const even = Array.from({ length: LENGTHS }, (_, at) => stepFt * (at + 1));
  return [...new Set([...even.filter((one) => one < mostFt), layFt, mostFt])].sort(
    (one, two) => one - two,
  );
}
