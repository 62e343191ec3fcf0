import { isJudged } from '@plugside/drill';
import { useEffect, useRef, useState } from 'react';
import { Button, Input, Label, SearchField } from 'react-aria-components';
import { type DrillRun, drillRuns } from '../../api/index.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { Unreachable } from '../../places/Unreachable.tsx';
import { newRoomAddress, replayAddress } from '../together/address.ts';
import { clockText } from '../words.ts';
import { RemoveDrill } from './RemoveDrill.tsx';
import './replay.css';

const PAGE = 50;
const TYPING_MS = 300;

/** `/drill/past`: drills that ran, by the crew's name. */
export function PastDrills() {
  const [typed, setTyped] = useState('');
  const [crew, setCrew] = useState('');
  const [older, setOlder] = useState<readonly string[]>([]);
  /** Gone from here; the lists stay as they were read. */
  const [removed, setRemoved] = useState<ReadonlySet<string>>(new Set());
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const search = (text: string) => {
    setTyped(text);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => {
      setOlder([]);
      setCrew(text.trim());
    }, TYPING_MS);
  };
  return (
    <div className="room-page">
      <p className="room-back">
        <PlaceLink href="/drill">‹ Drills</PlaceLink>
      </p>
      <h1 className="room-title">Past drills</h1>
      <SearchField className="past-search" value={typed} onChange={search} maxLength={120}>
        <Label>Crew, as it was typed</Label>
        <Input className="room-input" />
      </SearchField>
      {[undefined, ...older].map((after, at, all) => (
        <Page
          key={`${crew} ${after}`}
          crew={crew}
          after={after}
          isLast={at === all.length - 1}
          removed={removed}
          onRemoved={(roomId) => setRemoved((before) => new Set([...before, roomId]))}
          onMore={(next) => setOlder((before) => [...before, next])}
        />
      ))}
    </div>
  );
}

interface PageProps {
  crew: string;
  after: string | undefined;
  isLast: boolean;
  removed: ReadonlySet<string>;
  onRemoved(roomId: string): void;
  onMore(next: string): void;
}

function Page({ crew, after, isLast, removed, onRemoved, onMore }: PageProps) {
  const [runs, retry] = useLoaded(`runs ${crew} ${after}`, (signal) =>
    drillRuns(
      {
        limit: PAGE,
        ...(crew !== '' && { crew }),
        ...(after !== undefined && { after }),
      },
      signal,
    ),
  );
  const list = useRef<HTMLUListElement>(null);
  if (runs.state === 'loading') return <p role="status">Reading…</p>;
  if (runs.state === 'unreachable')
    return <Unreachable what="The list of drills" onRetry={retry} />;
  if (runs.state === 'failed') {
    return (
      <p className="tone-warning" role="alert">
        The list could not be read. {runs.reason}{' '}
        <Button className="plain-button" onPress={retry}>
          Try again
        </Button>
      </p>
    );
  }
  const { next } = runs.value;
  const found = runs.value.runs.filter(({ roomId }) => !removed.has(roomId));
  if (found.length === 0 && after === undefined) {
    return (
      <div className="room-empty">
        {crew === '' ? (
          <p>
            <b>No drill has run here yet.</b>{' '}
            <PlaceLink href={newRoomAddress}>Start one together</PlaceLink>: once it has ended it
            stands here with its score.
          </p>
        ) : (
          <p>
            <b>No drill was run by “{crew}”.</b> Type a part of the crew’s name, or leave the field
            empty to see all.
          </p>
        )}
      </div>
    );
  }
  return (
    <>
      <ul className="past-list" ref={list} tabIndex={-1} aria-label="Drills">
        {found.map((run) => (
          <Run
            key={run.roomId}
            run={run}
            onRemoved={() => {
              onRemoved(run.roomId);
              list.current?.focus();
            }}
          />
        ))}
      </ul>
      {isLast && next !== undefined && (
        <Button className="plain-button" onPress={() => onMore(next)}>
          Show older ones
        </Button>
      )}
    </>
  );
}

function Run({ run, onRemoved }: { run: DrillRun; onRemoved(): void }) {
  const { roomId, title, crew, startedAt, timeS, endedAt, result } = run;
  const judged = result?.filter(isJudged) ?? [];
  const met = judged.filter((one) => one.met).length;
  return (
    <li className="past-run">
      <div>
        <p className="past-title">
          {endedAt === undefined ? (
            title
          ) : (
            <PlaceLink href={replayAddress(roomId)}>{title}</PlaceLink>
          )}
        </p>
        <p className="soft-text">
          {crew ?? 'no crew given'} · {new Date(startedAt).toLocaleString()} · {clockText(timeS)}{' '}
          long
        </p>
      </div>
      <div className="past-end">
        <p className="figures past-score">
          {endedAt === undefined ? 'still runs' : `${met} of ${judged.length} met`}
        </p>
        {endedAt !== undefined && <RemoveDrill run={run} endedAt={endedAt} onRemoved={onRemoved} />}
      </div>
    </li>
  );
}
