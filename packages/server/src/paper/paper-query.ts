/** How a document is to be printed, as an address asks for it. */
import { z } from '@hono/zod-openapi';
import type { PaperSize } from '@plugside/paper';
import type { Context } from 'hono';
import { ProblemError } from '../problem.ts';

export const paperSchema = z.enum(['letter', 'a4']);
export const unitsSchema = z.enum(['us', 'si']);

/** For the description of a route. */
export const paperQuery = z.object({
  paper: paperSchema.optional().openapi({ description: 'letter where left out' }),
  units: unitsSchema.optional().openapi({ description: 'us where left out' }),
});

export interface PrintedAs {
  paper: PaperSize;
  units: 'us' | 'si';
}

/** @throws ProblemError 400 naming the parameter, its value and what is allowed */
export function printedAs(c: Context): PrintedAs {
  return {
    paper: oneOf('paper', c.req.query('paper') ?? 'letter', paperSchema.options),
    units: oneOf('units', c.req.query('units') ?? 'us', unitsSchema.options),
  };
}

/** The record's id in the last part of an address, before its ending. */
export function pdfIdIn(c: Context): string {
  return (c.req.path.split('/').at(-1) ?? '').replace(/\.pdf$/, '');
}

function oneOf<T extends string>(path: string, value: string, options: readonly T[]): T {
  const found = options.find((option) => option === value);
  if (found) return found;
  const shown = value.slice(0, 80);
  const allowed = options.join(' or ');
  const message = `${path} is "${shown}"; allowed: ${allowed}.`;
  const remedy = 'Ask with an allowed value.';
  throw new ProblemError({
    status: 400,
    title: 'Not understood',
    detail: `${message} ${remedy}`,
    extra: { issues: [{ path, value: shown, allowed, message, remedy }] },
  });
}
