import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import type { MiddlewareHandler } from 'hono';

/** The build puts a hash of the content into each name in this folder, so a name never changes its content. */
const HASHED = '/assets/';
const ONE_YEAR_S = 31_536_000;

/** Files of the built app, cached for good where the name is hashed, else checked each time. */
export function appFiles(webRoot: string): MiddlewareHandler {
  return serveStatic({
    root: webRoot,
    onFound: (_path, c) => {
      const hashed = c.req.path.startsWith(HASHED);
      c.header('Cache-Control', hashed ? `public, max-age=${ONE_YEAR_S}, immutable` : 'no-cache');
    },
  });
}

/** The app's own page for any address that a person may have typed or kept: the app finds its way from there. */
export function appPage(webRoot: string): MiddlewareHandler {
  const page = serveStatic({
    root: webRoot,
    path: 'index.html',
    onFound: (_path, c) => c.header('Cache-Control', 'no-cache'),
  });
  return async (c, next) => {
    const asksForPage = (c.req.header('accept') ?? '').includes('text/html');
    return asksForPage && isPageAddress(c.req.path) ? page(c, next) : next();
  };
}

/** True when the app has been built into this folder. */
export function isBuilt(webRoot: string): boolean {
  return existsSync(join(webRoot, 'index.html'));
}

/** A page's address names no file: `/plans/lay` is one, `/assets/a.js` and `/robots.txt` are not. */
function isPageAddress(path: string): boolean {
  if (path.startsWith(HASHED)) return false;
  const last = path.slice(path.lastIndexOf('/') + 1);
  return !last.includes('.') && !/%|\\/.test(path);
}
