import { Hono } from 'hono';
import { afterEach, describe, expect, it } from 'vitest';
import { listen, type RunningServer } from './listen.ts';

const open: RunningServer[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

const app = new Hono().get('/', (c) => c.text('here'));

async function serve(port: number, portGiven: boolean, host = '127.0.0.1') {
  const server = await listen(app, { host, port, portGiven });
  open.push(server);
  return server;
}

describe('listen', () => {
  it('answers at the address it names', async () => {
    const server = await serve(0, true);
    expect(server.url).toBe(`http://127.0.0.1:${server.port}/`);
    expect(await (await fetch(server.url)).text()).toBe('here');
  });

  it('names an address that a browser can open when it listens on every address', async () => {
    const server = await serve(0, true, '0.0.0.0');
    expect(server.url).toBe(`http://localhost:${server.port}/`);
    expect((await fetch(server.url)).status).toBe(200);
  });

  it('moves on from a default port that is taken', async () => {
    const first = await serve(0, true);
    const second = await serve(first.port, false);
    expect(second.port).toBeGreaterThan(first.port);
    expect(await (await fetch(second.url)).text()).toBe('here');
  });

  it('refuses a port that was asked for and is taken, and says how to choose another', async () => {
    const first = await serve(0, true);
    await expect(serve(first.port, true)).rejects.toThrow(
      `Port ${first.port} is taken on 127.0.0.1. Choose another: PORT=4700 npm start`,
    );
  });

  it('names the setting when the address is not one of this machine', async () => {
    // 192.0.2.0/24 is set aside for documentation: RFC 5737.
    await expect(serve(0, true, '192.0.2.1')).rejects.toThrow('HOST is "192.0.2.1"');
  });

  it('stops at once, even with a connection kept open', async () => {
    const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
    await (await fetch(server.url)).text();
    await server.close();
    await expect(fetch(server.url)).rejects.toThrow();
  });
});
