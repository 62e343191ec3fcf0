import type { Context, MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';

const TILES_FROM = 'tilesFrom';

/**
 * Headers for every answer. The app loads nothing from elsewhere, so the policy allows this
 * server alone; where the department has named a base map, its tiles as well, and nothing else of
 * that server. Exceptions: style attributes (drawings are placed with them), and pictures and
 * fonts that the build folds into its files or the app makes itself (data:, blob:).
 */
export function securityHeaders(
  tilesFrom: (() => Promise<readonly string[]>) | undefined,
): MiddlewareHandler {
  const tiles = (c: Context) => [...(c.get(TILES_FROM) ?? [])].join(' ');
  const set = secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'self'"],
      connectSrc: ["'self'", tiles],
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", 'data:', 'blob:', tiles],
      fontSrc: ["'self'", 'data:'],
      workerSrc: ["'self'", 'blob:'],
      objectSrc: ["'none'"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
    permissionsPolicy: { camera: [], geolocation: [], microphone: [] },
    xFrameOptions: 'DENY',
    // Served over plain HTTP on the loopback address: a promise of HTTPS would lock it out.
    strictTransportSecurity: false,
  });
  return async (c, next) => {
    // Pages alone ask for tiles; a store that cannot be read must not take the page with it.
    if (tilesFrom && !c.req.path.startsWith('/api/')) {
      c.set(TILES_FROM, await tilesFrom().catch(() => []));
    }
    return set(c, next);
  };
}
