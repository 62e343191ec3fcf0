/** Routes and their description in one step, so that none is served without being described. */
import { createRoute, type OpenAPIHono, type RouteConfig } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { answerProblem } from '../problem.ts';

export type Answer = (c: Context) => Response | Promise<Response>;

/** Adds a route to the app and to its OpenAPI document. */
export function define(app: OpenAPIHono, description: RouteConfig, answer: Answer): void {
  const route = createRoute(description);
  app.openAPIRegistry.registerPath(route);
  app.on(route.method.toUpperCase(), route.getRoutingPath(), answer);
}

/** Answers 405 with `Allow` for every other method on the paths defined so far. Call it last. */
export function refuseOtherMethods(app: OpenAPIHono): void {
  const methods = new Map<string, Set<string>>();
  for (const { method, path } of app.routes) {
    if (method === 'ALL') continue;
    const allowed = methods.get(path) ?? new Set();
    allowed.add(method);
    if (method === 'GET') allowed.add('HEAD');
    methods.set(path, allowed);
  }
  for (const [path, allowed] of methods) {
    const allow = [...allowed].sort().join(', ');
    app.all(path, (c) =>
      answerProblem(c, {
        status: 405,
        title: 'Method not allowed',
        detail: `${c.req.method} is not served here; use ${allow}.`,
        headers: { Allow: allow },
      }),
    );
  }
}
