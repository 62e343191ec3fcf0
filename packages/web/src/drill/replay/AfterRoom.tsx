import { useEffect } from 'react';
import { drillByCode } from '../../api/index.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { goTo } from '../../places/place.ts';
import { pastAddress, replayAddress, roomAddress } from '../together/address.ts';
import { keptSeat } from '../together/kept-seats.ts';

/** `/drill/<code>/replay`: leads on to the drill that this device knows under the code. */
export function AfterRoom({ code }: { code: string }) {
  const known = keptSeat(code).roomId;
  const [facts] = useLoaded(known === undefined ? null : `after ${code}`, (signal) =>
    drillByCode(code, signal),
  );
  const runs = facts.state === 'ready';
  const asked = facts.state !== 'loading';
  useEffect(() => {
    if (known !== undefined && asked && !runs) goTo(replayAddress(known), { replace: true });
  }, [known, asked, runs]);
  return (
    <div className="room-page">
      {known === undefined && (
        <p className="room-empty">
          This device took no part in the drill {code}, and a code counts only while its drill runs.
          Find it among the <PlaceLink href={pastAddress}>past drills</PlaceLink>.
        </p>
      )}
      {known !== undefined && !asked && <p role="status">Looking for the drill…</p>}
      {runs && (
        <p className="room-empty">
          The drill {code} still runs; its replay is there once it has ended.{' '}
          <PlaceLink href={roomAddress(code)}>Back to the drill</PlaceLink>
        </p>
      )}
    </div>
  );
}
