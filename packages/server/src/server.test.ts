import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { get, type IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from './app.ts';
import { listen, type RunningServer } from './listen.ts';

const PAGE = '<!doctype html><title>Lay</title><div id="root"></div>';
const SCRIPT = `export const text = '${'water '.repeat(500)}';`;

let folder: string;
let webRoot: string;
let server: RunningServer;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'plugside-server-'));
  webRoot = join(folder, 'dist');
  mkdirSync(join(webRoot, 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'not for the web');
  writeFileSync(join(webRoot, 'index.html'), PAGE);
  writeFileSync(join(webRoot, 'icon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(join(webRoot, 'assets', 'app-4f3a91c2.js'), SCRIPT);
  const app = createApp({ webRoot, version: '9.9.9' });
  server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

const at = (path: string) => new URL(path, server.url);

/** A request whose path goes out exactly as written: fetch would tidy `..` away first. */
function raw(
  path: string,
): Promise<{ status: number; headers: IncomingHttpHeaders; body: string }> {
  return new Promise((resolve, reject) => {
    get({ host: '127.0.0.1', port: server.port, path, headers: { accept: '*/*' } }, (answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (part: string) => {
        body += part;
      });
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, body }),
      );
    }).on('error', reject);
  });
}

describe('files', () => {
  it('serves the page and has it checked each time', async () => {
    const answer = await fetch(at('/'));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toMatch(/^text\/html/);
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    expect(await answer.text()).toBe(PAGE);
  });

  it('answers 304 to a browser that has the page already', async () => {
    const first = await fetch(at('/'));
    const tag = first.headers.get('etag');
    expect(tag).toBeTruthy();
    const again = await fetch(at('/'), { headers: { 'if-none-match': tag ?? '' } });
    expect(again.status).toBe(304);
    expect(again.headers.get('cache-control')).toBe('no-cache');
  });

  it('lets a hashed file be kept for good', async () => {
    const answer = await fetch(at('/assets/app-4f3a91c2.js'));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toMatch(/^text\/javascript/);
    expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect(await answer.text()).toBe(SCRIPT);
  });

  it('compresses for a browser that takes it', async () => {
    const answer = await fetch(at('/assets/app-4f3a91c2.js'), {
      headers: { 'accept-encoding': 'gzip' },
    });
    expect(answer.headers.get('content-encoding')).toBe('gzip');
    expect(await answer.text()).toBe(SCRIPT);
  });

  it('has a file without a hash checked each time', async () => {
    const answer = await fetch(at('/icon.svg'));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('cache-control')).toBe('no-cache');
  });

  it('answers HEAD with the headers alone', async () => {
    const answer = await fetch(at('/'), { method: 'HEAD' });
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe('');
  });
});

describe('addresses of the app', () => {
  it('gives the page for an address that the app knows how to read', async () => {
    const answer = await fetch(at('/plan/long-lay'), { headers: { accept: 'text/html' } });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    expect(await answer.text()).toBe(PAGE);
  });

  it.each([
    ['a script that is gone', '/assets/app-00000000.js', 'text/html,*/*'],
    ['a file with a name', '/robots.txt', 'text/html'],
    ['a program that wants data', '/plan/long-lay', 'application/json'],
  ])('answers 404 as a problem document for %s', async (_what, path, accept) => {
    const answer = await fetch(at(path), { headers: { accept } });
    expect(answer.status).toBe(404);
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
    const problem = (await answer.json()) as { detail: string };
    expect(problem).toMatchObject({ type: 'about:blank', status: 404, instance: path });
    expect(problem.detail).toContain(path);
  });
});

describe('what is not served', () => {
  it.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/%252e%252e/secret.txt',
    '/..\\secret.txt',
    '//secret.txt',
    '/assets/%00',
  ])('keeps %s inside the app folder', async (path) => {
    const answer = await raw(path);
    expect(answer.body).not.toContain('not for the web');
    expect([400, 404]).toContain(answer.status);
  });

  it('refuses a method it has no use for, and says which it has', async () => {
    const answer = await fetch(at('/'), { method: 'POST', body: 'x' });
    expect(answer.status).toBe(405);
    expect(answer.headers.get('allow')).toBe('GET, HEAD');
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
  });
});

describe('every answer', () => {
  it.each(['/', '/assets/app-4f3a91c2.js', '/health', '/none.txt'])(
    '%s carries the security headers',
    async (path) => {
      const { headers } = await fetch(at(path));
      const policy = headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'self'");
      expect(policy).toContain("object-src 'none'");
      expect(policy).toContain("frame-ancestors 'none'");
      // Scripts fall back to default-src: this server alone, nothing inline, no eval.
      expect(policy).not.toMatch(/script-src|unsafe-eval|https?:/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('x-powered-by')).toBeNull();
      expect(headers.get('strict-transport-security')).toBeNull();
    },
  );
});

describe('/health', () => {
  it('says that it is well, and which version it is', async () => {
    const answer = await fetch(at('/health'));
    expect(answer.status).toBe(200);
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(await answer.json()).toEqual({ status: 'ok', version: '9.9.9' });
  });

  it('answers 503 when the app has not been built', async () => {
    const app = createApp({ webRoot: join(folder, 'absent'), version: '9.9.9' });
    const answer = await app.request('/health');
    expect(answer.status).toBe(503);
  });
});
