import { requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';
import {
  availableFlowGpm,
  DROP_EXPONENT,
  FLOW_EXPONENT,
  type FlowTest,
  RATING_RESIDUAL_PSI,
} from './hydrant-flow-test.ts';

/** One step of a test that opened up by steps. */
export interface FlowStep {
  /** Residual of the main at this step [psi]. */
  residualPsi: number;
  /** Flow at this step [gpm]. */
  testGpm: number;
}

/** Flow at a residual from a test of several steps. */
export interface StepFlow {
  /** Flow at the residual [gpm]. */
  flowGpm: number;
  /** Within the measured steps, or projected past the last one [-]. */
  basis: 'between steps' | 'projected';
  /** What each step alone projects, in the order given [gpm]. */
  projectedGpm: number[];
}

function requireSteps(staticPsi: number, steps: readonly FlowStep[]): FlowStep[] {
  if (steps.length === 0) {
    throw new QuantityError({
      field: 'steps',
      value: '[]',
      allowed: 'one step or more',
      remedy: 'Enter the residual and the flow of each step.',
    });
  }
  const rising = [...steps].sort((a, b) => a.testGpm - b.testGpm);
  for (const [index, step] of rising.entries()) {
    const before = rising[index - 1];
    if (before && (step.testGpm === before.testGpm || step.residualPsi >= before.residualPsi)) {
      throw new QuantityError({
        field: 'steps',
        value: `${before.testGpm} gpm at ${before.residualPsi} psi, ${step.testGpm} gpm at ${step.residualPsi} psi`,
        allowed: `residuals that fall as flow rises, from ${staticPsi} psi`,
        remedy: 'Measure the step again: more flow must leave less pressure.',
      });
    }
  }
  return rising;
}

/**
 * Flow at a residual from a test opened up by steps: read between the two steps around it, and
 * projected only past the last one.
 *   between steps, pressure is a straight line against Q^1.85 (N1.85 paper)
 * @param staticPsi pressure with nothing flowing [psi]
 * @param steps residual and flow of each step [FlowStep]
 * @param residualPsi residual to hold; 20 where left out [psi]
 * @returns flow, how it was found, and each step's own projection [StepFlow]
 * Valid: steps taken at one place on one day. Where each step's own projection scatters, the main
 * does not follow one curve, and the steps around the residual are the ones to trust.
 * Outside: throws QuantityError for steps that do not fall.
 * @example stepFlowAt(80, [{ residualPsi: 60, testGpm: 500 }], 60).flowGpm // 500
 * Source: NFPA 291 flow-test selection article (three-point test); N1.85 paper as in Water-supply
 * analysis, slide 16.
 */
export function stepFlowAt(
  staticPsi: number,
  steps: readonly FlowStep[],
  residualPsi: number = RATING_RESIDUAL_PSI,
): StepFlow {
  const projectedGpm = steps.map((step) => availableFlowGpm({ staticPsi, ...step }, residualPsi));
  const rising = requireSteps(staticPsi, steps);
  requireZeroOrMore('residualPsi', residualPsi, 'psi');
  let before: FlowStep = { residualPsi: staticPsi, testGpm: 0 };
  for (const step of rising) {
    if (residualPsi >= step.residualPsi) {
      const share = (before.residualPsi - residualPsi) / (before.residualPsi - step.residualPsi);
      const low = before.testGpm ** DROP_EXPONENT;
      const high = step.testGpm ** DROP_EXPONENT;
      const flowGpm = (low + share * (high - low)) ** FLOW_EXPONENT;
      return { flowGpm, basis: 'between steps', projectedGpm };
    }
    before = step;
  }
  const last: FlowTest = { staticPsi, ...rising.at(-1)! };
  return { flowGpm: availableFlowGpm(last, residualPsi), basis: 'projected', projectedGpm };
}
