import type { Kind } from '@plugside/records/model';
import { useEffect, useRef, useState } from 'react';
import type { Values } from '../form/draft.ts';
import { fetchMore, joined, type More, NOTHING_MORE } from './more.ts';

/** What the rows shown say beside themselves; a row's is undefined until it has come. */
export function useMore(
  kind: Kind,
  shown: readonly Values[],
): (record: Values) => More | undefined {
  const [more, setMore] = useState<More>(NOTHING_MORE);
  const [told, setTold] = useState<ReadonlySet<string>>(new Set());
  const asked = useRef(new Set<string>());
  useEffect(() => {
    const fresh = shown.filter((one) => !asked.current.has(keyOf(one)));
    if (fresh.length === 0) return;
    for (const one of fresh) asked.current.add(keyOf(one));
    fetchMore(kind, fresh).then(
      (found) => {
        setMore((before) => joined(before, found));
        setTold((before) => new Set([...before, ...fresh.map(keyOf)]));
      },
      () => {
        for (const one of fresh) asked.current.delete(keyOf(one));
      },
    );
  }, [kind, shown]);
  return (record) => (told.has(keyOf(record)) ? more : undefined);
}

/** Another version of a record is asked for anew. */
const keyOf = ({ id, version }: Values): string => `${id}:${version}`;
