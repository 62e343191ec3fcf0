import type { Kind } from '@plugside/records/model';
import { useEffect, useRef, useState } from 'react';
import type { Values } from '../form/draft.ts';
import { fetchMore, joined, type More, NOTHING_MORE } from './more.ts';

interface Rows {
  /** To be drawn: those wanted, once all is there that they say; until then those drawn before. */
  rows: readonly Values[];
  /** All that are wanted are drawn. */
  complete: boolean;
  /** What a row says beside itself; undefined where it could not be fetched. */
  moreOf(record: Values): More | undefined;
}

const NONE: readonly Values[] = [];

/** A list's rows in one piece, with the names and tests that they tell: nothing fills in later. */
export function useRows(kind: Kind, wanted: readonly Values[]): Rows {
  const [more, setMore] = useState<More>(NOTHING_MORE);
  /** Rows that were asked for and came, or did not. */
  const [settled, setSettled] = useState<ReadonlyMap<string, boolean>>(new Map());
  const asked = useRef(new Set<string>());
  useEffect(() => {
    const fresh = wanted.filter((one) => !asked.current.has(keyOf(one)));
    if (fresh.length === 0) return;
    for (const one of fresh) asked.current.add(keyOf(one));
    const settle = (came: boolean) =>
      setSettled(
        (before) => new Map([...before, ...fresh.map((one) => [keyOf(one), came] as const)]),
      );
    fetchMore(kind, fresh).then(
      (found) => {
        setMore((before) => joined(before, found));
        settle(true);
      },
      () => {
        for (const one of fresh) asked.current.delete(keyOf(one));
        settle(false);
      },
    );
  }, [kind, wanted]);
  const drawn = useRef(NONE);
  const complete = wanted.every((one) => settled.has(keyOf(one)));
  if (complete) drawn.current = wanted;
  return {
    rows: drawn.current,
    complete,
    moreOf: (record) => (settled.get(keyOf(record)) ? more : undefined),
  };
}

/** Another version of a record is asked for anew. */
const keyOf = ({ id, version }: Values): string => `${id}:${version}`;
