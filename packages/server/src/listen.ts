import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';
import { closeAll } from './closing.ts';
import type { ServerSettings } from './settings.ts';
import { answerUnread, refuseUnreadable } from './unreadable.ts';
import { allGone, serveUpgrades } from './upgrade.ts';

/** How many ports after the default one are tried before giving up. */
const PORTS_TRIED = 20;

/** A connection that sends no headers for so long, or no whole request, is closed [ms]. */
const HEADERS_WAIT_MS = 15_000;
/** An upload of the greatest length gets here over a slow network. */
const REQUEST_WAIT_MS = 600_000;

/** Longest that what was last said over WebSockets is waited for [ms]. */
const SOCKETS_WAIT_MS = 500;

export interface RunningServer {
  /** For a browser, for instance `http://127.0.0.1:4600/`. */
  url: string;
  port: number;
  /** Stops taking requests and ends those under way. */
  close(): Promise<void>;
}

/**
 * Serves the app. A port that was asked for is used or refused; the default one gives way
 * to the next free one.
 *
 * @throws Error naming the port and the remedy when none is free, or when the address cannot be used
 */
export async function listen(app: Hono, settings: ServerSettings): Promise<RunningServer> {
  const last = settings.portGiven ? settings.port : settings.port + PORTS_TRIED;
  for (let port = settings.port; port <= last; port += 1) {
    const running = await tryPort(app, settings.host, port);
    if (running) return running;
  }
  const taken = settings.portGiven
    ? `Port ${settings.port} is taken`
    : `Ports ${settings.port} to ${last} are all taken`;
  throw new Error(`${taken} on ${settings.host}. Choose another: PORT=4700 npm start`);
}

/** Null when the port is taken. */
function tryPort(app: Hono, host: string, port: number): Promise<RunningServer | null> {
  const server = createServer(
    {
      headersTimeout: HEADERS_WAIT_MS,
      requestTimeout: REQUEST_WAIT_MS,
      // Refused all the same, but in words: Node would answer with a bare status.
      requireHostHeader: false,
    },
    getRequestListener(app.fetch, { errorHandler: answerUnread }),
  );
  refuseUnreadable(server);
  const sockets = serveUpgrades(server, app);
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE') resolve(null);
      else reject(new Error(explain(error, host, port), { cause: error }));
    });
    server.listen(port, host, () => {
      const bound = (server.address() as AddressInfo).port;
      resolve({
        url: `http://${nameInUrl(host)}:${bound}/`,
        port: bound,
        close: async () => {
          await closeAll(app);
          await allGone(sockets, SOCKETS_WAIT_MS);
          await new Promise<void>((done) => {
            server.close(() => done());
            // A browser keeps its connections open; without this the close would wait for it.
            server.closeAllConnections();
            for (const socket of sockets.clients) socket.terminate();
          });
        },
      });
    });
  });
}

/** What a browser on this machine writes for the address listened on. */
function nameInUrl(host: string): string {
  if (host === '0.0.0.0' || host === '::') return 'localhost';
  return host.includes(':') ? `[${host}]` : host;
}

function explain(error: NodeJS.ErrnoException, host: string, port: number): string {
  switch (error.code) {
    case 'EACCES':
      return `Port ${port} needs rights that this account lacks. Choose one above 1023: PORT=4700 npm start`;
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `HOST is "${host}", which is no address of this machine. Leave it out for 127.0.0.1.`;
    default:
      return `Cannot listen on ${host}:${port}: ${error.message}`;
  }
}
