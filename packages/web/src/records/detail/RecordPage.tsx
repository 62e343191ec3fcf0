import { type Kind, kindLabels } from '@plugside/records/model';
import { getRecord } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { useUnits } from '../../editing/use-units.ts';
import { PaperLink } from '../../paper/PaperLink.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { supplyAddress } from '../../supply/address.ts';
import { editPath } from '../address.ts';
import { Crumbs } from '../Crumbs.tsx';
import { useChanged } from '../changed.ts';
import type { Values } from '../form/draft.ts';
import { isTest } from '../form/TestForm.tsx';
import { Once } from '../Once.tsx';
import { RemoveButton } from '../save/RemoveButton.tsx';
import { useLast } from '../use-last.ts';
import { recordTitle } from '../words.ts';
import { mapAddress } from './map-address.ts';
import { OpenInLay } from './OpenInLay.tsx';
import { OriginsDialog } from './OriginsDialog.tsx';
import { RecordFacts } from './RecordFacts.tsx';
import { Related } from './Related.tsx';

/** A record: what is known of it, where that comes from, and what hangs on it. */
export function RecordPage({ kind, id }: { kind: Kind; id: string }) {
  const changed = useChanged(({ times }) => times);
  const [loaded, retry] = useLoaded(`${kind}:${id}:${changed}`, (signal) =>
    getRecord(kind, id, signal),
  );
  return (
    <Once loaded={useLast(loaded)} retry={retry} what={`This ${kindLabels[kind][0]}`}>
      {(record) => <Page kind={kind} record={record} />}
    </Once>
  );
}

function Page({ kind, record }: { kind: Kind; record: Values }) {
  const units = useUnits();
  const title = recordTitle(kind, record, units);
  const onMap = mapAddress(kind, record.id as string);
  return (
    <section className="record-page" aria-labelledby="record-title">
      <Crumbs kind={kind} />
      <div className="record-head">
        <h2 id="record-title" className="records-title">
          {title}
        </h2>
        <div className="record-actions">
          {onMap && (
            <PlaceLink className="plain-button link-button" href={onMap}>
              Show on the map
            </PlaceLink>
          )}
          {kind === 'hydrants' && (
            <PaperLink document={`hydrant-card/${record.id}`}>Print its card</PaperLink>
          )}
          {kind === 'rigs' && (
            <PaperLink document={`pump-chart/${record.id}`}>Print its pump chart</PaperLink>
          )}
          {kind === 'buildings' && (
            <PlaceLink
              className="plain-button link-button"
              href={supplyAddress(record.id as string)}
            >
              Ways to supply it
            </PlaceLink>
          )}
          {kind === 'plans' && (
            <>
              <OpenInLay record={record} />
              <PlaceLink className="plain-button link-button" href={`/drill/new?plan=${record.id}`}>
                Drill it
              </PlaceLink>
            </>
          )}
          {isTest(kind) && <OriginsDialog kind={kind} record={record} />}
          <RemoveButton kind={kind} record={record} title={title} />
          <PlaceLink
            className="plain-button main-button link-button"
            href={editPath(kind, record.id as string)}
          >
            Edit
          </PlaceLink>
        </div>
      </div>
      <div className="record-columns">
        <RecordFacts kind={kind} record={record} />
        <Related kind={kind} record={record} />
      </div>
    </section>
  );
}
