import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../app.ts';
import { type TestServer, testServer } from '../test-server.ts';

let server: TestServer;

beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

/** Headers go out as written; fetch would keep Host and Origin to itself. */
function statusOf(headers: Record<string, string>, method = 'GET', path = '/api/district') {
  return new Promise<number>((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port: server.port, path, method, headers });
    sent.on('response', (answer) => {
      answer.resume().on('end', () => resolve(answer.statusCode ?? 0));
    });
    sent.on('error', reject).end();
  });
}

const own = () => `127.0.0.1:${server.port}`;

describe('on a loopback address', () => {
  it.each([
    ['a program', {}],
    ['localhost', { host: 'localhost:1' }],
    ['IPv6', { host: '[::1]:1' }],
    ['a typed address', { 'sec-fetch-site': 'none', 'sec-fetch-mode': 'navigate' }],
    ['its own page', { 'sec-fetch-site': 'same-origin' }],
    ['a link on another page', { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' }],
  ])('lets %s in', async (_who, headers) => {
    expect(await statusOf(headers)).toBe(200);
  });

  it('lets its own origin write', async () => {
    const headers = { origin: `http://${own()}`, host: own() };
    // No body: refused as that, not for where it comes from.
    expect(await statusOf(headers, 'POST', '/api/records/hydrants')).toBe(415);
  });

  it.each([
    ['a name made to point here', { host: 'rebound.example:4600' }],
    ['a name that begins like an address', { host: '127.0.0.1.example.org' }],
    ['another address', { host: '192.168.1.20' }],
    ['another site', { origin: 'https://other.example' }],
    ['a page without origin', { origin: 'null' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:1' }],
    ['another site’s picture', { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' }],
    ['another port’s script', { 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'no-cors' }],
  ])('refuses %s', async (_who, headers) => {
    expect(await statusOf(headers)).toBe(403);
    expect(await statusOf(headers, 'POST', '/api/records/hydrants')).toBe(403);
    expect(await statusOf(headers, 'GET', '/')).toBe(403);
  });

  it('refuses a form that another page sends by following it', async () => {
    const headers = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' };
    expect(await statusOf(headers, 'POST', '/api/records/hydrants')).toBe(403);
  });
});

describe('on an address that others reach', () => {
  const app = createApp({
    webRoot: tmpdir(),
    version: '1',
    host: '0.0.0.0',
    hostNames: ['water.example'],
  });
  const ask = async (host: string) =>
    (await app.request('/none', { headers: { host, accept: '*/*' } })).status;

  it('goes by its addresses and the names it was given, and no others', async () => {
    expect(await ask('192.168.1.20:4600')).toBe(404);
    expect(await ask('[fe80::1]:4600')).toBe(404);
    expect(await ask('Water.example')).toBe(404);
    expect(await ask('rebound.example')).toBe(403);
  });
});
