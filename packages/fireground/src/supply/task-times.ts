/** How long crews take for the tasks of a supply; a department puts its own in their place. */
export interface TaskTimes {
  /** Laying from a moving rig [ft/min]. */
  layFtPerMin: number;
  /** Stopping to drop the end of a lay, or to take it up [min]. */
  stopToLayMin: number;
  /** Hydrant: caps, flush, hose on, open [min]. */
  connectHydrantMin: number;
  /** Setting an assist valve on it [min]. */
  fitValveMin: number;
  /** A supply line onto an intake [min]. */
  connectIntakeMin: number;
  /** An engine into place at a hydrant or in a lay: suction, discharge, pump in gear [min]. */
  hookUpPumpMin: number;
  /** Each further line from a side outlet [min]. */
  suctionLineMin: number;
  /** Hard suction, strainer, prime [min]. */
  setUpDraftMin: number;
  /** Raising the pressure once water is through [min]. */
  setPressureMin: number;
  /** Filling the hose [gpm]: slowly, whatever the source could give. */
  chargeGpm: number;
}

/** Common practice, no source: no published measurements of these tasks were found. */
export const usualTaskTimes: Readonly<TaskTimes> = {
  layFtPerMin: 500,
  stopToLayMin: 0.5,
  connectHydrantMin: 1.5,
  fitValveMin: 0.5,
  connectIntakeMin: 0.5,
  hookUpPumpMin: 2,
  suctionLineMin: 1,
  setUpDraftMin: 4,
  setPressureMin: 0.5,
  chargeGpm: 500,
};
