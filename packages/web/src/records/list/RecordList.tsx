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
import { OrderChoice } from './OrderChoice.tsx';
import { type Order, orderIn, orderText, usualOrder } from './order.ts';
import { RecordTable } from './RecordTable.tsx';
import { useListMemory } from './use-list-memory.ts';
import { usePages } from './use-pages.ts';
import { useRows } from './use-rows.ts';

/** Drawn at a time: the rest follow as the list is scrolled. */
const AT_ONCE = 100;
const TYPING_MS = 200;

/** The records of a kind, found by words. */
export function RecordList({ kind }: { kind: Kind }) {
  const query = useSearch();
  const search = query.get('search') ?? '';
  const order = orderIn(kind, query.get('sort'));
  const changed = useChanged(({ times }) => times);
  const [ready, setReady] = useState(false);
  const [drawn, setDrawn] = useListMemory(ready, AT_ONCE);
  const { pages, retry, more } = usePages(kind, search, orderText(order), drawn, changed);
  const wanted = useMemo(() => pages.records.slice(0, drawn), [pages.records, drawn]);
  const { rows: shown, complete, moreOf } = useRows(kind, wanted);
  useEffect(() => setReady(shown.length > 0), [shown.length]);
  const ask = (asked: { search?: string; order?: Order }) => {
    setDrawn(AT_ONCE);
    goTo(kindPath(kind) + queryText(kind, { search, order, ...asked }), { replace: true });
  };
  const isReading = shown.length === 0 && (pages.state === 'loading' || pages.total > 0);
  const [one, many] = kindLabels[kind];
  const next = () => {
    if (!complete) return;
    if (drawn < pages.records.length) setDrawn(drawn + AT_ONCE);
    if (drawn + AT_ONCE >= pages.records.length) more();
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
      <div className="list-asked">
        <Search kind={kind} search={search} onSearch={(words) => ask({ search: words })} />
        <OrderChoice kind={kind} order={order} onOrder={(next) => ask({ order: next })} />
      </div>
      <p className="list-count" role="status">
        {isReading ? 'Reading…' : countText(pages.total, search, many, one)}
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
        <RecordTable
          kind={kind}
          records={shown}
          moreOf={moreOf}
          today={todayIso()}
          order={order}
          onOrder={(next) => ask({ order: next })}
        />
      )}
      {shown.length < pages.total && shown.length > 0 && (
        <MoreButton onPress={next} left={pages.total - shown.length} />
      )}
    </section>
  );
}

function countText(total: number, search: string, many: string, one: string): string {
  const counted = `${formatNumber(total, 0)} ${total === 1 ? one : many}`;
  return search === '' ? counted : `${counted} with “${search}”`;
}

/** What stands in the address: nothing that is so anyhow. */
function queryText(kind: Kind, { search, order }: { search: string; order: Order }): string {
  const asked = new URLSearchParams({
    ...(search !== '' && { search }),
    ...(orderText(order) !== orderText(usualOrder(kind)) && { sort: orderText(order) }),
  });
  return asked.size === 0 ? '' : `?${asked}`;
}

interface SearchProps {
  kind: Kind;
  search: string;
  onSearch(words: string): void;
}

function Search({ kind, search, onSearch }: SearchProps) {
  const [text, setText] = useState(search);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => () => clearTimeout(timer.current), []);
  // The order may have changed since the typing began.
  const settled = useRef(onSearch);
  settled.current = onSearch;
  const ask = (words: string) => {
    setText(words);
    clearTimeout(timer.current);
    timer.current = setTimeout(() => settled.current(words.trim()), TYPING_MS);
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
  'flow-tests': 'Find by hydrant, by who tested or by note',
  'pump-tests': 'Find by rig, by who tested or by note',
  rigs: 'Find by name, station or note',
  hose: 'Find by name, size, rig or note',
  plans: 'Find by name, building or note',
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
