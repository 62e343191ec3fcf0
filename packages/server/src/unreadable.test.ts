import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestServer, testServer } from './test-server.ts';

let server: TestServer;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

/** What comes back on a connection of its own for bytes sent as they are written here. */
function answerTo(bytes: string): Promise<string> {
  return new Promise((resolve) => {
    let answer = '';
    const socket = connect(server.port, '127.0.0.1', () => socket.write(bytes));
    socket.on('data', (part) => {
      answer += part;
    });
    // Reset where the server has closed before it read to the end.
    socket.on('error', () => {});
    socket.on('close', () => resolve(answer));
  });
}

const lines = (first: string, ...headers: string[]) =>
  [first, ...headers, 'Connection: close', '', ''].join('\r\n');
const own = 'Host: localhost';
const post = 'POST /api/records/hydrants HTTP/1.1';

describe('a request that cannot be read', () => {
  it.each<[what: string, bytes: string, status: number]>([
    ['bad percent-encoding', lines('GET /api/records/hydrants/%zz HTTP/1.1', own), 404],
    ['percent-encoding that is no UTF-8', lines('GET /%c0%ae HTTP/1.1', own), 404],
    ['bad percent-encoding in a query', lines('GET /api/elevation?lon=%zz HTTP/1.1', own), 400],
    ['a backslash', lines('GET /..\\x HTTP/1.1', own), 400],
    ['an address that is none', lines('GET http://[ HTTP/1.1', own), 400],
    ['an address of another scheme', lines('GET ftp://localhost/ HTTP/1.1', own), 400],
    ['a star for an address', lines('OPTIONS * HTTP/1.1', own), 400],
    ['an address of 20,000 letters', lines(`GET /${'a'.repeat(20_000)} HTTP/1.1`, own), 431],
    ['a header of 20,000 letters', lines('GET / HTTP/1.1', own, `X: ${'a'.repeat(20_000)}`), 431],
    ['no host', lines('GET / HTTP/1.1'), 400],
    ['a host that is none', lines('GET / HTTP/1.1', 'Host: a b'), 400],
    ['a method that HTTP does not have', lines('FROB / HTTP/1.1', own), 400],
    ['a method that nothing here has', lines('PURGE / HTTP/1.1', own), 405],
    ['TRACE', lines('TRACE /api/district HTTP/1.1', own), 405],
    ['CONNECT', lines('CONNECT localhost:80 HTTP/1.1', own), 405],
    ['no HTTP', 'hello there\r\n\r\n', 400],
    ['another HTTP', lines('GET / HTTP/9.9', own), 400],
    [
      'a length and pieces',
      lines(post, own, 'Content-Length: 3', 'Transfer-Encoding: chunked'),
      400,
    ],
    ['an odd expectation', `${lines(post, own, 'Expect: dance', 'Content-Length: 2')}{}`, 417],
  ])('%s is refused with a problem document', async (_what, bytes, status) => {
    const answer = await answerTo(bytes);
    const [head = '', body = ''] = answer.split('\r\n\r\n');
    expect(head.split(' ')[1], answer).toBe(String(status));
    expect(head.toLowerCase()).toContain('content-type: application/problem+json');
    expect(head.toLowerCase()).toContain('x-content-type-options: nosniff');
    const problem = JSON.parse(body) as { status: number; title: string; detail: string };
    expect(problem).toMatchObject({ type: 'about:blank', status });
    expect(problem.title && problem.detail).toBeTruthy();
  });

  it('keeps nobody else waiting', async () => {
    await answerTo('\0\0\0\r\n\r\n');
    expect((await server.ask('/district')).status).toBe(200);
  });
});
