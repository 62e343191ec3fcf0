import type { RoleStanding } from '@plugside/drill';
import { Button } from 'react-aria-components';
import type { RoomLink } from '../together/room-link.ts';
import type { RoomState } from '../together/room-state.ts';
import { roleWords } from '../words.ts';

interface SeatsPanelProps {
  link: RoomLink;
  room: RoomState;
  /** The drill has steps that the computer can do. */
  hasScript: boolean;
}

/** Who is here, and what the computer plays. */
export function SeatsPanel({ link, room, hasScript }: SeatsPanelProps) {
  const { roles, connection } = room;
  if (!roles) return null;
  const away = connection.is !== 'here';
  return (
    <section className="panel" aria-labelledby="seats-name">
      <h2 id="seats-name" className="section-name">
        Crew
      </h2>
      <ul className="seat-list">
        {roles.roles.map((seat) => (
          <li key={seat.role} data-here={seat.connected || undefined}>
            <span>
              <b>{roleWords[seat.role]}</b>
              <br />
              <span className={isLost(seat) ? 'tone-warning' : 'soft-text'}>{words(seat)}</span>
            </span>
            <SeatButton seat={seat} link={link} isDisabled={away} />
          </li>
        ))}
      </ul>
      <p className="soft-text">
        {roles.instructors === 1 ? '1 instructor' : `${roles.instructors} instructors`},{' '}
        {roles.observers === 1 ? '1 observer' : `${roles.observers} observers`} connected.
      </p>
      {!hasScript && (
        <p className="soft-text">
          This drill has no steps for the computer to do. It eases a pump that starves and, as a
          relay operator, takes the water and passes it on.
        </p>
      )}
    </section>
  );
}

const isLost = ({ seat, connected }: RoleStanding) => seat === 'taken' && !connected;

function words({ seat, connected }: RoleStanding): string {
  if (seat === 'computer') return 'played by the computer';
  if (seat === 'free') return 'nobody yet';
  return connected ? 'connected' : 'taken, its device is away';
}

function SeatButton(props: { seat: RoleStanding; link: RoomLink; isDisabled: boolean }) {
  const { link, isDisabled } = props;
  const { role, seat } = props.seat;
  const name = roleWords[role].toLowerCase();
  if (seat === 'taken') {
    return (
      <Button
        className="plain-button"
        isDisabled={isDisabled}
        aria-label={`Free the role of ${name}`}
        onPress={() => link.ask({ type: 'free', role })}
      >
        Free the role
      </Button>
    );
  }
  const plays = seat !== 'computer';
  return (
    <Button
      className="plain-button"
      isDisabled={isDisabled}
      aria-label={
        plays ? `Let the computer play the ${name}` : `Take the ${name} from the computer`
      }
      onPress={() => link.ask({ type: 'computer', role, plays })}
    >
      {plays ? 'Let the computer play' : 'Stop the computer'}
    </Button>
  );
}
