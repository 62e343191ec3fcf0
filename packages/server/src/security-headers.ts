import type { MiddlewareHandler } from 'hono';
import { secureHeaders } from 'hono/secure-headers';

/**
 * Headers for every answer. The app loads nothing from elsewhere, so the policy allows this
 * server alone. Exceptions: style attributes (drawings are placed with them), and pictures and
 * fonts that the build folds into its files or the app makes itself (data:, blob:).
 */
export function securityHeaders(): MiddlewareHandler {
  return secureHeaders({
    contentSecurityPolicy: {
      defaultSrc: ["'self'"],
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", 'data:', 'blob:'],
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
}
