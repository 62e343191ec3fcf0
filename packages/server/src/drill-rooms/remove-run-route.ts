/** Taking a drill that has ended out of the records. */
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import type { RecordStore } from '@plugside/records';
import type { Context } from 'hono';
import { define } from '../api/define.ts';
import { problems } from '../api/describe.ts';
import { ProblemError } from '../problem.ts';

export function removeRunRoute(app: OpenAPIHono, store: RecordStore): void {
  define(
    app,
    {
      method: 'delete',
      path: '/api/drill-runs/{roomId}',
      tags: ['drills'],
      summary: 'Remove a drill that has ended',
      description:
        'With its log and its result, for good. One that still runs is refused: end it first.',
      request: {
        params: z.object({ roomId: z.string() }),
        headers: z.object({
          'if-match': z.string().openapi({
            description: 'Its `endedAt` as it was read, in quotes',
            example: '"2026-11-30T19:20:03.511Z"',
          }),
        }),
      },
      responses: { 204: { description: 'Removed' }, ...problems(400, 404, 409, 428) },
    },
    async (c) => {
      const asked = endedAtIn(c);
      const id = c.req.param('roomId') ?? '';
      const run = await store.drillRuns.get(id);
      if (!run) {
        throw new ProblemError({
          status: 404,
          title: 'Not found',
          detail:
            'There is no drill with this roomId; it may have been removed. /api/drill-runs lists them.',
        });
      }
      if (run.endedAt === undefined) {
        throw new ProblemError({
          status: 409,
          title: 'Still runs',
          detail: 'The drill still runs. End it first: its instructor can.',
        });
      }
      if (run.endedAt !== asked) {
        throw new ProblemError({
          status: 409,
          title: 'Another drill',
          detail: `The drill ended at ${run.endedAt}, not ${asked.slice(0, 40)}. Look at it again first.`,
        });
      }
      await store.drillRuns.remove(run.id);
      return c.body(null, 204);
    },
  );
}

/** Whoever removes a drill has read it: it names the moment at which it ended. */
function endedAtIn(c: Context): string {
  const given = c.req.header('if-match')?.trim();
  if (!given) {
    throw new ProblemError({
      status: 428,
      title: 'End needed',
      detail:
        'If-Match is left out. Give the drill’s endedAt in quotes, so that no other drill is removed.',
    });
  }
  const endedAt = /^(?:W\/)?"([^"]+)"$/.exec(given)?.[1];
  if (endedAt !== undefined) return endedAt;
  throw new ProblemError({
    status: 400,
    title: 'No end',
    detail: `If-Match is ${given.slice(0, 80)}; give the drill’s endedAt in quotes, for instance If-Match: "2026-11-30T19:20:03.511Z".`,
  });
}
