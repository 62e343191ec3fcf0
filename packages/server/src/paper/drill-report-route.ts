/** A drill that has ended, as a report. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import type { DrillScene, Judgement, LogEntry } from '@plugside/drill';
import { drillReportFor, renderDrillReport } from '@plugside/paper';
import { type DrillRun, type RecordStore, readDistrict } from '@plugside/records';
import { define } from '../api/define.ts';
import { body, problems } from '../api/describe.ts';
import { answerBytes } from '../api/stream-answer.ts';
import { ProblemError } from '../problem.ts';
import { inTurn } from './in-turn.ts';
import { paperQuery, pdfIdIn, printedAs } from './paper-query.ts';

const type = 'application/pdf';

/** Reports that are asked for at once; each is made from a whole drill played again. */
const MOST_WAITING = 20;

export function drillReportRoute(app: OpenAPIHono, store: RecordStore): void {
  const turns = inTurn(MOST_WAITING);
  define(
    app,
    {
      method: 'get',
      path: '/api/paper/drill-report/{id}.pdf',
      tags: ['paper'],
      summary: 'A drill’s report',
      description:
        'By the drill’s `roomId`, once it has ended: its score, pressures over time, and its log in words. The drill is played again for it, which takes some seconds for a long one.',
      request: { params: z.object({ id: z.string() }), query: paperQuery },
      responses: { ...body('The report', type), ...problems(400, 404, 409, 503) },
    },
    async (c) => {
      const printed = printedAs(c);
      const run = await endedRun(store, pdfIdIn(c));
      const log = (await store.drillRuns.log(run.id)).map(({ entry }) => entry as LogEntry);
      const { title, crew, startedAt, seed, tick, result } = run;
      const { units } = printed;
      const { signal } = c.req.raw;
      const report = await turns(() =>
        drillReportFor(
          {
            title,
            ...(crew !== undefined && { crew }),
            startedAt,
            scene: run.scene as DrillScene,
            seed,
            log,
            tick,
            ...(result !== undefined && { result: result as Judgement[] }),
            units,
          },
          signal,
        ),
      ).catch((error) => {
        // Nobody waits for it any more.
        if (signal.aborted) return undefined;
        throw error;
      });
      if (!report) return c.body(null, 408);
      const { name: department } = await readDistrict(store);
      const pdf = renderDrillReport(report, { printedAt: new Date(), department, ...printed });
      return answerBytes(c, pdf, { type, name: 'drill-report.pdf' });
    },
  );
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
