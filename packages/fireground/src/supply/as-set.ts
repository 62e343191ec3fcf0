/** A supply with its pumps and valves as they stand, and a flow taken at the scene. */
import { NetworkError } from '@plugside/hydraulics';
import { limitsFor } from '../catalogue/limits.ts';
import { checkLimits } from '../limits/check-limits.ts';
import { planNetwork } from '../network/plan-network.ts';
import { readState } from '../network/read-state.ts';
import type { Plan } from '../plan/plan.ts';
import type { LimitCheck, SupplyState } from '../questions/answers.ts';
import { fallingRoot } from '../questions/root.ts';

export interface AsSet {
  /** What the attack engine takes [gpm]. */
  flowGpm: number;
  state: SupplyState;
  limits: LimitCheck[];
}

/** Settings found for a flow leave the intake at its least to within this [psi]. */
const SET_WITHIN_PSI = 1e-4;

/**
 * What the attack engine gets of a demand while nobody touches a pump: it takes no more than
 * keeps its own intake at its least. Other limits may be passed; they are in the answer.
 * @param demandGpm what it would take [gpm, 0 or more]
 * @throws NetworkError where the supply cannot be solved
 */
export function supplyAsSet(plan: Plan, demandGpm: number): AsSet {
  const solved = planNetwork(plan, { part: 'supply' });
  const { network } = solved;
  const scene = `${plan.scene}:intake`;
  const leastPsi = limitsFor(plan).hoseFedIntakePsi;
  const spareAt = (flowGpm: number) => {
    network.setDemandGpm(scene, flowGpm);
    network.solve();
    return network.pressureOf(scene) - leastPsi;
  };
  const cutOff = () => network.cutOff[network.nodeIndex(scene)] === 1;

  let flowGpm = 0;
  const atRest = spareAt(0);
  if (!cutOff() && atRest >= 0) {
    flowGpm = demandGpm;
    const atDemand = tried(spareAt, demandGpm);
    if (atDemand < -SET_WITHIN_PSI) {
      const bracket = { low: 0, high: demandGpm, lowValue: atRest, highValue: atDemand };
      flowGpm = fallingRoot((flow) => tried(spareAt, flow), bracket, 0.01);
    }
    spareAt(flowGpm);
  }
  const state = { ...readState(solved), sceneGpm: flowGpm };
  return { flowGpm, state, limits: checkLimits(plan, state) };
}

/** More than the pumps can move has no solution: as good as far too little pressure. */
function tried(spareAt: (flowGpm: number) => number, flowGpm: number): number {
  try {
    return spareAt(flowGpm);
  } catch (error) {
    if (error instanceof NetworkError) return -1000;
    throw error;
  }
}
