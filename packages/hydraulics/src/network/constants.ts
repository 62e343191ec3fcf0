/** The solver's own constants, each with what it is for. None but the two of the formulas is a physical property. */

export { PSI_PER_FT } from '../formulas/elevation.ts';
export { DROP_EXPONENT as MAIN_EXPONENT } from '../formulas/hydrant-flow-test.ts';

/** Flow [gpm] under which a loss is taken as linear, so that its slope never vanishes. No flow is out by more than this. */
export const LINEAR_BELOW_GPM = 0.002;

/** Slope [psi/gpm] of a link with no loss of its own, and droop of a governor: a millionth of a psi at 1,000 gpm. */
export const LEAST_SLOPE = 1e-9;

/** Rate [gpm/psi] at which a closed check or a pump that gives nothing enters the matrix, to tie a pocket to its neighbours. No water moves by it. */
export const CLOSED_RATE = 1e-8;

/** Slope [psi/gpm] of a pump's wall, where its capability ends. */
export const WALL_SLOPE = 1e5;

/** Slope [psi/gpm] of an automatic nozzle inside its band. */
export const BAND_SLOPE = 1e-7;

/** Slope [psi/gpm] of a flat stretch of a capability curve. */
export const FLAT_SLOPE = 1e-7;

/** An iterate is an answer when every element holds to its law within this [psi] … */
export const LAW_TOLERANCE_PSI = 1e-6;

/** … which must also be worth no more than this share of its flow plus this many gpm, so that a link with next to no loss is held as closely … */
export const FLOW_TOLERANCE_SHARE = 1e-6;
export const FLOW_TOLERANCE_GPM = 1e-5;

/** … or be no more than the last digits of the heads: this [psi] plus this share of them … */
export const DIGITS_PSI = 1e-11;
export const DIGITS_SHARE = 1e-14;

/** … and every node balances within this [gpm] plus this share of what passes through the network. */
export const MASS_TOLERANCE_GPM = 1e-4;

/** A flow beyond this [gpm] is no answer but a ring or a path with no loss between two held pressures. */
export const MOST_FLOW_GPM = 1e5;

/** A state changes only when its condition fails by more than this [psi or gpm]. */
export const STATE_TOLERANCE = 1e-8;

/** Heads on the way to an answer are kept within this [psi], so that a pocket thrown out by a wrong guess keeps its digits. */
export const FARTHEST_PSI = 1e7;

/** Newton steps before the slower, surely converging method takes over. */
export const NEWTON_LIMIT = 40;
