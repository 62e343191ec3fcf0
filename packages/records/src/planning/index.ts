/** From records to plans; no storage, so that a browser can use it. */

export { arrivalMin, travelMin, turnoutMin } from './arrivals.ts';
export { assistValveOf, type OwnValve } from './assist-valve-of.ts';
export { type ComingRigsRequest, comingRigs } from './coming-rigs.ts';
export { type DemandInputs, demandInputs } from './demand-inputs.ts';
export { departmentCoefficients, hoseTestsAhead } from './department-coefficients.ts';
export { departmentLimits } from './department-limits.ts';
export { isInService, type LengthOfHose, withHoseInService } from './hose-in-service.ts';
export { type HoseToLay, hoseToLay, supplyHoseAboard } from './hose-to-lay.ts';
export { hydrantFromRecord, type RecordedHydrant } from './hydrant-from-record.ts';
export type { PlanningNotice } from './notice.ts';
export {
  type BuildingPlan,
  type BuildingPlanRequest,
  planForBuilding,
} from './plan-for-building.ts';
export type { PickedRig } from './rig-from-record.ts';
export {
  type BuildingSituation,
  type ComingRig,
  longestLayFt,
  type NearHydrantRecord,
  type NearWaterRecord,
  type NotByStreet,
  type SituationRequest,
  situationForBuilding,
  type WaterRoute,
} from './situation-for-building.ts';
export { type ElevationAt, type TerrainPoint, terrainAlong } from './terrain-along.ts';
export { testsAhead } from './tests-ahead.ts';
