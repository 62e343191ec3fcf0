/** Where tablets and other machines reach this server. */
import type { HttpBindings } from '@hono/node-server';
import { type OpenAPIHono, z } from '@hono/zod-openapi';
import { addressesOf } from '../addresses.ts';
import { define } from './define.ts';
import { json } from './describe.ts';

const answerSchema = z
  .object({
    addresses: z
      .array(z.string())
      .openapi({ description: 'For a browser, the likeliest first; empty: this machine alone' }),
  })
  .openapi('Addresses');

/** @param host address listened on */
export function addressesRoute(app: OpenAPIHono, host: string): void {
  define(
    app,
    {
      method: 'get',
      path: '/api/addresses',
      tags: ['about'],
      summary: 'Where other devices reach this server',
      description: 'By the addresses that the network gave this machine.',
      responses: json('The addresses', answerSchema),
    },
    (c) => {
      c.header('Cache-Control', 'no-store');
      const { incoming } = (c.env ?? {}) as Partial<HttpBindings>;
      const port = incoming?.socket.localPort ?? Number(new URL(c.req.url).port || 80);
      return c.json({ addresses: addressesOf(host, port) });
    },
  );
}
