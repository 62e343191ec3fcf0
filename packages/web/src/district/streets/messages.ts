/** What the page and the streets' worker say to each other. */
import type {
  ClassedStreet,
  Frontage,
  Place,
  Route,
  RoutePoint,
  UsableHydrant,
} from '@plugside/records/streets';

export interface HydrantAt extends Place {
  id: string;
  status: 'in service' | 'out of service';
}

/** A hydrant by hose length, without the hydrant: the page has it. */
export type NearHydrant = Omit<UsableHydrant<HydrantAt>, 'target' | 'index'> & { id: string };

export type StreetQuestion =
  | { ask: 'nearby'; place: Place; count: number; frontage: Frontage }
  | { ask: 'route'; points: readonly RoutePoint[] };

export interface StreetAnswers {
  nearby: NearHydrant[];
  route: Route;
}

/** Sent once, before the first question. */
export interface LoadStreets {
  ask: 'load';
  streets: readonly ClassedStreet[];
  hydrants: readonly HydrantAt[];
}
