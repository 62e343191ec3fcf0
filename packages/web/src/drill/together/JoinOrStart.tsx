import { type FormEvent, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { goTo } from '../../places/place.ts';
import { newRoomAddress, pastAddress, roomAddress } from './address.ts';
import { OwnRooms } from './OwnRooms.tsx';
import { codeIn, codeProblem } from './room-codes.ts';
import './together.css';

/** Drilling with others: type a code, start a room, look back. */
export function JoinOrStart() {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const join = (event: FormEvent) => {
    event.preventDefault();
    const code = codeIn(text);
    if (code === undefined) setProblem(codeProblem(text));
    else goTo(roomAddress(code));
  };
  return (
    <section className="join" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`} className="join-title">
        Together, each on a tablet
      </h2>
      <OwnRooms />
      <form className="join-form" onSubmit={join}>
        <label htmlFor={id}>Code from the instructor</label>
        <span className="join-row">
          <input
            id={id}
            className="room-input code-input"
            type="text"
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            maxLength={12}
            value={text}
            aria-invalid={problem !== null || undefined}
            aria-describedby={problem === null ? undefined : `${id}-problem`}
            onChange={(event) => {
              setText(event.target.value.toUpperCase());
              setProblem(null);
            }}
          />
          <Button type="submit" className="plain-button main-button room-big-button">
            Join
          </Button>
        </span>
        {problem !== null && (
          <p id={`${id}-problem`} className="tone-warning" role="alert">
            {problem}
          </p>
        )}
      </form>
      <p className="room-actions">
        <PlaceLink className="plain-button link-button room-big-button" href={newRoomAddress}>
          Start a drill together
        </PlaceLink>
        <PlaceLink className="plain-button link-button room-big-button" href={pastAddress}>
          Past drills
        </PlaceLink>
      </p>
    </section>
  );
}
