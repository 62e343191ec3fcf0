import { roomAddress } from '../together/address.ts';
import { spelled } from '../together/room-codes.ts';

/** The code and the address to join by, large, to read out. */
export function CodeShown({ code }: { code: string }) {
  const address = `${window.location.host}${roomAddress(code)}`;
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
      <p className="code-address">
        or open <b>{address}</b>
      </p>
    </section>
  );
}
