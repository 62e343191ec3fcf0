/** The pumps of a way that stand at open water: what they can do there, and how long the water lasts. */
import { IN_HG_PER_PSI, QuantityError } from '@plugside/hydraulics';
import { byDefault } from '../catalogue/origins.ts';
import { draftAt } from '../draft/draft-at.ts';
import { stillWaterMin } from '../draft/still-water.ts';
import type { Origin, Rig } from '../plan/plan.ts';
import type { Notice } from '../questions/answers.ts';
import type { UnitSystem } from '../units/quantities.ts';
import { limitSentence } from '../words/answer.ts';
import { sayIn } from '../words/say.ts';
import type { AsSet } from './as-set.ts';
import type { DraftPart, SourcePart } from './choice.ts';
import { rigName } from './crew.ts';
import type { Leg } from './leg.ts';
import { hardSuction } from './leg-plan.ts';
import { settled } from './rank.ts';
import type { WaterAtHand } from './situation.ts';

/** The rural standard asks this of a static source [min]: "Highway Hydraulics" part 3, Fire Apparatus (250 gpm for 2 h). */
export const STATIC_SOURCE_MIN = 120;

/** Pressures that `draftAt` takes [psi]. */
const DISCHARGE_PSI = { least: 20, most: 400 };

const oneSuction: Origin = byDefault('Not on record: one, as in the rating test');
/** Pumps rated above this are rated with two suctions or more [gpm]; the rating standard's table, from memory. */
const ONE_SUCTION_GPM = 1250;
const fewerThanRated: Origin = byDefault(
  'Not on record: one. The rating test of such a pump has two or more, and it gives more with them',
);
const fromRecord: Origin = byDefault('Height of the water on record');
const usualWater: Origin = byDefault('Not on record: 60 °F as in the rating test');

/** The usual lift where no record or terrain tells it. */
export const usualLift: Origin = byDefault('Not on record: the lift of the rating test');

/** @param parts in the order of the legs */
export function draftParts(
  legs: readonly Leg[],
  parts: readonly SourcePart[],
  asSet: AsSet,
  units: UnitSystem,
): DraftPart[] {
  return legs.flatMap((leg, at): DraftPart[] => {
    const [pump] = leg.pumps;
    if (leg.source.kind !== 'water' || !pump) return [];
    const water = leg.source.at;
    const { draft, usableGal, access } = water;
    const part = parts[at]!;
    const solved = asSet.state.rigs.find(({ id }) => id === pump.rig.id);
    if (!solved) return [];
    const dischargePsi = solved.pdpPsi;
    const able = ableAt(water, pump.rig, dischargePsi, units);
    if (!able) return [];
    const vacuum = asSet.limits.find(
      ({ kind, piece }) => kind === 'draft vacuum' && piece === pump.rig.id,
    );
    const { hose, lengthFt } = hardSuction;
    const lasts =
      usableGal === undefined || part.setGpm <= 0 ? null : stillWaterMin(usableGal, part.setGpm);
    const lastsMin = lasts === null ? null : settled(lasts);
    return [
      {
        sourceId: draft.id,
        sourceName: part.sourceName,
        rigId: pump.rig.id,
        rigName: rigName(pump),
        liftFt: { value: water.liftFt, origin: water.liftOrigin ?? usualLift },
        altitudeFt: { value: draft.altitudeFt, origin: fromRecord },
        waterTempF: { value: draft.waterTempF, origin: usualWater },
        suction: {
          hose,
          lengthFt,
          count: 1,
          origin: pump.rig.ratedGpm > ONE_SUCTION_GPM ? fewerThanRated : oneSuction,
        },
        dischargePsi,
        pumpMostGpm: able.mostGpm,
        bindingText: limitSentence(able.plan, able.binding, units),
        vacuumInHg: vacuum?.value ?? Math.max(0, -solved.intakePsi * IN_HG_PER_PSI),
        vacuumLimitInHg: vacuum?.limit ?? able.vacuumLimitInHg,
        ruleGpm: able.ruleGpm,
        ...(usableGal !== undefined && { usableGal }),
        ...(lastsMin !== null && { lastsMin }),
        ...(access && { access }),
      },
    ];
  });
}

/** What the pump can do at the water; undefined where no pump is asked such a thing. */
function ableAt(
  { draft, liftFt }: WaterAtHand,
  { name, id, ratedGpm, capability }: Pick<Rig, 'name' | 'id' | 'ratedGpm' | 'capability'>,
  dischargePsi: number,
  units: UnitSystem,
) {
  try {
    return draftAt(
      {
        liftFt,
        altitudeFt: draft.altitudeFt,
        waterTempF: draft.waterTempF,
        suction: hardSuction,
        strainerLoss: draft.strainerLoss,
        ratedGpm,
        ...(capability && { capability }),
        dischargePsi: Math.min(DISCHARGE_PSI.most, Math.max(DISCHARGE_PSI.least, dischargePsi)),
        pumpName: name ?? id,
      },
      { units },
    );
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

/** Cautions and facts of a way's open water. */
export function draftNotices(
  drafts: readonly DraftPart[],
  parts: readonly SourcePart[],
  units: UnitSystem,
): Notice[] {
  const say = sayIn(units);
  return drafts.flatMap(({ sourceId, sourceName, usableGal, lastsMin, access }): Notice[] => {
    const notices: Notice[] = [];
    if (usableGal !== undefined && lastsMin !== undefined && lastsMin < STATIC_SOURCE_MIN) {
      const setGpm = parts.find((part) => part.sourceId === sourceId)!.setGpm;
      notices.push({
        level: 'caution',
        piece: sourceId,
        text: `${sourceName} holds ${say.full(usableGal, 'volume')}: ${Math.floor(lastsMin)} min at ${say.full(setGpm, 'flow')}, less than the 2 hours that a static source is asked for. Have the next water on its way from the start.`,
      });
    }
    if (access)
      notices.push({
        level: 'fact',
        piece: sourceId,
        text: `Access to ${sourceName}: ${access.replace(/\.$/, '')}.`,
      });
    return notices;
  });
}
