import type { NozzleMake } from '../catalogue/nozzles.ts';
import type { HoseSize, Line, Plan } from '../plan/plan.ts';
import { freeDischarge, nextId, rigOf } from './attack-lines.ts';
import { newLine, newMonitor, newNozzle } from './pieces.ts';

export interface MasterStreamOptions {
  /** Lines from the rig to the device, each into an inlet of its own; 1 to 8. */
  lines?: number;
  hose?: HoseSize;
  lengthFt?: number;
  riseFt?: number;
  nozzle?: NozzleMake;
}

/**
 * Adds a monitor fed by lines from a rig's free discharges; two 100 ft lines of 3 in and a
 * 1½ in tip where nothing is said. Throws RangeError where the rig is unknown or has too few
 * discharges left.
 */
export function addMasterStream(
  plan: Plan,
  rigId: string,
  options: MasterStreamOptions = {},
): Plan {
  const { lines = 2, hose = '3', lengthFt = 100 } = options;
  const elevationFt = rigOf(plan, rigId).elevationFt + (options.riseFt ?? 0);
  const monitor = newMonitor(nextId(plan, 'MS'), { elevationFt, inlets: lines });
  const make = options.nozzle ?? { kind: 'smooth-bore', tipIn: 1.5, ratedPsi: 80 };
  const nozzle = newNozzle(nextId(plan, 'N'), make, {
    elevationFt,
    on: `${monitor.id}.tip`,
    use: 'master stream',
  });
  let grown: Plan = {
    ...plan,
    appliances: [...plan.appliances, monitor],
    nozzles: [...plan.nozzles, nozzle],
  };
  for (let inlet = 1; inlet <= lines; inlet += 1) {
    const line: Line = newLine(
      nextId(grown, 'stream'),
      freeDischarge(grown, rigId),
      `${monitor.id}.inlet${inlet}`,
      hose,
      lengthFt,
    );
    grown = { ...grown, lines: [...grown.lines, line] };
  }
  return grown;
}
