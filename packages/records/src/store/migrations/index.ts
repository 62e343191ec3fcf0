/** Every step, by number. A step that has been released is never edited: a change is a new step. */
import type { Migration } from 'kysely';
import { firstTables } from './0001-first-tables.ts';
import { terrainTables } from './0002-terrain.ts';
import { drillTables } from './0003-drills.ts';
import { orderColumns } from './0004-order.ts';
import { hydrantMain } from './0005-hydrant-main.ts';
import { waterLift } from './0006-water-lift.ts';
import { mainFedFrom } from './0007-main-fed-from.ts';

export const migrations: Readonly<Record<string, Migration>> = {
  '0001-first-tables': firstTables,
  '0002-terrain': terrainTables,
  '0003-drills': drillTables,
  '0004-order': orderColumns,
  '0005-hydrant-main': hydrantMain,
  '0006-water-lift': waterLift,
  '0007-main-fed-from': mainFedFrom,
};
