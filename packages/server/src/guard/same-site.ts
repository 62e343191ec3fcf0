import { hostname } from 'node:os';
import type { MiddlewareHandler } from 'hono';
import { answerProblem } from '../problem.ts';
import { isLoopback } from '../settings.ts';

export interface SameSiteOptions {
  /** Address listened on. */
  host: string;
  /** Names of this machine by which others may call it, beside its own. */
  names?: readonly string[];
}

/**
 * Refuses what a page of another site asks for. There is no sign-in, so whoever reaches the
 * address may read and change; a browser reaches it on behalf of any page it shows. Checked are
 *  - Host: a name that is not this server's was made to point here by somebody else;
 *  - Origin: must be the very host that is asked, where a browser sends it;
 *  - Sec-Fetch-Site: for requests without Origin, such as a picture's, save for following a link.
 * A program that sends neither Origin nor Sec-Fetch-Site is let in.
 */
export function sameSite({ host, names = [] }: SameSiteOptions): MiddlewareHandler {
  const known = new Set(names.map((name) => name.toLowerCase()));
  if (!isLoopback(host)) {
    const own = hostname().toLowerCase();
    for (const name of [own, `${own}.local`, host.toLowerCase()]) known.add(name);
  }
  const isOwn = (name: string) =>
    known.has(name) || isLoopbackName(name) || (!isLoopback(host) && isAddress(name));

  return async (c, next) => {
    const asked = (c.req.header('host') ?? new URL(c.req.url).host).toLowerCase();
    if (!isOwn(nameIn(asked))) {
      return answerProblem(c, {
        status: 403,
        title: 'Unknown name',
        detail:
          `This server does not go by the name "${asked.slice(0, 80)}". Use its address, or start ` +
          'it with the name allowed: PLUGSIDE_HOSTS=name npm start',
      });
    }
    const from = foreignSource(c.req.header('origin'), c.req.header('sec-fetch-site'), {
      asked,
      navigates: c.req.header('sec-fetch-mode') === 'navigate' && c.req.method === 'GET',
    });
    if (from === undefined) return next();
    return answerProblem(c, {
      status: 403,
      title: 'Another site',
      detail: `The request comes from ${from}, and only this server's own pages may ask. Open the app itself.`,
    });
  };
}

/** Where a request comes from, if from another site's page. */
function foreignSource(
  origin: string | undefined,
  fetchSite: string | undefined,
  { asked, navigates }: { asked: string; navigates: boolean },
): string | undefined {
  if (origin !== undefined) {
    const own = [`http://${asked}`, `https://${asked}`].includes(origin.toLowerCase());
    return own ? undefined : `a page of "${origin.slice(0, 80)}"`;
  }
  const foreign = fetchSite === 'cross-site' || fetchSite === 'same-site';
  return foreign && !navigates ? "another site's page" : undefined;
}

/** `[::1]:4600` → `::1`, `localhost:4600` → `localhost`. */
function nameIn(host: string): string {
  if (host.startsWith('[')) return host.slice(1, host.indexOf(']'));
  return host.replace(/:\d*$/, '').replace(/\.$/, '');
}

function isLoopbackName(name: string): boolean {
  return isLoopback(name) || name.endsWith('.localhost');
}

/** An address cannot be made to point elsewhere, as a name can. */
function isAddress(name: string): boolean {
  return /^\d{1,3}(\.\d{1,3}){3}$/.test(name) || /^[\da-f:.]*:[\da-f:.]*$/.test(name);
}
