import type { PlayedRole, Role } from '@plugside/drill';
import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { type DrillFacts, drillByCode, ProblemError } from '../../api/index.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { Unreachable } from '../../places/Unreachable.tsx';
import { clockText, roleWords } from '../words.ts';
import { wallAddress } from './address.ts';
import { Code } from './Code.tsx';

/** Roles are looked at again this often, as others take them [ms]. */
const LOOK_MS = 3_000;

interface ChooseRoleProps {
  code: string;
  /** The drill was made on this device. */
  mayInstruct: boolean;
  /** Why one is back here. */
  told: string | undefined;
  onChoose(role: Role): void;
}

/** Who does what at each place, to the one who chooses. */
const doing: Readonly<Record<PlayedRole, string>> = {
  'hydrant operator': 'Stands at the hydrant: its valves, the assist valve, the engine there.',
  'relay operator': 'Stands at the engine between: takes the water in and passes it on, higher.',
  'second relay operator': 'Stands at the next engine on the way to the scene.',
  'third relay operator': 'Stands at the engine after that, and at any others before the scene.',
  'attack operator': 'Stands at the attack engine: its intakes, its pump, the lines.',
  'nozzle crew': 'Opens and shuts the nozzles, and tells what comes out of them.',
};

/** The roles of a drill, free and taken, to take one. */
export function ChooseRole({ code, mayInstruct, told, onChoose }: ChooseRoleProps) {
  const [facts, retry] = useLoaded(`drill ${code}`, (signal) => drillByCode(code, signal));
  return (
    <div className="room-page">
      <h1 className="room-title">
        Drill <Code code={code} />
      </h1>
      {told !== undefined && (
        <p className="tone-warning room-told" role="alert">
          {told}
        </p>
      )}
      {facts.state === 'loading' && <p role="status">Looking for the drill…</p>}
      {facts.state === 'unreachable' && <Unreachable what="A shared drill" onRetry={retry} />}
      {facts.state === 'failed' && (
        <div className="room-empty" role="alert">
          <p>{facts.reason}</p>
          <p>
            <Button className="plain-button" onPress={retry}>
              Look again
            </Button>{' '}
            <PlaceLink className="plain-button link-button" href="/drill">
              Type another code
            </PlaceLink>
          </p>
        </div>
      )}
      {facts.state === 'ready' && (
        <Roles
          first={facts.value}
          code={code}
          mayInstruct={mayInstruct}
          onChoose={onChoose}
          onGone={retry}
        />
      )}
    </div>
  );
}

interface RolesProps extends Omit<ChooseRoleProps, 'told'> {
  first: DrillFacts;
  onGone(): void;
}

function Roles({ first, code, mayInstruct, onChoose, onGone }: RolesProps) {
  const facts = useFactsNow(first, onGone);
  const { title, crew, timeS, roles } = facts;
  return (
    <>
      <p className="room-lead">
        {title}
        {crew !== undefined && ` · ${crew}`} ·{' '}
        {timeS < 1 ? 'not begun yet' : `running for ${clockText(timeS)}`}
      </p>
      <h2 className="section-name">Take a role on this device</h2>
      <ul className="role-list">
        {roles.map((seat) => {
          const { role } = seat;
          const taken = seat.seat === 'taken';
          return (
            <li key={role} className="role-choice" data-taken={taken || undefined}>
              <div>
                <p className="role-name">{roleWords[role]}</p>
                <p className="soft-text">{doing[role]}</p>
                <p className="role-seat">{seatWords(seat)}</p>
              </div>
              {!taken && (
                <Button
                  className="plain-button main-button role-button"
                  onPress={() => onChoose(role)}
                >
                  Take {roleWords[role].toLowerCase()}
                </Button>
              )}
            </li>
          );
        })}
        <li className="role-choice">
          <div>
            <p className="role-name">{roleWords.observer}</p>
            <p className="soft-text">
              Sees every gauge and hears the radio; touches nothing. For a screen on the wall, by
              the wall code that the instructor has.
            </p>
          </div>
          <PlaceLink className="plain-button link-button role-button" href={wallAddress(code)}>
            Watch
          </PlaceLink>
        </li>
        {mayInstruct && (
          <li className="role-choice">
            <div>
              <p className="role-name">{roleWords.instructor}</p>
              <p className="soft-text">
                This device started the drill. Sees the truth, stops the clock, makes things go
                wrong.
              </p>
            </div>
            <Button className="plain-button role-button" onPress={() => onChoose('instructor')}>
              Instruct
            </Button>
          </li>
        )}
      </ul>
    </>
  );
}

function seatWords({ seat, connected }: DrillFacts['roles'][number]): string {
  switch (seat) {
    case 'free':
      return 'Free';
    case 'computer':
      return 'Played by the computer until somebody takes it';
    case 'taken':
      return connected ? 'Taken' : 'Taken; its device is away just now';
  }
}

/** The drill's roles as they now are, looked at again and again. */
function useFactsNow(first: DrillFacts, onGone: () => void): DrillFacts {
  const [facts, setFacts] = useState(first);
  const gone = useRef(onGone);
  gone.current = onGone;
  useEffect(() => {
    const stop = new AbortController();
    const timer = setInterval(() => {
      drillByCode(first.code, stop.signal).then(setFacts, (error: unknown) => {
        // A server that does not answer just now is asked again.
        if (error instanceof ProblemError && error.status === 404) gone.current();
      });
    }, LOOK_MS);
    return () => {
      clearInterval(timer);
      stop.abort();
    };
  }, [first.code]);
  return facts;
}
