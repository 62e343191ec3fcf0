import { drillByCode } from '../../api/drills.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { clockText, roleWords } from '../words.ts';
import { roomAddress } from './address.ts';
import { type KeptSeat, keptCodes, keptSeat } from './kept-seats.ts';

/** Drills looked for: a code that is no longer a drill's counts as a wrong one. */
const MOST = 3;

/** Drills that run and that this device was in, to go back to. */
export function OwnRooms() {
  const [loaded] = useLoaded('own rooms', async (signal) => {
    const found = await Promise.allSettled(
      keptCodes(MOST).map((code) => drillByCode(code, signal)),
    );
    return found.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
  });
  if (loaded.state !== 'ready' || loaded.value.length === 0) return null;
  return (
    <ul className="own-rooms" aria-label="Drills that you are in">
      {loaded.value.map(({ code, title, timeS }) => (
        <li key={code}>
          <span>
            <b>{title}</b> runs: {clockText(timeS)}, {wasWords(keptSeat(code))}
          </span>
          <PlaceLink className="plain-button link-button main-button" href={roomAddress(code)}>
            Go back to it
          </PlaceLink>
        </li>
      ))}
    </ul>
  );
}

function wasWords({ role, instructorKey }: KeptSeat): string {
  if (instructorKey !== undefined) return 'led from this device';
  return role === undefined ? 'this device was in it' : `you are ${roleWords[role]}`;
}
