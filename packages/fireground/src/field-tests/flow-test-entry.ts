/** One flowing outlet: a pitot reading with its outlet, or a flow read from a meter. */
export interface FlowingOutlet {
  /** Flowing hydrant's name, where it is another than the one gauged. */
  hydrant?: string | undefined;
  outletIn?: number | undefined;
  coefficient?: number | undefined;
  pitotPsi?: number | undefined;
  flowGpm?: number | undefined;
}

/** A hydrant flow test as a department writes it down. */
export interface FlowTestEntry {
  /** ISO date. */
  testedOn: string;
  staticPsi: number;
  residualPsi: number;
  flowing: readonly FlowingOutlet[];
  /** Total flow as stated by whoever tested. */
  statedFlowGpm?: number | undefined;
}
