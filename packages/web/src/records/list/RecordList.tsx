import { formatNumber } from '@plugside/fireground';
import { type Kind, kindLabels } from '@plugside/records/model';
import { useEffect, useMemo, useRef, useState } from 'react';
import { Button, Input, Label, SearchField } from 'react-aria-components';
import { todayIso } from '../../district/words.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { goTo, useSearch } from '../../places/place.ts';
import { Unreachable } from '../../places/Unreachable.tsx';
import { kindPath, newPath } from '../address.ts';
import { useChanged } from '../changed.ts';
import { kindName } from '../words.ts';
import { inShownOrder } from './columns.ts';
import { RecordTable } from './RecordTable.tsx';
import { useListMemory } from './use-list-memory.ts';
import { useMore } from './use-more.ts';
import { usePages } from './use-pages.ts';

/** Drawn at a time: the rest follow as the list is scrolled. */
const AT_ONCE = 100;
const TYPING_MS = 200;

/** The records of a kind, found by words. */
export function RecordList({ kind }: { kind: Kind }) {
  const search = useSearch().get('search') ?? '';
  const changed = useChanged(({ times }) => times);
  const { pages, retry, more } = usePages(kind, search, changed);
  const whole = pages.next === undefined;
  const ordered = useMemo(
    () => (whole ? inShownOrder(pages.records) : pages.records),
    [pages.records, whole],
  );
  const [drawn, setDrawn] = useListMemory(pages.records.length > 0, AT_ONCE);
  const shown = useMemo(() => ordered.slice(0, drawn), [ordered, drawn]);
  const moreOf = useMore(kind, shown);
  const [one, many] = kindLabels[kind];
  const next = () => {
    setDrawn((before) => before + AT_ONCE);
    if (drawn + AT_ONCE > pages.records.length) more();
  };
  if (pages.state === 'unreachable') return <Unreachable what={kindName(kind)} onRetry={retry} />;
  return (
    <section className="record-list" aria-labelledby="kind-title">
      <div className="record-list-head">
        <h2 id="kind-title" className="records-title">
          {kindName(kind)}
        </h2>
        <PlaceLink className="plain-button main-button link-button" href={newPath(kind)}>
          Add a {one}
        </PlaceLink>
      </div>
      <Search kind={kind} search={search} onSettled={() => setDrawn(AT_ONCE)} />
      <p className="list-count" role="status">
        {countText(pages.state, pages.total, search, many, one)}
        {pages.state === 'ready' && !whole && ' In the order they were made; search to narrow.'}
      </p>
      {pages.state === 'failed' && (
        <p className="tone-warning" role="alert">
          The list could not be read. {pages.reason}{' '}
          <Button className="plain-button" onPress={retry}>
            Try again
          </Button>
        </p>
      )}
      {pages.state === 'ready' && pages.total === 0 && <Empty kind={kind} search={search} />}
      {shown.length > 0 && (
        <RecordTable kind={kind} records={shown} moreOf={moreOf} today={todayIso()} />
      )}
      {shown.length < pages.total && shown.length > 0 && (
        <MoreButton onPress={next} left={pages.total - shown.length} />
      )}
    </section>
  );
}

function countText(state: string, total: number, search: string, many: string, one: string) {
  if (state === 'loading' && total === 0) return 'Reading…';
  const counted = `${formatNumber(total, 0)} ${total === 1 ? one : many}`;
  return search === '' ? counted : `${counted} with “${search}”`;
}

function Search({ kind, search, onSettled }: { kind: Kind; search: string; onSettled(): void }) {
  const [text, setText] = useState(search);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  const ask = (words: string) => {
    setText(words);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => {
      onSettled();
      const query = words.trim() === '' ? '' : `?${new URLSearchParams({ search: words.trim() })}`;
      goTo(kindPath(kind) + query, { replace: true });
    }, TYPING_MS);
  };
  return (
    <SearchField className="record-search" value={text} onChange={ask} maxLength={200}>
      <Label>{FIND[kind] ?? 'Find by name, address, owner or note'}</Label>
      <Input className="find-input" />
    </SearchField>
  );
}

/** What a search looks through, where it is not the usual. */
const FIND: Partial<Record<Kind, string>> = {
  'flow-tests': 'Find by who tested or by note; a hydrant’s page lists its own tests',
  'pump-tests': 'Find by who tested or by note; a rig’s page lists its own tests',
  'hose-tests': 'Find by size, by who tested or by note',
  streets: 'Find by name, class or note',
};

/** Pressed by itself when it comes into view. */
function MoreButton({ onPress, left }: { onPress(): void; left: number }) {
  const button = useRef<HTMLButtonElement>(null);
  const press = useRef(onPress);
  press.current = onPress;
  useEffect(() => {
    const watched = button.current;
    if (!watched) return;
    const seen = new IntersectionObserver(
      (entries) => entries.some(({ isIntersecting }) => isIntersecting) && press.current(),
      { rootMargin: '600px' },
    );
    seen.observe(watched);
    return () => seen.disconnect();
  });
  return (
    <Button ref={button} className="plain-button more-button" onPress={onPress}>
      Show more ({formatNumber(left, 0)} left)
    </Button>
  );
}

function Empty({ kind, search }: { kind: Kind; search: string }) {
  const [one, many] = kindLabels[kind];
  return (
    <div className="records-empty">
      {search === '' ? (
        <p>
          <b>No {many} yet.</b> Add the first {one} here, or{' '}
          <PlaceLink href="/import">bring in a list</PlaceLink>.
        </p>
      ) : (
        <p>
          <b>No {one} has these words.</b> Try fewer or others, or{' '}
          <PlaceLink href={kindPath(kind)}>show all {many}</PlaceLink>.
        </p>
      )}
    </div>
  );
}
