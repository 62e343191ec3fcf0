import type { Role } from '@plugside/drill';
import { useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import { ViewSwitches } from '../../app/ViewSwitches.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { InstructorScreen } from '../instructor/InstructorScreen.tsx';
import { replayAddress, roomAddress } from './address.ts';
import { NotDone } from './NotDone.tsx';
import { PlayerScreen } from './PlayerScreen.tsx';
import { RoomBar } from './RoomBar.tsx';
import type { RoomLink } from './room-link.ts';
import type { Connection, RoomState } from './room-state.ts';
import { useRoom } from './use-room.ts';
import { WallScreen } from './WallScreen.tsx';

interface RoomScreenProps {
  code: string;
  inRole: Role;
  /** Kept from an earlier time in the role. */
  kept: string | undefined;
  onSeat(seat: { key?: string; roomId: string }): void;
  /** Back to the choice of roles; told why where it was not one's own wish. */
  onLeave(why?: string): void;
}

/** A shared drill in a role, for as long as the connection can be had. */
export function RoomScreen({ code, inRole: role, kept, onSeat, onLeave }: RoomScreenProps) {
  const { link, room } = useRoom({
    code,
    role,
    ...(kept !== undefined && { key: kept }),
    onSeat,
  });
  const { connection } = room;
  // A wall goes back to where its code is typed.
  const refused =
    role === 'observer' && connection.is === 'out' && connection.code === 'wrong key'
      ? connection.why
      : undefined;
  const back = useRef(onLeave);
  back.current = onLeave;
  useEffect(() => {
    if (refused !== undefined) back.current(refused);
  }, [refused]);
  const leave = () => {
    link?.ask({ type: 'leave' });
    onLeave();
  };
  return (
    <div className={role === 'observer' ? 'room-page room-wall' : 'room-page'}>
      <RoomBar link={link} room={room}>
        {role === 'observer' && <WallView code={code} />}
        {role !== 'observer' && connection.is !== 'out' && (
          <Button className="quiet-button" isDisabled={connection.is !== 'here'} onPress={leave}>
            {role === 'instructor' ? 'Leave' : 'Give the role back'}
          </Button>
        )}
      </RoomBar>
      <NotDone link={link} room={room} />
      {connection.is === 'out' ? (
        <Out link={link} room={room} connection={connection} onLeave={onLeave} />
      ) : (
        <Inside link={link} room={room} />
      )}
    </div>
  );
}

/** What a wall screen needs of the header that it leaves out. */
function WallView({ code }: { code: string }) {
  return (
    <div className="wall-view">
      <PlaceLink className="quiet-button link-button" href={roomAddress(code)}>
        Leave
      </PlaceLink>
      <ViewSwitches />
    </div>
  );
}

function Inside({ link, room }: { link: RoomLink | null; room: RoomState }) {
  const { scene, view, role } = room;
  if (!link || !scene || !view) {
    return (
      <p className="nothing" role="status">
        {room.connection.is === 'away'
          ? 'The server does not answer. It is tried again by itself.'
          : 'Joining the drill…'}
      </p>
    );
  }
  if (role === 'instructor')
    return <InstructorScreen link={link} room={room} scene={scene} view={view} />;
  if (role === 'observer') return <WallScreen scene={scene} view={view} />;
  return <PlayerScreen link={link} room={room} scene={scene} view={view} />;
}

interface OutProps {
  link: RoomLink | null;
  room: RoomState;
  connection: Extract<Connection, { is: 'out' }>;
  onLeave(why?: string): void;
}

/** Why this device is no longer in the drill, and what to do. */
function Out({ link, room, connection, onLeave }: OutProps) {
  const { code, role, roomId } = room;
  if (connection.code === 'ended' || connection.code === 'unknown') {
    return (
      <div className="room-empty" role="alert">
        <p>
          <b>{connection.code === 'ended' ? 'The drill has ended.' : connection.why}</b>
        </p>
        <p className="room-actions">
          {roomId !== undefined && (
            <PlaceLink
              className="plain-button main-button link-button"
              href={replayAddress(roomId)}
            >
              See how it went
            </PlaceLink>
          )}
          <PlaceLink className="plain-button link-button" href="/drill">
            To the drills
          </PlaceLink>
        </p>
      </div>
    );
  }
  if (connection.code === 'replaced' || connection.code === 'full') {
    return (
      <div className="room-empty" role="alert">
        <p>
          {connection.code === 'replaced'
            ? 'This role goes on in another window of this device.'
            : connection.why}
        </p>
        <p className="room-actions">
          <Button className="plain-button main-button" onPress={() => link?.tryNow()}>
            {connection.code === 'replaced' ? 'Go on here instead' : 'Try again'}
          </Button>
        </p>
      </div>
    );
  }
  return (
    <div className="room-empty" role="alert">
      <p>{connection.why}</p>
      <p className="room-actions">
        {connection.code === 'version' ? (
          <a className="plain-button main-button link-button" href={roomAddress(code)}>
            Load the app again
          </a>
        ) : (
          <Button className="plain-button main-button" onPress={() => onLeave(connection.why)}>
            {role === 'observer' ? 'To the wall code' : 'Choose a role'}
          </Button>
        )}
      </p>
    </div>
  );
}
