/** A drill that has ended, as a report. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { define } from '../api/define.ts';
import { body, problems } from '../api/describe.ts';
import type { RecordThreads } from '../threads/record-threads.ts';
import { answerPdf, PDF } from './answer-pdf.ts';
import { paperQuery, pdfIdIn, printedAs } from './paper-query.ts';

export function drillReportRoute(app: OpenAPIHono, threads: RecordThreads): void {
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
      responses: { ...body('The report', PDF), ...problems(400, 404, 409, 503) },
    },
    async (c) => {
      const given = { printed: printedAs(c), roomId: pdfIdIn(c) };
      return answerPdf(c, 'drill-report.pdf', (signal) =>
        threads.run('print a drill report', given, { signal }),
      );
    },
  );
}
