import {
  OUTLET_COEFFICIENTS,
  pitotFlowGpm,
  pumperOutletFlowGpm,
  pumperOutletMultiplier,
} from '@plugside/hydraulics';
import { finding, psi, type TestFinding } from './finding.ts';
import type { FlowingOutlet } from './flow-test-entry.ts';

/** What an outlet flowed, and how that is known. */
export interface OutletFlow {
  flowGpm: number;
  from: 'meter' | 'pitot';
  /** Outlet and coefficient that the pitot was read with; the usual ones where the test names none. */
  outletIn?: number;
  coefficient?: number;
  /** On a pumper outlet without a flow tube. */
  multiplier?: number;
  /** The outlet or its coefficient was not written down. */
  assumed: boolean;
}

/** The outlet usually flowed [in], and its usual coefficient [-]. Common practice, no source. */
export const USUAL_OUTLET = { outletIn: 2.5, coefficient: OUTLET_COEFFICIENTS.rounded } as const;

/** Pitot readings to aim for [psi]: 2½ in outlets and pumper outlets; from memory of NFPA 291. */
export const BEST_PITOT_PSI = { side: [10, 30], pumper: [5, 10] } as const;

/** An outlet larger than this [in] is a pumper outlet, whose stream does not fill the opening. */
const PUMPER_FROM_IN = 3;

/**
 * Flow of one outlet: its meter's, else its pitot's. A pumper outlet takes its multiplier unless
 * a flow tube (coefficient 0.95) straightens the stream. Adds to `findings` what to doubt;
 * null where nothing tells the flow.
 * Source: NFPA 291 as quoted in "Fire hydrant flow test and modifiers", engineers' forum; that a
 * flow tube needs no multiplier is from memory.
 */
export function outletFlow(
  outlet: FlowingOutlet,
  place: string,
  findings: TestFinding[],
): OutletFlow | null {
  if (outlet.flowGpm !== undefined) {
    if (!(outlet.flowGpm >= 0 && Number.isFinite(outlet.flowGpm))) return null;
    return { flowGpm: outlet.flowGpm, from: 'meter', assumed: false };
  }
  const { pitotPsi } = outlet;
  if (pitotPsi === undefined || !(pitotPsi >= 0 && Number.isFinite(pitotPsi))) return null;
  const outletIn = outlet.outletIn ?? USUAL_OUTLET.outletIn;
  const coefficient = outlet.coefficient ?? USUAL_OUTLET.coefficient;
  if (!(outletIn > 0 && Number.isFinite(outletIn) && coefficient > 0 && coefficient <= 1)) {
    return null;
  }
  const assumed = outlet.outletIn === undefined || outlet.coefficient === undefined;
  if (assumed) {
    findings.push(
      finding(
        'fact',
        'outlet-assumed',
      )`${place}: taken as a ${String(outletIn)} in outlet with coefficient ${coefficient.toFixed(2)}, since the test does not say. Look at the outlet's inside edge.`,
    );
  }
  const pumper = outletIn > PUMPER_FROM_IN;
  const [least, most] = pumper ? BEST_PITOT_PSI.pumper : BEST_PITOT_PSI.side;
  if (pitotPsi < least || pitotPsi > most) {
    const remedy =
      pitotPsi > most
        ? 'Above it, open another outlet.'
        : 'Under it, flow fewer outlets or a smaller one.';
    findings.push(
      finding(
        'caution',
        'pitot-range',
      )`${place}: the pitot read ${psi(pitotPsi)}, outside the ${psi(least)} to ${psi(most)} that read well (NFPA 291, from memory). ${remedy}`,
    );
  }
  const found = { from: 'pitot', outletIn, coefficient, assumed } as const;
  const flowTube = Math.abs(coefficient - OUTLET_COEFFICIENTS.flowTube) < 0.005;
  if (!pumper || flowTube) {
    return { ...found, flowGpm: pitotFlowGpm(outletIn, coefficient, pitotPsi) };
  }
  if (pitotPsi < 2) return null;
  return {
    ...found,
    flowGpm: pumperOutletFlowGpm(outletIn, coefficient, pitotPsi),
    multiplier: pumperOutletMultiplier(pitotPsi),
  };
}
