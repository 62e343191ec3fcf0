import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { RoomLink } from './room-link.ts';
import type { RoomState } from './room-state.ts';

interface ConnectionMarkProps {
  link: RoomLink | null;
  room: RoomState;
}

/** Whether this device is connected, and what waits because it is not. */
export function ConnectionMark({ link, room }: ConnectionMarkProps) {
  const { connection, waiting } = room;
  return (
    <div
      className="connection"
      data-connection={
        connection.is === 'out' && connection.code === 'ended' ? 'ended' : connection.is
      }
    >
      <span className="connection-words" role="status">
        <i className="connection-dot" aria-hidden="true" />
        <span className="connection-text">{words(connection)}</span>
      </span>
      {connection.is === 'away' && (
        <>
          <NextTry nextTryMs={connection.nextTryMs} />
          <Button className="plain-button" onPress={() => link?.tryNow()}>
            Try now
          </Button>
        </>
      )}
      {waiting > 0 && connection.is !== 'here' && (
        <span className="connection-waiting">
          {waiting === 1 ? '1 action waits' : `${waiting} actions wait`} to be sent
        </span>
      )}
    </div>
  );
}

function words(connection: RoomState['connection']): string {
  switch (connection.is) {
    case 'joining':
      return 'Connecting…';
    case 'here':
      return 'Connected';
    case 'away':
      return 'Connection lost';
    case 'out':
      return connection.code === 'ended' ? 'Ended' : 'Not connected';
  }
}

function NextTry({ nextTryMs }: { nextTryMs: number }) {
  const [now, setNow] = useState(Date.now);
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 500);
    return () => clearInterval(timer);
  }, []);
  const left = Math.ceil((nextTryMs - now) / 1000);
  return (
    <span className="figures">{left > 0 ? `trying again in ${left} s` : 'trying again…'}</span>
  );
}
