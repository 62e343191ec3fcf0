import { flowTestResult } from '@plugside/fireground';
import type { Fields, Kind, Stored } from '@plugside/records';

/**
 * A record as it was written, with what its writer should know: a flow test that plans cannot use
 * is kept, since it was made, and its answer says why.
 */
export function withRemarks(
  kind: Kind,
  record: Stored<Kind>,
): Stored<Kind> & { remarks?: string[] } {
  if (kind !== 'flow-tests') return record;
  const remarks = flowTestResult(record as Fields<'flow-tests'>)
    .notices.filter(({ level }) => level === 'error')
    .map(({ text }) => `Kept, but plans cannot use this test. ${text}`);
  return remarks.length === 0 ? record : Object.assign({ ...record }, { remarks });
}
