import { useEffect } from 'react';
import { Button, Switch } from 'react-aria-components';
import { wallAddress } from '../together/address.ts';
import { keepSeat, keptSeat } from '../together/kept-seats.ts';
import { inParts, spelled } from '../together/room-codes.ts';
import type { RoomLink } from '../together/room-link.ts';
import type { RoomState } from '../together/room-state.ts';
import { useJoinHost } from '../together/use-join-host.ts';

interface WallPanelProps {
  link: RoomLink;
  room: RoomState;
}

/** The screen on the wall: how it is opened, and whether faults show on it. */
export function WallPanel({ link, room }: WallPanelProps) {
  const { code, connection, settings, watchKey: made } = room;
  const isHere = connection.is === 'here';
  const { host, known } = useJoinHost();
  useEffect(() => {
    if (made !== undefined) keepSeat(code, { ...keptSeat(code), watchKey: made });
  }, [code, made]);
  const key = made ?? keptSeat(code).watchKey;
  const renew = () => link.ask({ type: 'new watch key' });
  return (
    <section className="panel wall-panel" aria-labelledby="wall-name">
      <h2 id="wall-name" className="section-name">
        Wall screen
      </h2>
      {key === undefined ? (
        <>
          <p className="soft-text">
            {settings?.hasWatchKey
              ? 'The wall code is on the device that made the drill. A new one closes the walls that are open.'
              : 'No wall can be opened yet: make a wall code first.'}
          </p>
          <Button className="plain-button" isDisabled={!isHere} onPress={renew}>
            Make a wall code
          </Button>
        </>
      ) : (
        <>
          <a
            className="plain-button link-button"
            href={wallAddress(code, key)}
            target="_blank"
            rel="noreferrer"
          >
            Open the wall screen
          </a>
          <p className="wall-code" aria-busy={!known}>
            {host === null ? (
              <span className="soft-text">Wall code</span>
            ) : (
              <>
                <span className="soft-text">On another computer, open</span>{' '}
                <b>
                  {host}
                  {wallAddress(code)}
                </b>{' '}
                <span className="soft-text">and type the wall code</span>
              </>
            )}{' '}
            <b className="code-word wall-code-word">
              <span aria-hidden="true">{inParts(key)}</span>
              <span className="hidden-text">{spelled(key)}</span>
            </b>
          </p>
          <p className="soft-text">Whoever has it sees every gauge: keep it from the crews.</p>
          <Button className="plain-button" isDisabled={!isHere} onPress={renew}>
            Make a new wall code
          </Button>
        </>
      )}
      <Switch
        className="room-switch"
        isSelected={settings?.faultsShown === true}
        isDisabled={!isHere || settings === undefined}
        onChange={(on) => link.ask({ type: 'show faults', on })}
      >
        <span className="room-switch-track" aria-hidden="true" />
        Show faults on the wall
      </Switch>
    </section>
  );
}
