import type { Kind } from '@plugside/records/model';
import { kindLabels } from '@plugside/records/model';
import { getRecord } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { useUnits } from '../../editing/use-units.ts';
import { goTo } from '../../places/place.ts';
import { editPath, recordPath } from '../address.ts';
import { Crumbs } from '../Crumbs.tsx';
import { Once } from '../Once.tsx';
import { useSave } from '../save/use-save.tsx';
import { recordTitle } from '../words.ts';
import type { Values } from './draft.ts';
import { useKeptDrafts } from './kept-drafts.ts';
import { RecordForm } from './RecordForm.tsx';
import { isTest, TestForm } from './TestForm.tsx';

/** Changing a record. */
export function EditPage({ kind, id }: { kind: Kind; id: string }) {
  const [loaded, retry] = useLoaded(`${kind}:${id}`, (signal) => getRecord(kind, id, signal));
  return (
    <Once loaded={loaded} retry={retry} what={`This ${kindLabels[kind][0]}`}>
      {(record) => <Edit kind={kind} record={record} />}
    </Once>
  );
}

function Edit({ kind, record }: { kind: Kind; record: Values }) {
  const units = useUnits();
  const id = record.id as string;
  const address = editPath(kind, id);
  // A form begun on an older version is saved on that version, so that nothing newer is overwritten.
  const begun = useKeptDrafts(({ forms }) => forms[address]?.before) ?? record;
  const back = () => goTo(recordPath(kind, id), { replace: true });
  const { save, dialog } = useSave(kind, begun, () => {
    useKeptDrafts.getState().drop(address);
    back();
  });
  const title = recordTitle(kind, record, units);
  return (
    <section className="record-page" aria-labelledby="record-title">
      <Crumbs kind={kind} record={{ id, title }} />
      {isTest(kind) ? (
        <TestForm
          kind={kind}
          address={address}
          record={begun}
          known={{}}
          onSave={save}
          onCancel={back}
        />
      ) : (
        <>
          <h2 id="record-title" className="records-title">
            {title}
          </h2>
          <RecordForm kind={kind} address={address} record={record} onSave={save} onCancel={back} />
        </>
      )}
      {dialog}
    </section>
  );
}
