import { usualRating } from '../catalogue/pumps.ts';
import type { Plan } from '../plan/plan.ts';
import { type AttackLineOptions, addAttackLines } from './attack-lines.ts';
import { fillLay, type LayOptions, layLine } from './lay.ts';
import { newDraft, newLine, newPlan, newRig } from './pieces.ts';

export interface DraftSupplyOptions {
  title?: string;
  /** Pump above the water [ft]. */
  liftFt?: number;
  altitudeFt?: number;
  suctionFt?: number;
  /** From the pump at the water to the attack engine. */
  lay?: LayOptions;
  source?: { ratedGpm?: number; pdpPsi?: number };
  attack?: { ratedGpm?: number; pdpPsi?: number };
  attackLines?: readonly AttackLineOptions[];
}

/**
 * An engine at draft that pumps a lay to the attack engine. The pump at the water is at
 * 0 ft, the water `liftFt` below it; 10 ft and 20 ft of 6 in suction hose, the conditions of
 * the rating test, where nothing is said. Ids: `D1`, `S1`, `A1`; lines `suction`, `lay`.
 */
export function draftSupply(options: DraftSupplyOptions = {}): Plan {
  const { liftFt = 10, altitudeFt = 0, suctionFt = 20, source = {}, attack = {} } = options;
  const lay = fillLay(options.lay);
  const plan = newPlan({
    title: options.title ?? 'Draft',
    scene: 'A1',
    drafts: [newDraft('D1', { waterElevationFt: 0 - liftFt, altitudeFt })],
    rigs: [
      newRig('S1', 'relay', {
        name: 'Source engine',
        ratedGpm: source.ratedGpm ?? usualRating,
        pdpPsi: source.pdpPsi,
      }),
      newRig('A1', 'attack', {
        name: 'Attack engine',
        ratedGpm: attack.ratedGpm ?? usualRating,
        pdpPsi: attack.pdpPsi,
        elevationFt: lay.riseFt,
      }),
    ],
    lines: [
      newLine('suction', 'D1.water', 'S1.intake1', '6', suctionFt),
      layLine('S1.discharge1', 'A1.intake1', lay),
    ],
  });
  return options.attackLines ? addAttackLines(plan, 'A1', options.attackLines) : plan;
}
