import { roomAddress } from '../together/address.ts';
import { spelled } from '../together/room-codes.ts';
import { useJoinHost } from '../together/use-join-host.ts';

/** The code and the address to join by, large, to read out. */
export function CodeShown({ code }: { code: string }) {
  const { host, known } = useJoinHost();
  return (
    <section className="code-shown" aria-label="Code to join by">
      <p className="section-name">Code to join by</p>
      <p className="code-large">
        <span aria-hidden="true">
          {[...code].map((letter, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: letters of a code never move
            <span key={at}>{letter}</span>
          ))}
        </span>
        <span className="hidden-text">{spelled(code)}</span>
      </p>
      {host === null ? (
        <p className="code-address tone-warning">
          Only this machine can join: its server listens for no other. For tablets, on a network
          that you trust, start Plugside with <code>HOST=0.0.0.0 npm start</code>.
        </p>
      ) : (
        <p className="code-address" aria-busy={!known}>
          or open{' '}
          <b>
            {host}
            {roomAddress(code)}
          </b>
        </p>
      )}
    </section>
  );
}
