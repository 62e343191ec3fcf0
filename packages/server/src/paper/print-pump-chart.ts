import { pickedRig, pumpChartFor, readDepartment, renderPumpChart } from '@plugside/paper';
import { NotFoundError, readDistrict } from '@plugside/records';
import type { RecordsAtHand } from '../threads/records-at-hand.ts';
import type { PrintedAs } from './paper-query.ts';
import { bytesOf, optionsFor } from './printed.ts';

/** A rig's pump chart. @throws NotFoundError */
export async function printPumpChart(
  { rigId, printed }: { rigId: string; printed: PrintedAs },
  atHand: RecordsAtHand,
): Promise<Uint8Array> {
  const { store } = atHand;
  const rig = await store.get('rigs', rigId);
  if (!rig) throw new NotFoundError('rigs', rigId.slice(0, 40));
  const records = await readDepartment(store);
  const { invented } = await readDistrict(store);
  const chart = pumpChartFor({
    ...pickedRig(records, rig),
    nozzles: records.nozzles,
    receivers: records.rigs,
    notices: records.notices ?? [],
    department: records.department,
    invented,
    units: printed.units,
  });
  return bytesOf(renderPumpChart(chart, await optionsFor(atHand, printed)));
}
