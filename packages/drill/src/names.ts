/** Name of a valve: a port (`B1.discharge1`, `H1.side1`), or a piece and what of it (`H1.stem`, `V1.handle`, `A1.tankToPump`, `A1.tankFill`, `A1.intake1.bleeder`, `N1.bale`). */
export type ValveId = string;

/** End `from` or `to` of a hose, as in the plan's line. */
export type HoseEnd = 'from' | 'to';
