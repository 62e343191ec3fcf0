import { type Kind, kindLabels, type RecordOrigin } from '@plugside/records/model';
import { useId, useMemo, useState } from 'react';
import {
  Button,
  Dialog,
  Heading,
  Modal,
  ModalOverlay,
  Radio,
  RadioGroup,
} from 'react-aria-components';
import { reasonOf } from '../../api/reason.ts';
import { originWords } from '../../district/list/Facts.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { RecordNames } from '../detail/FactValue.tsx';
import { fieldLabel, fieldTables } from '../fields/field-tables.ts';
import type { Values } from '../form/draft.ts';
import { recordTitle, valueWords } from '../words.ts';
import {
  allOf,
  type Choices,
  type ConflictRow,
  chosenChanges,
  conflictRows,
  fieldOf,
  firstChoices,
  openRows,
  type Side,
} from './conflict.ts';

interface ConflictDialogProps {
  kind: Kind;
  /** The record that the change was made on. */
  before: Values;
  changes: Values;
  current: Values;
  /** To be written on `current`; empty where theirs is kept in everything. */
  onChosen(changes: Values): Promise<void>;
  onCancel(): void;
}

/** Somebody else changed the record first: both versions side by side, and a choice for each field. */
export function ConflictDialog(props: ConflictDialogProps) {
  const { kind, before, changes, current, onChosen, onCancel } = props;
  const units = useUnits();
  const rows = useMemo(() => conflictRows(before, changes, current), [before, changes, current]);
  const [choices, setChoices] = useState<Choices>(() => firstChoices(rows));
  const [failed, setFailed] = useState<string | null>(null);
  const [saving, setSaving] = useState(false);
  const open = openRows(rows, choices);
  const save = async () => {
    setSaving(true);
    setFailed(null);
    try {
      await onChosen(chosenChanges(rows, choices));
    } catch (error) {
      setFailed(reasonOf(error));
    } finally {
      setSaving(false);
    }
  };
  return (
    <ModalOverlay className="dialog-veil" isOpen onOpenChange={(isOpen) => !isOpen && onCancel()}>
      <Modal className="dialog conflict-dialog">
        <Dialog role="alertdialog">
          <Heading slot="title">{recordTitle(kind, current, units)} was changed meanwhile</Heading>
          <p>
            Somebody else saved this {kindLabels[kind][0]} while you were writing. Nothing of yours
            is written yet and nothing is lost: choose what each field is to say.
          </p>
          <div className="conflict-all">
            <Button className="plain-button" onPress={() => setChoices(allOf('mine', rows))}>
              All mine
            </Button>
            <Button className="plain-button" onPress={() => setChoices(allOf('theirs', rows))}>
              All theirs
            </Button>
          </div>
          <div className="conflict-rows">
            {rows.map((row) => (
              <Row
                key={row.slot}
                kind={kind}
                row={row}
                choice={choices[row.slot]}
                onChoice={(side) => setChoices({ ...choices, [row.slot]: side })}
              />
            ))}
          </div>
          <div className="form-actions">
            <Button
              className="save-button"
              isDisabled={open.length > 0}
              isPending={saving}
              onPress={() => void save()}
            >
              Save as chosen
            </Button>
            <Button className="quiet-button" onPress={onCancel}>
              Back to the form
            </Button>
            <p role="status" className="form-missing">
              {failed
                ? `Not saved. ${failed}`
                : open.length > 0 &&
                  `Choose for ${open.map(({ slot }) => slotLabel(kind, slot)).join(', ')} first.`}
            </p>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

interface RowProps {
  kind: Kind;
  row: ConflictRow;
  choice: Side | undefined;
  onChoice(side: Side): void;
}

const CHANGED_BY = {
  both: 'changed by both',
  me: 'changed by you alone',
  them: 'changed by them alone',
} as const;

function Row({ kind, row, choice, onChoice }: RowProps) {
  const label = slotLabel(kind, row.slot);
  const heading = useId();
  return (
    <div className="conflict-row">
      <p className="conflict-field" id={heading}>
        {label} <span className="soft-text">{CHANGED_BY[row.changedBy]}</span>
      </p>
      <RadioGroup
        className="conflict-sides"
        aria-labelledby={heading}
        value={choice ?? null}
        onChange={(side) => onChoice(side as Side)}
      >
        {(['mine', 'theirs'] as const).map((side) => (
          <Radio key={side} value={side} className="conflict-side">
            <span className="radio-ring" aria-hidden="true" />
            <span>
              <span className="conflict-whose">
                {side === 'theirs'
                  ? 'Theirs'
                  : row.changedBy === 'them'
                    ? 'As you read it'
                    : 'Yours'}
              </span>
              <span className="conflict-value">
                <SlotValue kind={kind} slot={row.slot} value={row[side]} />
              </span>
            </span>
          </Radio>
        ))}
      </RadioGroup>
    </div>
  );
}

function slotLabel(kind: Kind, slot: string): string {
  const label = fieldLabel(kind, fieldOf(slot));
  return slot.startsWith('origins.') ? `${label}: where it comes from` : label;
}

interface SlotValueProps {
  kind: Kind;
  slot: string;
  value: unknown;
}

function SlotValue({ kind, slot, value }: SlotValueProps) {
  const units = useUnits();
  if (slot.startsWith('origins.')) return originWords(value as RecordOrigin | undefined);
  const spec = fieldTables[kind].find(({ field }) => field === slot);
  if (value === undefined) return 'empty';
  if (!spec) return String(value);
  const { type } = spec;
  if (type.is === 'record') return <RecordNames kind={type.to} ids={[value as string]} />;
  if (type.is === 'records') return <RecordNames kind={type.to} ids={value as string[]} />;
  // Lists of values differ inside: a count would hide what.
  if (type.is === 'rows' || type.is === 'path' || type.is === 'rings')
    return JSON.stringify(value, null, 1);
  return valueWords(spec, value, units) ?? 'empty';
}
