import { type FormEvent, useEffect, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { PlaceHeader } from '../../places/PlaceHeader.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { goTo } from '../../places/place.ts';
import { roomAddress, wallAddress } from './address.ts';
import { Code } from './Code.tsx';
import { keepSeat, keptSeat } from './kept-seats.ts';
import { RoomScreen } from './RoomScreen.tsx';
import { watchKeyIn, watchKeyProblem } from './room-codes.ts';

/** The key in the address, which is then kept here; a wall shows its address to everyone. */
function keyAtHand(code: string): string | undefined {
  const inAddress = watchKeyIn(window.location.hash.slice(1));
  if (inAddress !== undefined) keepSeat(code, { ...keptSeat(code), watchKey: inAddress });
  return inAddress ?? keptSeat(code).watchKey;
}

/** `/drill/<code>/wall`: watching, whatever role this device has, by the wall code. */
export function WallDoor({ code }: { code: string }) {
  const [key, setKey] = useState(() => keyAtHand(code));
  const [told, setTold] = useState<string | undefined>(undefined);
  useEffect(() => {
    const hide = () => {
      if (window.location.hash !== '') goTo(wallAddress(code), { replace: true });
    };
    // The link, opened where the wall is open already, changes the fragment alone.
    const read = () => {
      setKey(keyAtHand(code));
      hide();
    };
    hide();
    window.addEventListener('hashchange', read);
    return () => window.removeEventListener('hashchange', read);
  }, [code]);
  const keepKey = (watchKey: string | undefined) => {
    const { watchKey: _, ...rest } = keptSeat(code);
    keepSeat(code, watchKey === undefined ? rest : { ...rest, watchKey });
    setKey(watchKey);
  };
  if (key === undefined) {
    return (
      <>
        <PlaceHeader />
        <main>
          <WallCodeForm
            code={code}
            told={told}
            onKey={(typed) => {
              setTold(undefined);
              keepKey(typed);
            }}
          />
        </main>
      </>
    );
  }
  return (
    <main>
      <RoomScreen
        key={`${code} ${key}`}
        code={code}
        inRole="observer"
        kept={key}
        onSeat={({ roomId }) => keepSeat(code, { ...keptSeat(code), roomId })}
        onLeave={(why) => {
          setTold(why);
          keepKey(undefined);
        }}
      />
    </main>
  );
}

interface WallCodeFormProps {
  code: string;
  /** Why one is back here. */
  told: string | undefined;
  onKey(key: string): void;
}

/** For the wall's computer: the wall code, typed. */
function WallCodeForm({ code, told, onKey }: WallCodeFormProps) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | undefined>(told);
  const id = useId();
  const open = (event: FormEvent) => {
    event.preventDefault();
    const key = watchKeyIn(text);
    if (key === undefined) setProblem(watchKeyProblem(text));
    else onKey(key);
  };
  return (
    <div className="room-page">
      <h1 className="room-title">
        The wall of drill <Code code={code} />
      </h1>
      <p className="room-lead">
        It shows every gauge and the whole drawing, so it opens by a code of its own: the
        instructor&rsquo;s screen has it, and a link that opens it without typing.
      </p>
      <form className="join-form" onSubmit={open}>
        <label htmlFor={id}>Wall code from the instructor</label>
        <span className="join-row">
          <input
            id={id}
            className="room-input code-input wall-code-input"
            type="text"
            autoComplete="off"
            autoCapitalize="characters"
            spellCheck={false}
            maxLength={16}
            value={text}
            aria-invalid={problem !== undefined || undefined}
            aria-describedby={problem === undefined ? undefined : `${id}-problem`}
            onChange={(event) => {
              setText(event.target.value.toUpperCase());
              setProblem(undefined);
            }}
          />
          <Button type="submit" className="plain-button main-button room-big-button">
            Open the wall
          </Button>
        </span>
        {problem !== undefined && (
          <p id={`${id}-problem`} className="tone-warning" role="alert">
            {problem}
          </p>
        )}
      </form>
      <p className="room-actions">
        <PlaceLink className="plain-button link-button" href={roomAddress(code)}>
          Take a role instead
        </PlaceLink>
      </p>
    </div>
  );
}
