import { usualRating } from '../catalogue/pumps.ts';
import type { HoseSize, Line, Plan, Rig } from '../plan/plan.ts';
import { type AttackLineOptions, addAttackLines } from './attack-lines.ts';
import { fillLay, type LayOptions, layLine } from './lay.ts';
import {
  type HydrantTest,
  newAssistValve,
  newHydrant,
  newLine,
  newPlan,
  newRig,
} from './pieces.ts';
import { type SideSuctionLine, sideSuctionLines } from './side-suction-lines.ts';

/** The engine at the hydrant and its hookup. */
export interface BoosterOptions {
  ratedGpm?: number;
  /** Hydrant or valve to its intake [ft]. */
  suctionFt?: number;
  /** Its discharge to the valve [ft]. */
  dischargeFt?: number;
  hookupHose?: HoseSize;
  pdpPsi?: number;
  /** From the hydrant's side outlets into its free intakes. */
  sideLines?: readonly SideSuctionLine[];
}

export interface BoostedAtHydrantOptions {
  title?: string;
  hydrant?: HydrantTest;
  /** On the steamer outlet. */
  assistValve?: boolean;
  lay?: LayOptions;
  /** `null`: no engine at the hydrant. */
  booster?: BoosterOptions | null;
  attack?: { ratedGpm?: number; pdpPsi?: number };
  attackLines?: readonly AttackLineOptions[];
}

/** A middling town hydrant, made up. */
export const usualHydrant: HydrantTest = { staticPsi: 62, residualPsi: 44, testGpm: 1060 };

export const usualHookup = { hose: '5', suctionFt: 25, dischargeFt: 25, pdpPsi: 120 } as const;

/**
 * A lay from hydrant to attack engine with an engine at the hydrant to raise its pressure.
 *
 * With an assist valve the booster is hooked to the valve and its pump suction is open;
 * without one it stands in the line. With `booster: null` it is the plain lay, through the
 * valve where there is one. Hydrant, valve and booster are at 0 ft, the attack engine at
 * the lay's rise. Ids: `H1`, `V1`, `B1`, `A1`; lines `lay`, `suction`, `discharge`,
 * `side1` …, `attack1` …. Throws RangeError where there are more side lines or attack lines
 * than ports.
 */
export function boostedAtHydrant(options: BoostedAtHydrantOptions = {}): Plan {
  const { assistValve = true, booster = {} } = options;
  const lay = fillLay(options.lay);
  const hydrant = newHydrant('H1', options.hydrant ?? usualHydrant);
  const attack = newRig('A1', 'attack', {
    name: 'Attack engine',
    ratedGpm: options.attack?.ratedGpm ?? usualRating,
    elevationFt: lay.riseFt,
    pdpPsi: options.attack?.pdpPsi,
  });
  const valve = newAssistValve('V1', hydrant, booster ? 'boost' : 'hydrant');
  const hookup = booster && hookUp(booster, assistValve);
  let layFrom = 'H1.steamer';
  if (assistValve) layFrom = 'V1.supply';
  else if (hookup) layFrom = 'B1.discharge1';

  const plan = newPlan({
    title: options.title ?? (booster ? 'Boosted at the hydrant' : 'Lay from the hydrant'),
    scene: 'A1',
    hydrants: [hydrant],
    rigs: hookup ? [hookup.rig, attack] : [attack],
    appliances: assistValve ? [valve] : [],
    lines: [...(hookup?.lines ?? []), layLine(layFrom, 'A1.intake1', lay)],
  });
  const fed = booster?.sideLines ? sideSuctionLines(plan, booster.sideLines) : plan;
  return options.attackLines ? addAttackLines(fed, 'A1', options.attackLines) : fed;
}

function hookUp(booster: BoosterOptions, assistValve: boolean): { rig: Rig; lines: Line[] } {
  const hose = booster.hookupHose ?? usualHookup.hose;
  const rig = newRig('B1', 'booster', {
    name: 'Booster',
    ratedGpm: booster.ratedGpm ?? usualRating,
    pdpPsi: booster.pdpPsi ?? usualHookup.pdpPsi,
  });
  const suctionFrom = assistValve ? 'V1.pump-suction' : 'H1.steamer';
  const suctionFt = booster.suctionFt ?? usualHookup.suctionFt;
  const lines = [newLine('suction', suctionFrom, 'B1.intake1', hose, suctionFt)];
  if (assistValve) {
    const dischargeFt = booster.dischargeFt ?? usualHookup.dischargeFt;
    lines.push(newLine('discharge', 'B1.discharge1', 'V1.pump-discharge', hose, dischargeFt));
  }
  return { rig, lines };
}
