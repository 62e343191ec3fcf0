import { serverAddresses } from '../../api/addresses.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { isThisMachine } from './this-machine.ts';

/**
 * Host under which tablets open this server. This page's own, unless it is open on the very machine
 * that serves it: then the one that the network gave that machine; null where others cannot reach it.
 */
export function useJoinHost(): { host: string | null; known: boolean } {
  const here = isThisMachine(window.location.hostname);
  const [loaded] = useLoaded(here ? 'addresses' : null, serverAddresses);
  if (!here) return { host: window.location.host, known: true };
  if (loaded.state !== 'ready') return { host: window.location.host, known: false };
  const [first] = loaded.value;
  return { host: first === undefined ? null : new URL(first).host, known: true };
}
