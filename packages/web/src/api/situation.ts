/** What there is to work with at a building. */
import type { Situation } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import type { PlanningNotice } from '@plugside/records/planning';
import type { Position } from './district.ts';
import { apiRequest } from './request.ts';

export interface SituationAnswer {
  building: Stored<'buildings'>;
  /** Null where a notice says what is missing. */
  situation: Situation | null;
  /** Whose the situation's short ids are. */
  recordIds: Readonly<Record<string, string>>;
  /** From the water to the building, by short id. */
  paths: Readonly<Record<string, readonly Position[]>>;
  /** The street that the hose takes at the building, where it has a name, by short id. */
  streets: Readonly<Record<string, string>>;
  notices: readonly PlanningNotice[];
}

/** @throws ProblemError (404) where there is no such building */
export function situationAt(
  buildingId: string,
  demandGpm?: number,
  signal?: AbortSignal,
): Promise<SituationAnswer> {
  return apiRequest(`/buildings/${buildingId}/situation`, { query: { demandGpm }, signal });
}
