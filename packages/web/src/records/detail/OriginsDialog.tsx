import type { Kind, RecordOrigin } from '@plugside/records/model';
import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { reasonOf } from '../../api/reason.ts';
import { useUnits } from '../../editing/use-units.ts';
import { fieldTables } from '../fields/field-tables.ts';
import type { Values } from '../form/draft.ts';
import { OriginEntry } from '../form/OriginEntry.tsx';
import { type OriginDrafts, readOrigins } from '../form/origin-draft.ts';
import { useSave } from '../save/use-save.tsx';
import { valueWords } from '../words.ts';

const PLAIN: ReadonlySet<string> = new Set(['note', 'externalSource', 'externalId']);

/** Where the values of a test come from: its own form has no room for that. */
export function OriginsDialog({ kind, record }: { kind: Kind; record: Values }) {
  return (
    <DialogTrigger>
      <Button className="plain-button">Where values come from</Button>
      <ModalOverlay className="dialog-veil">
        <Modal className="dialog">
          <Dialog>{({ close }) => <Origins kind={kind} record={record} onDone={close} />}</Dialog>
        </Modal>
      </ModalOverlay>
    </DialogTrigger>
  );
}

interface OriginsProps {
  kind: Kind;
  record: Values;
  onDone(): void;
}

function Origins({ kind, record, onDone }: OriginsProps) {
  const units = useUnits();
  const [drafts, setDrafts] = useState<OriginDrafts>({});
  const [told, setTold] = useState<string | null>(null);
  const [asked, setAsked] = useState(false);
  const { save, dialog } = useSave(kind, record, onDone);
  const before = (record.origins ?? {}) as Readonly<Record<string, RecordOrigin>>;
  const { changes, problems } = readOrigins(drafts, before);
  const known = fieldTables[kind].filter(
    (spec) => !PLAIN.has(spec.field) && valueWords(spec, record[spec.field], units) !== null,
  );
  const write = async () => {
    setAsked(true);
    if (Object.keys(problems).length > 0) return;
    if (Object.keys(changes).length === 0) return onDone();
    try {
      await save({ origins: changes });
    } catch (error) {
      setTold(reasonOf(error));
    }
  };
  return (
    <>
      <Heading slot="title">Where values come from</Heading>
      {known.map((spec) => (
        <div key={spec.field}>
          <p className="origin-of">
            {spec.label}
            {spec.type.is !== 'record' && (
              <span className="soft-text"> {valueWords(spec, record[spec.field], units)}</span>
            )}
          </p>
          <OriginEntry
            of={spec.label}
            draft={drafts[spec.field]}
            before={before[spec.field]}
            onChange={(draft) => setDrafts({ ...drafts, [spec.field]: draft })}
            problem={asked ? problems[`origins.${spec.field}`] : undefined}
          />
        </div>
      ))}
      <div className="form-actions">
        <Button className="save-button" onPress={() => void write()}>
          Save
        </Button>
        <Button className="quiet-button" onPress={onDone}>
          Cancel
        </Button>
        <p role="alert" className="form-missing">
          {told && `Not saved. ${told}`}
        </p>
      </div>
      {dialog}
    </>
  );
}
