import { type Kind, kindLabels } from '@plugside/records/model';
import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { allRecords } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { newPath } from '../address.ts';
import { useChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { inShownOrder } from '../list/columns.ts';
import { RecordTable } from '../list/RecordTable.tsx';
import { useRows } from '../list/use-rows.ts';
import { Once } from '../Once.tsx';
import { useLast } from '../use-last.ts';

interface RelatedListProps {
  title: string;
  kind: Kind;
  /** Of that kind, the one that names this record. */
  field: string;
  id: string;
  /** The record's own id, where it is of that kind. */
  but?: string;
}

/** Records of another kind that name this one. */
export function RelatedList({ title, kind, field, id, but }: RelatedListProps) {
  const changed = useChanged(({ times }) => times);
  const [loaded, retry] = useLoaded(`${kind}:${field}:${id}:${changed}`, (signal) =>
    allRecords(kind, { where: { [field]: id } }, signal),
  );
  const [one, many] = kindLabels[kind];
  return (
    <section className="related-part" aria-label={title}>
      <div className="related-head">
        <h3>{title}</h3>
        {kind !== 'plans' && (
          <PlaceLink className="plain-button link-button" href={newPath(kind, { [field]: id })}>
            Add a {one}
          </PlaceLink>
        )}
      </div>
      <Once loaded={useLast(loaded)} retry={retry} what={title}>
        {(found) =>
          found.every((other) => other.id === but) ? (
            <p className="soft-text">
              No {many} on record.
              {kind === 'plans' && ' Plan a lay to it on the map, and save the plan there.'}
            </p>
          ) : (
            <Table
              kind={kind}
              records={inShownOrder(found.filter((other) => other.id !== but))}
              field={field}
            />
          )
        }
      </Once>
    </section>
  );
}

interface TableProps {
  kind: Kind;
  records: readonly Values[];
  field: string;
}

const SHOWN = 12;

function Table({ kind, records, field }: TableProps) {
  const [all, setAll] = useState(false);
  const wanted = useMemo(() => (all ? records : records.slice(0, SHOWN)), [all, records]);
  const { rows: shown, complete, moreOf } = useRows(kind, wanted);
  if (shown.length === 0) return null;
  return (
    <>
      <RecordTable kind={kind} records={shown} moreOf={moreOf} today={todayIso()} without={field} />
      {complete && shown.length < records.length && (
        <p>
          <Button className="plain-button" onPress={() => setAll(true)}>
            Show all {records.length}
          </Button>
        </p>
      )}
    </>
  );
}
