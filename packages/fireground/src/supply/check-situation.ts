import { QuantityError, requireFlowTest } from '@plugside/hydraulics';
import { ranges } from '../plan/written/ranges.ts';
import { formatNumber } from '../units/format-quantity.ts';
import { fireLinePdpRange, marginShareRange } from './asked.ts';
import type { LayGround, Situation } from './situation.ts';

/**
 * Refuses a situation whose figures cannot be.
 * @throws RangeError naming the field, its value, what is allowed and what to do
 */
export function checkSituation(situation: Situation): void {
  const { demandGpm, rigs, hydrants, waters } = situation;
  const { least, greatest } = ranges.demand;
  if (!(demandGpm >= least && demandGpm <= greatest)) {
    throw new RangeError(
      `demandGpm is ${demandGpm}; allowed: ${least} to ${formatNumber(greatest, 0)} gpm. Give the flow that the scene needs.`,
    );
  }
  const { marginShare, fireLinePdpPsi } = situation;
  checkWithin('marginShare', marginShare, marginShareRange, 'Give a share of the demand, as 0.1');
  checkWithin(
    'fireLinePdpPsi',
    fireLinePdpPsi,
    fireLinePdpRange,
    'Give the pressure that the lines need',
  );
  const ids = new Set<string>();
  const once = (field: string, id: string) => {
    if (ids.has(id)) {
      throw new RangeError(
        `${field} is "${id}", which something else here has; give it an id of its own.`,
      );
    }
    ids.add(id);
  };
  rigs.forEach(({ rig, arrivesMin, hose }, at) => {
    once(`rigs[${at}].rig.id`, rig.id);
    if (!Number.isFinite(arrivesMin)) {
      throw new RangeError(
        `rigs[${at}].arrivesMin is ${arrivesMin}; allowed: a number of minutes. Give its arrival.`,
      );
    }
    for (const aboard of hose) {
      if (aboard.lengthFt >= 0 && Number.isFinite(aboard.lengthFt)) continue;
      throw new RangeError(
        `rigs[${at}].hose of ${aboard.hose} in is ${aboard.lengthFt} ft; allowed: 0 or more. Give what it carries.`,
      );
    }
  });
  hydrants.forEach((at, index) => {
    once(`hydrants[${index}].hydrant.id`, at.hydrant.id);
    checkGround(`hydrants[${index}]`, at);
    try {
      requireFlowTest(at.hydrant);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      throw new RangeError(`hydrants[${index}].hydrant: ${error.message}`);
    }
  });
  waters.forEach((at, index) => {
    once(`waters[${index}].draft.id`, at.draft.id);
    checkGround(`waters[${index}]`, at);
    if (!(at.liftFt >= 0) || !Number.isFinite(at.liftFt)) {
      throw new RangeError(
        `waters[${index}].liftFt is ${at.liftFt}; allowed: 0 or more. Give the pump's height above the water.`,
      );
    }
  });
}

function checkWithin(
  field: string,
  value: number | undefined,
  { least, greatest }: { least: number; greatest: number },
  remedy: string,
): void {
  if (value === undefined || (value >= least && value <= greatest)) return;
  throw new RangeError(
    `${field} is ${value}; allowed: ${least} to ${greatest}. ${remedy}, or leave it out.`,
  );
}

function checkGround(field: string, { lengthFt, terrain = [] }: LayGround): void {
  if (!(lengthFt > 0) || !Number.isFinite(lengthFt)) {
    throw new RangeError(
      `${field}.lengthFt is ${lengthFt}; allowed: above 0. Give the hose from the water to the scene.`,
    );
  }
  for (const point of terrain) {
    if (Number.isFinite(point.alongFt) && Number.isFinite(point.elevationFt)) continue;
    throw new RangeError(
      `${field}.terrain has a point at ${point.alongFt} ft, ${point.elevationFt} ft high; allowed: numbers. Leave it out or give both.`,
    );
  }
}
