import { type Kind, kindLabels, type Stored } from '@plugside/records/model';
import { allRecords, getRecord } from '../../api/records.ts';
import { useLoaded } from '../../api/use-loaded.ts';
import { todayIso } from '../../district/words.ts';
import { FlowTestForm, HoseTestForm, PumpTestForm } from '../../field-tests/index.ts';
import { goTo } from '../../places/place.ts';
import { newPath } from '../address.ts';
import { Once } from '../Once.tsx';
import { changesBetween } from '../save/changes.ts';
import { sentence } from '../words.ts';
import type { Values } from './draft.ts';
import { RecordPicker } from './RecordPicker.tsx';

const TESTED: Partial<Record<Kind, { field: 'hydrantId' | 'rigId'; kind: 'hydrants' | 'rigs' }>> = {
  'flow-tests': { field: 'hydrantId', kind: 'hydrants' },
  'pump-tests': { field: 'rigId', kind: 'rigs' },
};

export const isTest = (kind: Kind): boolean => kind === 'hose-tests' || kind in TESTED;

interface TestFormProps {
  kind: Kind;
  /** Null for a new test. */
  record: Values | null;
  known: Readonly<Record<string, string>>;
  /** A new test's fields, or what a change of one changes. */
  onSave(changes: Values): Promise<void>;
  onCancel(): void;
}

/** The form of a flow, pump or hose test, over what is tested. */
export function TestForm({ kind, record, known, onSave, onCancel }: TestFormProps) {
  const tested = TESTED[kind];
  const save = (fields: object) =>
    onSave(record ? changesBetween(record, fields as Values) : (fields as Values));
  if (!tested) {
    return (
      <HoseTestForm
        initial={(record ?? known) as Partial<Stored<'hose-tests'>>}
        today={todayIso()}
        onSave={save}
        onCancel={onCancel}
      />
    );
  }
  const id = (record?.[tested.field] as string | undefined) ?? known[tested.field];
  if (id === undefined) return <PickTested kind={kind} of={tested} />;
  return tested.kind === 'hydrants' ? (
    <OfHydrant id={id} record={record} onSave={save} onCancel={onCancel} />
  ) : (
    <OfRig id={id} record={record} onSave={save} onCancel={onCancel} />
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
  onSave(fields: object): Promise<void>;
  onCancel(): void;
}

function OfHydrant({ id, record, onSave, onCancel }: OfProps) {
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
          onSave={onSave}
          onCancel={onCancel}
        />
      )}
    </Once>
  );
}

function OfRig({ id, record, onSave, onCancel }: OfProps) {
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
          onSave={onSave}
          onCancel={onCancel}
        />
      )}
    </Once>
  );
}
