import { type Kind, kindLabels } from '@plugside/records/model';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { ProblemError, type Referrer, StaleError } from '../../api/problem.ts';
import { reasonOf } from '../../api/reason.ts';
import { removeRecord } from '../../api/records.ts';
import { AskFirst, RemoveNow } from '../../editing/AskFirst.tsx';
import { goTo } from '../../places/place.ts';
import { kindPath } from '../address.ts';
import { tellChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { Referrers } from './Referrers.tsx';

interface RemoveButtonProps {
  kind: Kind;
  record: Values;
  title: string;
}

type Refusal = { by: readonly Referrer[] } | { stale: true } | { reason: string };

/** Asks before it removes, and says what stands in the way. */
export function RemoveButton({ kind, record, title }: RemoveButtonProps) {
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [removing, setRemoving] = useState(false);
  const [one] = kindLabels[kind];
  const remove = async (close: () => void) => {
    setRemoving(true);
    try {
      await removeRecord(kind, record.id as string, record.version as number);
      close();
      tellChanged();
      goTo(kindPath(kind), { replace: true });
    } catch (error) {
      setRefusal(refusalOf(error));
    } finally {
      setRemoving(false);
    }
  };
  return (
    <AskFirst
      button={<Button className="plain-button">Remove</Button>}
      title={refusal && 'by' in refusal ? `${title} stays` : `Remove ${title}?`}
      onOpenChange={() => setRefusal(null)}
      actions={(close) => (
        <>
          {(refusal === null || 'reason' in refusal) && (
            <RemoveNow isPending={removing} onPress={() => void remove(close)} />
          )}
          {refusal && 'stale' in refusal ? (
            <Button
              className="plain-button main-button"
              onPress={() => {
                close();
                tellChanged();
              }}
            >
              Show it as it is now
            </Button>
          ) : (
            <Button className="plain-button" onPress={close} autoFocus>
              {refusal ? 'Close' : 'Keep it'}
            </Button>
          )}
        </>
      )}
    >
      <div role="status">
        {refusal === null && (
          <p>
            The {one} goes out of the records for good. A backup that was taken before still has it.
          </p>
        )}
        {refusal && 'by' in refusal && <Referrers kind={kind} by={refusal.by} />}
        {refusal && 'stale' in refusal && (
          <p>
            Somebody else changed this {one} since you opened it. It was not removed: look at it
            again first.
          </p>
        )}
        {refusal && 'reason' in refusal && (
          <p className="tone-warning">Not removed. {refusal.reason}</p>
        )}
      </div>
    </AskFirst>
  );
}

function refusalOf(error: unknown): Refusal {
  if (error instanceof StaleError) return { stale: true };
  const by = error instanceof ProblemError ? error.problem.by : undefined;
  return by ? { by } : { reason: reasonOf(error) };
}
