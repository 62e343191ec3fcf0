import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from '@hono/zod-openapi';
import { define } from './define.ts';
import { json } from './describe.ts';

/** Serves the document that describes every route of the API. */
export function openApiRoute(app: OpenAPIHono, version: string): void {
  let text: string | undefined;
  define(
    app,
    {
      method: 'get',
      path: '/api/openapi.json',
      tags: ['about'],
      summary: 'This document',
      responses: json('OpenAPI 3.1', z.record(z.string(), z.unknown())),
    },
    (c) => {
      text ??= JSON.stringify(openApiDocument(app, version));
      c.header('Content-Type', 'application/json');
      return c.body(text);
    },
  );
}

function openApiDocument(app: OpenAPIHono, version: string) {
  return app.getOpenAPI31Document({
    openapi: '3.1.0',
    info: {
      title: 'Plugside',
      version,
      description:
        'A department’s records, and what they mean for its water supply. Units: gpm (US), psi, ' +
        'ft, in, gal (US); places in degrees WGS 84; dates as YYYY-MM-DD. Failures are problem ' +
        'documents (RFC 9457). A change names the version that it was made on in If-Match.',
    },
  });
}
