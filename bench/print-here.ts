/** A building's water plan worked out on the thread that asks: as the server did before it had others. */
import { chooseSupply } from '@plugside/fireground';
import { buildingPlanFor, renderBuildingPlan } from '@plugside/paper';
import { everyRecord, type RecordStore, situationAt } from '@plugside/records';

/** @returns its length [bytes] */
export async function printHere(store: RecordStore, buildingId: string): Promise<number> {
  const made = await situationAt(store, buildingId);
  if (!made.situation) throw new Error(`No supply for ${made.building.name}.`);
  const plan = buildingPlanFor({
    building: made.building,
    situation: made,
    choice: chooseSupply(made.situation, { units: 'us' }),
    streets: await everyRecord(store, 'streets'),
    hydrants: await everyRecord(store, 'hydrants'),
    waters: await everyRecord(store, 'water-sources'),
  });
  let bytes = 0;
  for await (const part of renderBuildingPlan(plan, { printedAt: new Date() })) {
    bytes += (part as Buffer).length;
  }
  return bytes;
}
