/** Streets as a network to lay hose along; no storage, so that a browser can use it. */
export { crowFt, type LonLat, type Place, pathFt } from './ellipsoid.ts';
export { type Frontage, frontageOf } from './frontage.ts';
export { type HoseRoute, type HoseRouteOptions, hoseRoutes } from './hose-routes.ts';
export {
  type LegKind,
  type Route,
  type RouteLeg,
  type RoutePoint,
  type RouteViaOptions,
  routeVia,
} from './route-via.ts';
export type { StreetLine } from './street-graph.ts';
export {
  buildStreetNetwork,
  type StreetNetwork,
  type StreetNetworkOptions,
  type StreetPoint,
} from './street-network.ts';
export { type ClassedStreet, hoseStreets, rigRoads, takesHose, takesRigs } from './street-use.ts';
export type { TurnBack } from './turn-backs.ts';
export { type HydrantPlace, type UsableHydrant, usableHydrants } from './usable-hydrants.ts';
