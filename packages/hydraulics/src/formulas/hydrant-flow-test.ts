import { requirePositive, requireZeroOrMore } from '../quantity-check.ts';
import { QuantityError } from '../quantity-error.ts';

/** Exponent of flow against pressure drop in a main [-]. Source: Water-supply analysis, slide 1. */
export const FLOW_EXPONENT = 0.54;

/** Exponent of pressure drop against flow [-]: 1/0.54 = 1.85185…, not the rounded 1.85. */
export const DROP_EXPONENT = 1 / FLOW_EXPONENT;

/** Residual at which a hydrant is rated [psi]. Source: NFPA 291. */
export const RATING_RESIDUAL_PSI = 20;

/** A flow test: pressures of the main at the residual hydrant, and what flowed. */
export interface FlowTest {
  /** Pressure with nothing flowing [psi]. */
  staticPsi: number;
  /** Pressure while `testGpm` flowed; may be below 20 [psi]. */
  residualPsi: number;
  /** Flow of all open outlets together [gpm]. */
  testGpm: number;
}

/** Throws a QuantityError unless the test has a drop and a flow to judge the main by. */
export function requireFlowTest({ staticPsi, residualPsi, testGpm }: FlowTest): void {
  requirePositive('staticPsi', staticPsi, 'psi');
  requireZeroOrMore('residualPsi', residualPsi, 'psi');
  if (residualPsi >= staticPsi) {
    throw new QuantityError({
      field: 'residualPsi',
      value: residualPsi,
      allowed: `less than staticPsi (${staticPsi} psi)`,
      remedy:
        'Flow more water until the pressure drops, or check whether static and residual are swapped.',
    });
  }
  requirePositive('testGpm', testGpm, 'gpm', 'Enter the flow of the open outlets together.');
}

/**
 * Flow that a main gives at a residual pressure.
 *   Q = Qtest·((static − P)/(static − residual))^0.54
 * @param test the flow test [FlowTest]
 * @param residualPsi residual to hold; 20 where left out [psi]
 * @returns flow [gpm]
 * Valid: one source, nothing that starts or opens as the pressure falls. Best when the test drew
 * the main down well: small drops project badly. A test that went below the residual asked for
 * gives less than its own flow, rightly.
 * Outside: throws QuantityError for a test without drop or flow, and for a residual above static.
 * @example availableFlowGpm({ staticPsi: 86, residualPsi: 42, testGpm: 789 }) // 982
 * Source: Water-supply analysis, slides 15 and 16 (980 gpm, read from N1.85 paper); NFPA 291.
 */
export function availableFlowGpm(
  test: FlowTest,
  residualPsi: number = RATING_RESIDUAL_PSI,
): number {
  requireFlowTest(test);
  requireZeroOrMore('residualPsi', residualPsi, 'psi');
  if (residualPsi > test.staticPsi) {
    throw new QuantityError({
      field: 'residualPsi',
      value: residualPsi,
      allowed: `staticPsi (${test.staticPsi} psi) or less`,
      remedy: 'The main never reaches this pressure; a weak hydrant is rated at half its static.',
    });
  }
  const share = (test.staticPsi - residualPsi) / (test.staticPsi - test.residualPsi);
  return test.testGpm * share ** FLOW_EXPONENT;
}

/**
 * Pressure left in a main at a flow: the supply curve.
 *   P = static − (static − residual)·(Q/Qtest)^(1/0.54)
 * @param test the flow test [FlowTest]
 * @param flowGpm flow drawn [gpm]
 * @returns residual pressure; below 0 the main cannot give that flow [psi]
 * Valid: as availableFlowGpm.
 * Outside: throws QuantityError.
 * @example supplyCurvePsi({ staticPsi: 86, residualPsi: 42, testGpm: 789 }, 500) // 67
 * Source: Water-supply analysis, slide 16 (worked on N1.85 paper).
 */
export function supplyCurvePsi(test: FlowTest, flowGpm: number): number {
  requireFlowTest(test);
  requireZeroOrMore('flowGpm', flowGpm, 'gpm');
  const drop = test.staticPsi - test.residualPsi;
  return test.staticPsi - drop * (flowGpm / test.testGpm) ** DROP_EXPONENT;
}

/**
 * Whether a main carries a demand: the supply curve at the demand's flow against its pressure.
 *   adequate when P(Qdemand) ≥ Pdemand
 * @param test the flow test [FlowTest]
 * @param demandGpm flow needed [gpm]
 * @param demandPsi pressure needed at that flow [psi]
 * @returns pressure left over; negative: short [psi]
 * Valid: as availableFlowGpm.
 * Outside: throws QuantityError.
 * @example supplyMarginPsi({ staticPsi: 86, residualPsi: 42, testGpm: 789 }, 760, 36) // 9
 * Source: Water-supply analysis, slide 16.
 */
export function supplyMarginPsi(test: FlowTest, demandGpm: number, demandPsi: number): number {
  requireZeroOrMore('demandPsi', demandPsi, 'psi');
  return supplyCurvePsi(test, demandGpm) - demandPsi;
}

/**
 * Drop of a flow test as a share of static.
 *   100·(static − residual)/static
 * @param staticPsi pressure with nothing flowing [psi]
 * @param residualPsi pressure while flowing [psi]
 * @returns drop [%]
 * Valid: any test.
 * Outside: throws QuantityError for a residual above static.
 * @example dropPercent(80, 60) // 25
 * Source: Engineer's Test 2014 study cards.
 */
export function dropPercent(staticPsi: number, residualPsi: number): number {
  requirePositive('staticPsi', staticPsi, 'psi');
  requireZeroOrMore('residualPsi', residualPsi, 'psi');
  if (residualPsi > staticPsi) {
    throw new QuantityError({
      field: 'residualPsi',
      value: residualPsi,
      allowed: `staticPsi (${staticPsi} psi) or less`,
      remedy: 'Check whether static and residual are swapped.',
    });
  }
  return (100 * (staticPsi - residualPsi)) / staticPsi;
}

/**
 * Least drops that make a test worth projecting [%]: 25 by NFPA 291 (2010) 4.3.6, quoted in
 * NFPA 291 flow-test selection article; 10 by newer editions, from memory.
 */
export const LEAST_DROP_PERCENT = { edition2010: 25, newer: 10 } as const;

/**
 * Residual at which a hydrant is rated: half its static where the main is weak.
 *   20 psi; static/2 where static < 40 psi
 * @param staticPsi static pressure [psi]
 * @returns residual for the rating [psi]
 * Valid: any hydrant. The trigger of 40 psi is from memory; the two rules meet there.
 * Outside: throws QuantityError.
 * @example ratingResidualPsi(30) // 15
 * Source: Procedures for flow testing hydrants p. 4, FireHydrant.org ("20 psi or half static").
 */
export function ratingResidualPsi(staticPsi: number): number {
  requirePositive('staticPsi', staticPsi, 'psi');
  return Math.min(RATING_RESIDUAL_PSI, staticPsi / 2);
}
