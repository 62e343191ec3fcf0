/** Why a network could not be built or solved. */
export type NetworkErrorCode =
  | 'bad value'
  | 'duplicate name'
  | 'unknown node'
  | 'no source'
  | 'disconnected part'
  | 'pump fed by nothing'
  | 'conflicting fixed pressures'
  | 'not converged';

/** What a failed solve had reached: the best iterate's residuals, never shown as an answer. */
export interface BestResidual {
  massGpm: number;
  energyPsi: number;
  iterations: number;
}

/**
 * Thrown when a network cannot be built or solved. `code` is stable; `pieces` names the nodes or
 * links concerned; the message says what is wrong and what to do.
 */
export class NetworkError extends Error {
  override readonly name = 'NetworkError';
  readonly code: NetworkErrorCode;
  readonly pieces: readonly string[];
  readonly best: BestResidual | undefined;

  constructor(
    code: NetworkErrorCode,
    message: string,
    pieces: readonly string[],
    best?: BestResidual,
  ) {
    super(message);
    this.code = code;
    this.pieces = pieces;
    this.best = best;
  }
}
