import { usualRating } from '../catalogue/pumps.ts';
import type { Line, Plan, Rig, RigRole } from '../plan/plan.ts';
import { type AttackLineOptions, addAttackLines } from './attack-lines.ts';
import { usualHookup, usualHydrant } from './boosted-at-hydrant.ts';
import { fillLay, type LayOptions } from './lay.ts';
import { type HydrantTest, newHydrant, newLine, newPlan, newRig } from './pieces.ts';

export interface RelayOptions {
  title?: string;
  hydrant?: HydrantTest;
  /** All of them: the one at the hydrant, those between, the attack engine. 2 to 40. */
  pumps?: number;
  /** From the pump at the hydrant to the attack engine; shared out evenly between the pumps. */
  lay?: LayOptions;
  ratedGpm?: number;
  /** What each pump but the last holds; the constant-pressure relay's 175 where left out. */
  pdpPsi?: number;
  /** What the attack engine holds. */
  attackPdpPsi?: number;
  attackLines?: readonly AttackLineOptions[];
}

/**
 * Pumps in series along an even slope. Ids: `H1`, `P1` … in order with the attack engine
 * last; lines `suction`, `leg1` …. The usual setting is the constant-pressure relay's, as
 * in "Relay Pumping Operations", Firehouse. Throws RangeError for fewer than 2 pumps or
 * more than 40.
 */
export function relay(options: RelayOptions = {}): Plan {
  const { pumps = 3, ratedGpm = usualRating, pdpPsi = 175 } = options;
  if (!Number.isInteger(pumps) || pumps < 2 || pumps > 40) {
    throw new RangeError(`pumps is ${pumps}; a relay has 2 to 40.`);
  }
  const lay = fillLay({ lengthFt: 1000 * (pumps - 1), ...options.lay });
  const legs = pumps - 1;
  const rigs: Rig[] = Array.from({ length: pumps }, (_, index) => {
    const last = index === legs;
    const role: RigRole = index === 0 ? 'booster' : last ? 'attack' : 'relay';
    return newRig(`P${index + 1}`, role, {
      name: index === 0 ? 'Source engine' : last ? 'Attack engine' : `Relay engine ${index}`,
      ratedGpm,
      elevationFt: (lay.riseFt * index) / legs,
      pdpPsi: last ? options.attackPdpPsi : pdpPsi,
    });
  });
  const lines: Line[] = rigs.slice(1).map((rig, index) =>
    newLine(
      `leg${index + 1}`,
      `P${index + 1}.discharge1`,
      `${rig.id}.intake1`,
      lay.hose,
      lay.lengthFt / legs,
      {
        count: lay.count,
      },
    ),
  );
  const suction = newLine(
    'suction',
    'H1.steamer',
    'P1.intake1',
    usualHookup.hose,
    usualHookup.suctionFt,
  );
  const plan = newPlan({
    title: options.title ?? `Relay of ${pumps} pumps`,
    scene: `P${pumps}`,
    hydrants: [newHydrant('H1', options.hydrant ?? usualHydrant)],
    rigs,
    lines: [suction, ...lines],
  });
  return options.attackLines ? addAttackLines(plan, `P${pumps}`, options.attackLines) : plan;
}
