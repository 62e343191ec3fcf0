/** Every kind of record: its name, its schema, where it lives. */
import type { z } from 'zod';
import {
  applianceSchema,
  hoseSchema,
  nozzleSchema,
  rigSchema,
  stationSchema,
} from './apparatus.ts';
import type { Envelope } from './common.ts';
import { buildingSchema, planRecordSchema, settingSchema, streetSchema } from './district.ts';
import { hydrantSchema, waterSourceSchema } from './hydrant.ts';
import { flowTestSchema, hoseTestSchema, pumpTestSchema } from './tests.ts';

/** By kind, as in paths and archives. The order is one in which they can be written: what is referred to comes first. */
export const recordSchemas = {
  stations: stationSchema,
  hydrants: hydrantSchema,
  'water-sources': waterSourceSchema,
  'flow-tests': flowTestSchema,
  rigs: rigSchema,
  'pump-tests': pumpTestSchema,
  hose: hoseSchema,
  'hose-tests': hoseTestSchema,
  nozzles: nozzleSchema,
  appliances: applianceSchema,
  streets: streetSchema,
  buildings: buildingSchema,
  plans: planRecordSchema,
  settings: settingSchema,
} as const;

export type Kind = keyof typeof recordSchemas;

/** A record's own fields, as written. */
export type Fields<K extends Kind> = z.infer<(typeof recordSchemas)[K]>;
/** As given: defaults may be left out. */
export type FieldsIn<K extends Kind> = z.input<(typeof recordSchemas)[K]>;
/** A record as stored. */
export type Stored<K extends Kind> = Fields<K> & Envelope;

export const kinds = Object.keys(recordSchemas) as readonly Kind[];

/** For people: singular and plural. */
export const kindLabels: Readonly<Record<Kind, readonly [one: string, many: string]>> = {
  stations: ['station', 'stations'],
  hydrants: ['hydrant', 'hydrants'],
  'water-sources': ['water source', 'water sources'],
  'flow-tests': ['flow test', 'flow tests'],
  rigs: ['rig', 'rigs'],
  'pump-tests': ['pump test', 'pump tests'],
  hose: ['length of hose', 'lengths of hose'],
  'hose-tests': ['hose test', 'hose tests'],
  nozzles: ['nozzle', 'nozzles'],
  appliances: ['appliance', 'appliances'],
  streets: ['street', 'streets'],
  buildings: ['building', 'buildings'],
  plans: ['plan', 'plans'],
  settings: ['setting', 'settings'],
};
