import { type NetworkInterfaceInfo, networkInterfaces } from 'node:os';
import { isLoopback } from './settings.ts';

/** Listening on all of them. */
const EVERY = new Set(['0.0.0.0', '::']);
/** What a machine gives itself where no network gave it an address (RFC 3927): of no use to others. */
const LINK_LOCAL = /^169\.254\./;

type Interfaces = Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;

/**
 * Where other devices reach a server, for instance `http://192.168.1.20:4600/`; none where it
 * listens for this machine alone.
 * @param host address listened on
 */
export function addressesOf(
  host: string,
  port: number,
  interfaces: Interfaces = networkInterfaces(),
): string[] {
  if (isLoopback(host)) return [];
  const hosts = EVERY.has(host)
    ? Object.values(interfaces)
        .flatMap((all) => all ?? [])
        .filter(
          ({ family, internal, address }) =>
            family === 'IPv4' && !internal && !LINK_LOCAL.test(address),
        )
        .map(({ address }) => address)
    : [host.includes(':') ? `[${host}]` : host];
  return [...new Set(hosts)].map((one) => `http://${one}:${port}/`);
}
