import { type FieldsIn, type Kind, kindLabels } from '@plugside/records/model';
import { createRecord } from '../../api/records.ts';
import { goTo, useSearch } from '../../places/place.ts';
import { kindPath, newPath, recordPath } from '../address.ts';
import { Crumbs } from '../Crumbs.tsx';
import { tellChanged } from '../changed.ts';
import { fieldTables } from '../fields/field-tables.ts';
import type { Values } from './draft.ts';
import { useKeptDrafts } from './kept-drafts.ts';
import { RecordForm } from './RecordForm.tsx';
import { isTest, TestForm } from './TestForm.tsx';

/** The record that the new one was begun at; its kind's list where there is none. */
function cameFrom(kind: Kind, known: Readonly<Record<string, string>>): string {
  for (const { field, type } of fieldTables[kind]) {
    if (type.is === 'record' && known[field]) return recordPath(type.to, known[field]);
  }
  return kindPath(kind);
}

/** Adding a record; what the address says of it is filled in. */
export function NewPage({ kind }: { kind: Kind }) {
  const search = useSearch();
  const fields = new Set(fieldTables[kind].map(({ field }) => field));
  const known = Object.fromEntries([...search].filter(([field]) => fields.has(field)));
  const address = newPath(kind, known);
  const save = async (given: Values) => {
    const created = await createRecord(kind, given as FieldsIn<Kind>);
    useKeptDrafts.getState().drop(address);
    tellChanged();
    goTo(recordPath(kind, created.id), { replace: true });
  };
  const cancel = () => goTo(cameFrom(kind, known), { replace: true });
  return (
    <section className="record-page" aria-labelledby="record-title">
      <Crumbs kind={kind} />
      {isTest(kind) ? (
        <TestForm
          kind={kind}
          address={address}
          record={null}
          known={known}
          onSave={save}
          onCancel={cancel}
        />
      ) : (
        <>
          <h2 id="record-title" className="records-title">
            New {kindLabels[kind][0]}
          </h2>
          <RecordForm
            key={address}
            kind={kind}
            address={address}
            record={null}
            known={known}
            onSave={save}
            onCancel={cancel}
          />
        </>
      )}
    </section>
  );
}
