import type { DrillScene, Judgement, LogEntry } from '@plugside/drill';
import { drillReportFor, renderDrillReport } from '@plugside/paper';
import type { DrillRun, RecordStore } from '@plugside/records';
import { ProblemError } from '../problem.ts';
import type { RecordsAtHand } from '../threads/records-at-hand.ts';
import type { PrintedAs } from './paper-query.ts';
import { bytesOf, optionsFor } from './printed.ts';

/** The report of a drill that has ended. @throws ProblemError 404, 409 */
export async function printDrillReport(
  { roomId, printed }: { roomId: string; printed: PrintedAs },
  atHand: RecordsAtHand,
): Promise<Uint8Array> {
  const { store, signal } = atHand;
  const run = await endedRun(store, roomId);
  const log = (await store.drillRuns.log(run.id)).map(({ entry }) => entry as LogEntry);
  const { title, crew, startedAt, seed, tick, result } = run;
  const report = await drillReportFor(
    {
      title,
      ...(crew !== undefined && { crew }),
      startedAt,
      scene: run.scene as DrillScene,
      seed,
      log,
      tick,
      ...(result !== undefined && { result: result as Judgement[] }),
      units: printed.units,
    },
    signal,
  );
  return bytesOf(renderDrillReport(report, await optionsFor(atHand, printed)));
}

/** @throws ProblemError 404 where there is none, 409 while it runs */
async function endedRun(store: RecordStore, id: string): Promise<DrillRun> {
  const run = await store.drillRuns.get(id);
  if (!run) {
    throw new ProblemError({
      status: 404,
      title: 'Not found',
      detail: 'There is no drill with this roomId. /api/drill-runs lists them.',
    });
  }
  if (run.endedAt === undefined) {
    throw new ProblemError({
      status: 409,
      title: 'Still runs',
      detail: 'This drill still runs: its report can be printed once its instructor has ended it.',
    });
  }
  return run;
}
