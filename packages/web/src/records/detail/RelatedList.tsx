import { type Kind, kindLabels } from '@plugside/records/model';
import { allRecords } from '../../api/records.ts';
import { useLoaded } from '../../district/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { newPath } from '../address.ts';
import { useChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { inShownOrder } from '../list/columns.ts';
import { RecordTable } from '../list/RecordTable.tsx';
import { useMore } from '../list/use-more.ts';
import { Once } from '../Once.tsx';
import { useLast } from '../use-last.ts';

interface RelatedListProps {
  title: string;
  kind: Kind;
  /** Of that kind, the one that names this record. */
  field: string;
  id: string;
}

/** Records of another kind that name this one. */
export function RelatedList({ title, kind, field, id }: RelatedListProps) {
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
          found.length === 0 ? (
            <p className="soft-text">
              No {many} on record.
              {kind === 'plans' && ' Plan a lay to it on the map, and save the plan there.'}
            </p>
          ) : (
            <Table kind={kind} records={found} />
          )
        }
      </Once>
    </section>
  );
}

function Table({ kind, records }: { kind: Kind; records: readonly Values[] }) {
  const moreOf = useMore(kind, records);
  return (
    <RecordTable kind={kind} records={inShownOrder(records)} moreOf={moreOf} today={todayIso()} />
  );
}
