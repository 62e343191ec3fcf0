import { type Kind, kindLabels, type Stored } from '@plugside/records/model';
import { useState } from 'react';
import { allRecords, getRecord } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import {
  FlowTestForm,
  HoseTestForm,
  type KeptTyping,
  PumpTestForm,
} from '../../field-tests/index.ts';
import { goTo } from '../../places/place.ts';
import { newPath } from '../address.ts';
import { Once } from '../Once.tsx';
import { changesBetween } from '../save/changes.ts';
import { sentence } from '../words.ts';
import type { Values } from './draft.ts';
import { KeptNote } from './KeptNote.tsx';
import { useKeptDrafts } from './kept-drafts.ts';
import { RecordPicker } from './RecordPicker.tsx';

const TESTED: Partial<Record<Kind, { field: 'hydrantId' | 'rigId'; kind: 'hydrants' | 'rigs' }>> = {
  'flow-tests': { field: 'hydrantId', kind: 'hydrants' },
  'pump-tests': { field: 'rigId', kind: 'rigs' },
};

export const isTest = (kind: Kind): boolean => kind === 'hose-tests' || kind in TESTED;

interface TestFormProps {
  kind: Kind;
  /** The form's own address: what was typed is kept under it. */
  address: string;
  /** Null for a new test. */
  record: Values | null;
  known: Readonly<Record<string, string>>;
  /** A new test's fields, or what a change of one changes. */
  onSave(changes: Values): Promise<void>;
  onCancel(): void;
}

/** The form of a flow, pump or hose test, over what is tested. */
export function TestForm(props: TestFormProps) {
  // Discarding what was typed begins the form anew.
  const [times, setTimes] = useState(0);
  return (
    <Begun
      key={`${props.address}:${times}`}
      {...props}
      onDiscard={() => {
        useKeptDrafts.getState().drop(props.address);
        setTimes(times + 1);
      }}
    />
  );
}

function Begun(props: TestFormProps & { onDiscard(): void }) {
  const { kind, address, record, known, onSave, onCancel, onDiscard } = props;
  const { keep, drop } = useKeptDrafts.getState();
  // As it was when the form was opened: what is typed now is no news to the one who types it.
  const [found] = useState(() => useKeptDrafts.getState().forms[address]);
  const tested = TESTED[kind];
  const form = {
    record,
    kept: {
      draft: found?.test,
      keep: (test: object) => keep(address, { before: record, drafts: {}, origins: {}, test }),
    },
    onSave: (fields: object) =>
      onSave(record ? changesBetween(record, fields as Values) : (fields as Values)),
    onCancel: () => {
      drop(address);
      onCancel();
    },
  };
  const id = tested && ((record?.[tested.field] as string | undefined) ?? known[tested.field]);
  if (tested && id === undefined) return <PickTested kind={kind} of={tested} />;
  return (
    <>
      {found?.test && found.typedAtMs !== undefined && (
        <KeptNote typedAtMs={found.typedAtMs} onDiscard={onDiscard} />
      )}
      {!tested || id === undefined ? (
        <HoseTestForm
          {...form}
          initial={(record ?? known) as Partial<Stored<'hose-tests'>>}
          today={todayIso()}
        />
      ) : tested.kind === 'hydrants' ? (
        <OfHydrant id={id} {...form} />
      ) : (
        <OfRig id={id} {...form} />
      )}
    </>
  );
}

function PickTested({ kind, of }: { kind: Kind; of: NonNullable<(typeof TESTED)[Kind]> }) {
  const [one] = kindLabels[of.kind];
  return (
    <div className="pick-tested">
      <h2 id="record-title" className="records-title">
        New {kindLabels[kind][0]}
      </h2>
      <RecordPicker
        kind={of.kind}
        label={`${sentence(one)} tested`}
        onPick={(id) => goTo(newPath(kind, { [of.field]: id }), { replace: true })}
      />
    </div>
  );
}

interface OfProps {
  id: string;
  record: Values | null;
  kept: KeptTyping;
  onSave(fields: object): Promise<void>;
  onCancel(): void;
}

function OfHydrant({ id, record, kept, onSave, onCancel }: OfProps) {
  const [loaded, retry] = useLoaded(`hydrant:${id}`, async (signal) => {
    const [hydrant, tests] = await Promise.all([
      getRecord('hydrants', id, signal),
      allRecords('flow-tests', { where: { hydrantId: id } }, signal),
    ]);
    return { hydrant, earlier: tests.filter((one) => one.id !== record?.id) };
  });
  return (
    <Once loaded={loaded} retry={retry} what="The hydrant">
      {({ hydrant, earlier }) => (
        <FlowTestForm
          hydrantId={id}
          hydrantName={hydrant.name}
          {...(record && { initial: record as unknown as Stored<'flow-tests'> })}
          earlier={earlier}
          today={todayIso()}
          kept={kept}
          onSave={onSave}
          onCancel={onCancel}
        />
      )}
    </Once>
  );
}

function OfRig({ id, record, kept, onSave, onCancel }: OfProps) {
  const [loaded, retry] = useLoaded(`rig:${id}`, async (signal) => {
    const [rig, tests] = await Promise.all([
      getRecord('rigs', id, signal),
      allRecords('pump-tests', { where: { rigId: id } }, signal),
    ]);
    return { rig, earlier: tests.filter((one) => one.id !== record?.id) };
  });
  return (
    <Once loaded={loaded} retry={retry} what="The rig">
      {({ rig, earlier }) => (
        <PumpTestForm
          rigId={id}
          rigName={rig.name}
          ratedGpm={rig.ratedGpm}
          {...(record && { initial: record as unknown as Stored<'pump-tests'> })}
          earlier={earlier}
          today={todayIso()}
          kept={kept}
          onSave={onSave}
          onCancel={onCancel}
        />
      )}
    </Once>
  );
}
