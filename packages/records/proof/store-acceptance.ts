/** What every store must do, run on each kind of database. */
import { describeDrills } from './acceptance/drills.ts';
import { describeLists } from './acceptance/lists.ts';
import { describeMerge } from './acceptance/merge.ts';
import { describeOrder } from './acceptance/order.ts';
import { describeOrigins } from './acceptance/origins.ts';
import { describeRecords } from './acceptance/records.ts';
import { describeTerrain } from './acceptance/terrain.ts';
import { describeTransactions } from './acceptance/transactions.ts';
import type { Fresh } from './acceptance/trial.ts';

/** @param fresh an empty database, another one at each call */
export function storeAcceptance(fresh: Fresh): void {
  describeRecords(fresh);
  describeLists(fresh);
  describeOrder(fresh);
  describeMerge(fresh);
  describeOrigins(fresh);
  describeTransactions(fresh);
  describeTerrain(fresh);
  describeDrills(fresh);
}
