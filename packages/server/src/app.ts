import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { etag } from 'hono/etag';
import { answerProblem } from './problem.ts';
import { securityHeaders } from './security-headers.ts';
import { appFiles, appPage, isBuilt } from './static-app.ts';

export interface AppOptions {
  /** Folder of the built browser app, absolute. */
  webRoot: string;
  /** Told by `/health`. */
  version: string;
}

/** The whole of the server: the app's files, its page for every other address, and `/health`. */
export function createApp({ webRoot, version }: AppOptions): Hono {
  const app = new Hono();
  app.use(securityHeaders());
  app.use(compress());
  app.use(etag());

  app.use(async (c, next) => {
    if (c.req.method === 'GET' || c.req.method === 'HEAD') return next();
    c.header('Allow', 'GET, HEAD');
    return answerProblem(c, {
      status: 405,
      title: 'Method not allowed',
      detail: `${c.req.method} is not served here; use GET or HEAD.`,
    });
  });

  app.get('/health', (c) => {
    c.header('Cache-Control', 'no-store');
    const built = isBuilt(webRoot);
    return c.json({ status: built ? 'ok' : 'app not built', version }, built ? 200 : 503);
  });

  app.use(appFiles(webRoot));
  app.use(appPage(webRoot));

  app.notFound((c) =>
    answerProblem(c, {
      status: 404,
      title: 'Not found',
      detail: `Nothing is served at ${c.req.path}. The app is at /.`,
    }),
  );
  app.onError((error, c) => {
    console.error(error);
    return answerProblem(c, {
      status: 500,
      title: 'Server error',
      detail: 'The server failed on this request; its log says why.',
    });
  });
  return app;
}
