/** Requests that fail before the app sees them: they are refused with a problem document all the same. */
import { type IncomingMessage, maxHeaderSize, type Server, STATUS_CODES } from 'node:http';
import type { Duplex } from 'node:stream';
import { RequestError } from '@hono/node-server';

interface Refusal {
  status: 400 | 405 | 408 | 413 | 417 | 431 | 500;
  title: string;
  detail: string;
}

/** Answers on the bare connection where Node has made no request of what came. */
export function refuseUnreadable(server: Server): void {
  server.on('clientError', (error: NodeJS.ErrnoException, socket: Duplex) => {
    // Nobody is there to read it, or an answer is under way already.
    if (error.code === 'ECONNRESET' || !socket.writable || hasAnswered(socket)) {
      socket.destroy(error);
      return;
    }
    end(socket, refusalOf(error.code));
  });
  server.on('connect', (_asked: IncomingMessage, socket: Duplex) => {
    const detail = 'CONNECT is not served: this is no proxy. Use GET on the address itself.';
    end(socket, { status: 405, title: 'Method not allowed', detail });
  });
  server.on('checkExpectation', (_asked, answer) => {
    const refusal: Refusal = {
      status: 417,
      title: 'Expectation not met',
      detail: 'Expect may ask for 100-continue alone; leave the header out.',
    };
    const [body, headers] = documentOf(refusal);
    answer.writeHead(refusal.status, headers).end(body);
  });
}

/** Answers what could not be made into a request, or a failure that nobody has answered. */
export function answerUnread(error: unknown): Response {
  const isRequest = error instanceof RequestError;
  if (!isRequest) console.error(error);
  const refusal: Refusal = isRequest
    ? {
        status: 400,
        title: 'Address not understood',
        detail:
          `The request's address or Host header cannot be read (${error.message}). ` +
          'Give a path that starts with / and a Host header of a name and a port.',
      }
    : {
        status: 500,
        title: 'Server error',
        detail: 'The server failed on this request; its log says why.',
      };
  const [body, headers] = documentOf(refusal);
  return new Response(body, { status: refusal.status, headers });
}

function refusalOf(code: string | undefined): Refusal {
  switch (code) {
    case 'HPE_HEADER_OVERFLOW':
      return {
        status: 431,
        title: 'Address or headers too long',
        detail: `Address and headers together may have ${maxHeaderSize / 1024} KB. Send what is long as a body.`,
      };
    case 'HPE_CHUNK_EXTENSIONS_OVERFLOW':
      return {
        status: 413,
        title: 'Too much',
        detail: 'The pieces of the body carry too many extensions. Send them without.',
      };
    case 'ERR_HTTP_REQUEST_TIMEOUT':
      return {
        status: 408,
        title: 'Too slow',
        detail: 'The request did not come to its end in time. Send it again.',
      };
    case 'HPE_INVALID_METHOD':
      return {
        status: 400,
        title: 'Method not understood',
        detail: 'The request begins with no method of HTTP. Use GET, POST, PATCH, PUT or DELETE.',
      };
    default:
      return {
        status: 400,
        title: 'Request not understood',
        detail: 'What came is no HTTP/1.1 request, or breaks off. Mend the program that sent it.',
      };
  }
}

function documentOf({ status, title, detail }: Refusal): [string, Record<string, string>] {
  const body = JSON.stringify({ type: 'about:blank', title, status, detail });
  const headers = {
    'Content-Type': 'application/problem+json',
    'Content-Length': String(Buffer.byteLength(body)),
    'Cache-Control': 'no-store',
    'X-Content-Type-Options': 'nosniff',
    Connection: 'close',
  };
  return [body, headers];
}

function end(socket: Duplex, refusal: Refusal): void {
  const [body, headers] = documentOf(refusal);
  const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}`);
  const status = `HTTP/1.1 ${refusal.status} ${STATUS_CODES[refusal.status]}`;
  socket.end(`${[status, ...lines].join('\r\n')}\r\n\r\n${body}`);
}

/** A body that cannot be read any further: its request is with the app, which answers or has done so. */
function hasAnswered(socket: Duplex): boolean {
  const { _httpMessage: answer } = socket as Duplex & { _httpMessage?: { headersSent: boolean } };
  return answer?.headersSent ?? false;
}
