import type { Fields } from '../model/index.ts';
import { arrivalMin } from './arrivals.ts';
import { assistValveOf } from './assist-valve-of.ts';
import { type LengthOfHose, withHoseInService } from './hose-in-service.ts';
import { notice, type PlanningNotice } from './notice.ts';
import type { ComingRig } from './situation-for-building.ts';

type RigRecord = Fields<'rigs'> & { id: string };
type PumpTestRecord = Fields<'pump-tests'>;

/** A rig whose station is not known is taken to come from three miles off [ft]. */
const UNKNOWN_ROAD_FT = 3 * 5280;

export interface ComingRigsRequest {
  rigs: readonly RigRecord[];
  pumpTests: readonly PumpTestRecord[];
  /** Where assist valves are on record with their own losses. */
  appliances?: readonly Fields<'appliances'>[];
  /** Lengths of hose: a rig lays no more of a size than is in service. Left out: none on record. */
  hose?: readonly LengthOfHose[];
  /** ISO date; left out: the machine's. */
  today?: string;
  /** Along the streets from each station to the scene [ft], by the station's id. */
  roadFtByStation: ReadonlyMap<string, number>;
}

/**
 * The rigs in service in order of arrival: from their stations along the streets, at the published
 * travel time. Of two that arrive together an engine comes before others, then by name. What is
 * not known is said.
 */
export function comingRigs({
  rigs,
  pumpTests,
  appliances = [],
  hose = [],
  today = new Date().toISOString().slice(0, 10),
  roadFtByStation,
}: ComingRigsRequest): {
  coming: ComingRig[];
  notices: PlanningNotice[];
} {
  const notices: PlanningNotice[] = [];
  const coming = rigs
    .filter(({ inService }) => inService)
    .map((rig): ComingRig => {
      const roadFt = rig.stationId ? roadFtByStation.get(rig.stationId) : undefined;
      if (roadFt === undefined) {
        notices.push(
          notice(
            'caution',
            'no-station',
          )`${rig.name} has no station on record, or none that streets lead from: it is taken to come from 3 miles off.`,
        );
      }
      const valve = assistValveOf(rig, appliances);
      return {
        rig: withHoseInService(rig, hose, today, notices),
        ...(valve && { valve }),
        pumpTests: pumpTests.filter(({ rigId }) => rigId === rig.id),
        arrivesMin: Math.round(arrivalMin(roadFt ?? UNKNOWN_ROAD_FT) * 10) / 10,
      };
    })
    .sort(
      (a, b) =>
        a.arrivesMin - b.arrivesMin ||
        Number(a.rig.kind !== 'engine') - Number(b.rig.kind !== 'engine') ||
        a.rig.name.localeCompare(b.rig.name, 'en', { numeric: true }),
    );
  return { coming, notices };
}
