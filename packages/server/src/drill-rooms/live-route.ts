import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { define } from '../api/define.ts';
import { problems } from '../api/describe.ts';
import { ProblemError } from '../problem.ts';
import { addressOf, takeWebSocket } from '../upgrade.ts';
import type { DrillRooms } from './drill-rooms.ts';
import type { FindRoom } from './find-room.ts';
import { fromAddress } from './from-address.ts';
import { serveDevice } from './live-connection.ts';

/** A drill's WebSocket. */
export function liveRoute(app: OpenAPIHono, rooms: DrillRooms, find: FindRoom): void {
  let connections = 0;
  const fromEach = fromAddress();
  define(
    app,
    {
      method: 'get',
      path: '/api/drills/{code}/live',
      tags: ['drills'],
      summary: 'Take part in a drill, over a WebSocket',
      description: 'What goes to and fro is told in docs/drill-rooms.md.',
      request: { params: z.object({ code: z.string() }) },
      responses: {
        101: { description: 'The connection is a WebSocket from here on' },
        ...problems(403, 404, 426, 429, 503),
      },
    },
    async (c) => {
      const { code } = await find(c);
      const address = addressOf(c);
      const { mostConnections, mostConnectionsFromAddress: most } = rooms.settings;
      if (fromEach.has(address) >= most) {
        throw new ProblemError({
          status: 429,
          title: 'Too many from one address',
          detail: `${most} devices are connected from your address already; allowed: ${most}. Close those that nobody uses: one that does not join is let go by itself within half a minute.`,
          headers: { 'Retry-After': '30' },
        });
      }
      if (connections >= mostConnections) {
        throw new ProblemError({
          status: 503,
          title: 'Full',
          detail: `${mostConnections} devices are connected already. Close those that nobody uses.`,
          headers: { 'Retry-After': '30' },
        });
      }
      return takeWebSocket(c, (socket) => {
        connections += 1;
        const giveBack = fromEach.take(address);
        socket.once('close', () => {
          connections -= 1;
          giveBack();
        });
        serveDevice(socket, code, rooms, address);
      });
    },
  );
}
