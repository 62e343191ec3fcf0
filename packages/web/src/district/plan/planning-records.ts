import type { DepartmentValues } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import {
  assistValveOf,
  departmentCoefficients,
  departmentLimits,
  hoseTestsAhead,
  type PickedRig,
  type PlanningNotice,
} from '@plugside/records/planning';
import { crowFt, type Place } from '@plugside/records/streets';
import { loadedTerrain } from '../../api/elevation.ts';
import { allRecords } from '../../api/records.ts';
import type { MapStation } from '../district.ts';
import { todayIso } from '../words.ts';

/** What a plan needs of the records besides its hydrant and building. */
export interface PlanningRecords {
  rigs: readonly Stored<'rigs'>[];
  pumpTests: readonly Stored<'pump-tests'>[];
  /** Assist valves. */
  appliances: readonly Stored<'appliances'>[];
  /** Lengths of hose: plans lay no more than is in service. */
  hose: readonly Stored<'hose'>[];
  department: DepartmentValues;
  /** What of it plans leave aside. */
  notices: readonly PlanningNotice[];
  /** The server has terrain loaded for the district. */
  hasTerrain: boolean;
}

export async function fetchPlanningRecords(signal: AbortSignal): Promise<PlanningRecords> {
  const [rigs, pumpTests, appliances, hose, hoseTests, settings, terrain] = await Promise.all([
    allRecords('rigs', {}, signal),
    allRecords('pump-tests', {}, signal),
    allRecords('appliances', { where: { kind: 'assist-valve' } }, signal),
    allRecords('hose', {}, signal),
    allRecords('hose-tests', { where: { adopted: true } }, signal),
    allRecords('settings', { where: { name: 'limits' } }, signal),
    loadedTerrain(signal),
  ]);
  const coefficients = departmentCoefficients(hoseTests);
  const limits = departmentLimits(settings);
  return {
    rigs,
    pumpTests,
    appliances,
    hose,
    department: {
      ...(Object.keys(coefficients).length > 0 && { coefficients }),
      ...(Object.keys(limits).length > 0 && { limits }),
    },
    notices: hoseTestsAhead(hoseTests, todayIso()),
    hasTerrain: terrain.name !== null,
  };
}

/** Rigs that can pump and are in service, those of the nearest station first. */
export function rigsByNearness(
  { rigs }: PlanningRecords,
  stations: readonly MapStation[],
  place: Place,
): Stored<'rigs'>[] {
  const far = (rig: Stored<'rigs'>): number => {
    const station = stations.find(({ id }) => id === rig.stationId);
    if (!station) return Number.POSITIVE_INFINITY;
    return crowFt([station.longitude, station.latitude], [place.longitude, place.latitude]);
  };
  return rigs
    .filter(({ inService, kind }) => inService && kind === 'engine')
    .map((rig) => ({ rig, ft: far(rig) }))
    .sort((a, b) => (a.ft === b.ft ? 0 : a.ft - b.ft))
    .map(({ rig }) => rig);
}

export function pickedRig(
  rig: Stored<'rigs'>,
  { pumpTests, appliances, hose }: PlanningRecords,
): PickedRig {
  const valve = assistValveOf(rig, appliances);
  return {
    rig,
    lengths: hose,
    pumpTests: pumpTests.filter(({ rigId }) => rigId === rig.id),
    ...(valve && { valve }),
  };
}
