/** What the server may be told through the environment. */
export interface ServerSettings {
  /** Address to listen on. */
  host: string;
  /** Port to listen on; 0 lets the system choose. */
  port: number;
  /** The port was asked for by name, so no other will do. */
  portGiven: boolean;
}

/** Only this machine reaches it: a plan is the department's own business. */
export const DEFAULT_HOST = '127.0.0.1';
export const DEFAULT_PORT = 4600;

/**
 * Reads HOST and PORT. Left out or empty, they are 127.0.0.1 and 4600.
 *
 * @throws RangeError when PORT is not a whole number from 0 to 65535
 */
export function readSettings(env: Readonly<Record<string, string | undefined>>): ServerSettings {
  const host = env.HOST?.trim() || DEFAULT_HOST;
  const asked = env.PORT?.trim();
  if (!asked) return { host, port: DEFAULT_PORT, portGiven: false };
  const port = Number(asked);
  if (!/^\d+$/.test(asked) || port > 65535) {
    throw new RangeError(
      `PORT is "${asked}"; it must be a whole number from 0 to 65535. For instance: PORT=4700 npm start`,
    );
  }
  return { host, port, portGiven: true };
}

/** Names by which others may call this machine, beside its own: PLUGSIDE_HOSTS, separated by commas. */
export function readHostNames(env: Readonly<Record<string, string | undefined>>): string[] {
  const names = (env.PLUGSIDE_HOSTS ?? '').split(',').map((name) => name.trim().toLowerCase());
  return names.filter((name) => name !== '');
}

/** File of map tiles to draw under the streets: PLUGSIDE_BASE_MAP; none where it is left out. */
export function readBaseMapFile(
  env: Readonly<Record<string, string | undefined>>,
): string | undefined {
  return env.PLUGSIDE_BASE_MAP?.trim() || undefined;
}

/** True for an address that only this machine can reach. */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(\.\d{1,3}){3}$/.test(host);
}
