/** Connections that are to become WebSockets: asked of the app like any request, its guards with it. */
import type { IncomingMessage, Server } from 'node:http';
import { STATUS_CODES } from 'node:http';
import { type Duplex, Readable } from 'node:stream';
import { RequestError } from '@hono/node-server';
import type { Context, Hono } from 'hono';
import { type WebSocket, WebSocketServer } from 'ws';
import { answerProblem } from './problem.ts';
import { answerUnread } from './unreadable.ts';

/** Longest message that any connection may send [bytes]. */
export const LONGEST_MESSAGE_BYTES = 16_384;

/** Answer to a connection that is taken: it never goes out. */
const SWITCHED = 204;

interface UpgradeBindings {
  incoming?: IncomingMessage;
  take?: (serve: (socket: WebSocket) => void) => void;
}

/** Takes the connection that a request asks to turn into a WebSocket. Refused with 426 where it asks for none. */
export function takeWebSocket(c: Context, serve: (socket: WebSocket) => void): Response {
  const { take } = (c.env ?? {}) as UpgradeBindings;
  if (!take || c.req.header('upgrade')?.toLowerCase() !== 'websocket') {
    return answerProblem(c, {
      status: 426,
      title: 'Upgrade needed',
      detail: 'This address is for WebSockets: ask with Upgrade: websocket, version 13.',
      headers: { Upgrade: 'websocket', Connection: 'Upgrade' },
    });
  }
  take(serve);
  return c.body(null, SWITCHED);
}

/** Address that a request comes from; empty where it is not known. */
export function addressOf(c: Context): string {
  return (c.env as UpgradeBindings | undefined)?.incoming?.socket.remoteAddress ?? '';
}

/**
 * Lets the app take connections over. A request to upgrade to anything else is answered as if it had
 * not asked for it (RFC 9110, section 7.8), and its connection closed.
 */
export function serveUpgrades(server: Server, app: Hono): WebSocketServer {
  const sockets = new WebSocketServer({
    noServer: true,
    clientTracking: true,
    maxPayload: LONGEST_MESSAGE_BYTES,
    perMessageDeflate: false,
  });
  // Malformed handshakes are answered by ws itself, with the status that RFC 6455 asks for.
  server.on('upgrade', (incoming: IncomingMessage, socket: Duplex, head: Buffer) => {
    socket.on('error', () => {});
    upgrade(app, sockets, incoming, socket, head).catch((error) => {
      console.error(error);
      socket.destroy();
    });
  });
  return sockets;
}

/** Resolves when every connection has closed, or the time is over. */
export async function allGone(sockets: WebSocketServer, mostMs: number): Promise<void> {
  const closing = [...sockets.clients].map(
    (socket) => new Promise<void>((resolve) => socket.once('close', () => resolve())),
  );
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, mostMs);
  });
  await Promise.race([Promise.all(closing), late]);
  clearTimeout(timer);
}

async function upgrade(
  app: Hono,
  sockets: WebSocketServer,
  incoming: IncomingMessage,
  socket: Duplex,
  head: Buffer,
): Promise<void> {
  let serve: ((socket: WebSocket) => void) | undefined;
  let answer: Response;
  try {
    const bindings: UpgradeBindings = {
      incoming,
      take: (taker) => {
        serve = taker;
      },
    };
    answer = await app.fetch(requestOf(incoming, bodyOf(incoming, socket, head)), bindings);
  } catch (error) {
    answer = answerUnread(error);
  }
  if (socket.destroyed) return;
  if (serve && answer.status === SWITCHED) {
    sockets.handleUpgrade(incoming, socket, head, serve);
    return;
  }
  await refuse(socket, answer, incoming.method === 'HEAD');
}

/** @throws RequestError */
function requestOf(incoming: IncomingMessage, body: ReadableStream | undefined): Request {
  const { host } = incoming.headers;
  if (!host) throw new RequestError('Missing host header');
  if (!incoming.url?.startsWith('/')) throw new RequestError('Invalid request target');
  try {
    const headers = new Headers();
    for (let at = 0; at < incoming.rawHeaders.length; at += 2) {
      headers.append(incoming.rawHeaders[at] ?? '', incoming.rawHeaders[at + 1] ?? '');
    }
    const url = new URL(`http://${host}${incoming.url}`);
    const { method = 'GET' } = incoming;
    return new Request(url, { method, headers, ...(body && { body, duplex: 'half' }) });
  } catch (error) {
    throw new RequestError('Invalid request', { cause: error });
  }
}

/**
 * The body of a request that asks in passing for a newer HTTP, as some libraries do each time; Node
 * reads it for no request with Upgrade.
 * @throws RequestError for one whose length is not told
 */
function bodyOf(
  { headers }: IncomingMessage,
  socket: Duplex,
  head: Buffer,
): ReadableStream | undefined {
  if (headers['transfer-encoding'] !== undefined) {
    throw new RequestError('a body with Upgrade needs a Content-Length');
  }
  const length = Number(headers['content-length'] ?? 0);
  if (!(length > 0)) return undefined;
  return Readable.toWeb(Readable.from(firstBytes(socket, head, length))) as ReadableStream;
}

async function* firstBytes(socket: Duplex, head: Buffer, length: number) {
  yield head.subarray(0, length);
  let left = length - head.length;
  if (left <= 0) return;
  for await (const chunk of socket.iterator({ destroyOnReturn: false })) {
    yield (chunk as Buffer).subarray(0, left);
    left -= (chunk as Buffer).length;
    if (left <= 0) return;
  }
}

async function refuse(socket: Duplex, answer: Response, bodyless: boolean): Promise<void> {
  const body = Buffer.from(await answer.arrayBuffer());
  const lines = [`HTTP/1.1 ${answer.status} ${STATUS_CODES[answer.status] ?? ''}`];
  for (const [name, value] of answer.headers) {
    if (name !== 'connection' && name !== 'content-length') lines.push(`${name}: ${value}`);
  }
  lines.push(`content-length: ${body.length}`, 'connection: close');
  socket.write(`${lines.join('\r\n')}\r\n\r\n`);
  socket.end(bodyless ? undefined : body);
}
