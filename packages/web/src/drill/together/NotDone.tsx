import { actionWords } from '@plugside/drill';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import type { RoomLink } from './room-link.ts';
import type { RoomState } from './room-state.ts';

/** Actions that were tapped without a connection and became too old: told, never dropped in silence. */
export function NotDone({ link, room }: { link: RoomLink | null; room: RoomState }) {
  const units = useUnits();
  const { scene, notDone, trouble } = room;
  if (notDone.length === 0 && trouble === undefined) return null;
  return (
    <div className="message message-problem" role="alert">
      <div className="message-text">
        {notDone.length > 0 && scene && (
          <>
            <p>
              <b>Not done:</b> the connection was away too long. Look at where things stand, and do
              it again if it is still right.
            </p>
            <ul>
              {notDone.map((action, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: they only ever grow at the end
                <li key={at}>{actionWords(scene, action, units)}</li>
              ))}
            </ul>
          </>
        )}
        {trouble !== undefined && <p>{trouble}</p>}
      </div>
      <Button className="plain-button" onPress={() => link?.forgetNotDone()}>
        Understood
      </Button>
    </div>
  );
}
