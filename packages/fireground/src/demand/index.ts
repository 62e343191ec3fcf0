/** What a building asks for, by the public methods, and what the crew has in use. */
export type {
  DemandAnswer,
  DemandMethod,
  DemandOptions,
  DemandSource,
  DemandStep,
  Unanswered,
} from './answer.ts';
export { areaAndInvolvement } from './area-involvement.ts';
export type * from './building.ts';
export { type BuildingFieldRow, buildingFields } from './building-fields.ts';
export { demandByMethods, demandMethods } from './demand-by-methods.ts';
export { demandFromLines, type LineInUse } from './demand-from-lines.ts';
export { fireCodeFlow } from './fire-code.ts';
export { type GoverningDemand, governingDemand } from './governing-demand.ts';
export { insuranceRating } from './insurance-rating.ts';
export { DELIVERY_RATES, deliveryRateGpm, ruralSupply } from './rural-supply.ts';
export { SPRINKLER_DESIGNS, type SprinklerDesign, sprinklerDemand } from './sprinkler-demand.ts';
export { standpipeDemand } from './standpipe-demand.ts';
export { volumeRule } from './volume-rule.ts';
