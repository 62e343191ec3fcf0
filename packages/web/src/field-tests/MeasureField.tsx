import { useState } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import {
  type EntryKind,
  type EntryRange,
  readEntry,
  shownEntry,
} from '../editing/quantity-entry.ts';
import { useView } from '../plan-store/view.ts';
import { readingText } from './reading-text.ts';

interface MeasureFieldProps extends EntryRange {
  label: string;
  kind: EntryKind;
  /** In the inside unit; undefined while nothing stands in the field. */
  value: number | undefined;
  onChange(value: number | undefined): void;
  /** For bare numbers: "rpm". */
  unit?: string;
  hint?: string;
  /** The label is for the ear alone, where a column's head says it. */
  hideLabel?: boolean;
}

/** A reading to be written down: may be empty, takes any unit, and tells what it could not read. */
export function MeasureField(props: MeasureFieldProps) {
  const { label, kind, value, onChange, min, max, hint, hideLabel } = props;
  const system = useView((view) => view.units);
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const unit = props.unit ?? shownEntry(1, kind, system).unit;

  const take = (text: string) => {
    setDraft(text);
    setProblem(null);
    if (text.trim() === '') {
      onChange(undefined);
      return;
    }
    const entry = readEntry(text, kind, system, { min, max });
    if (entry.ok) onChange(entry.value);
  };
  const settle = () => {
    if (draft === null) return;
    const entry = readEntry(draft, kind, system, { min, max });
    if (draft.trim() !== '' && !entry.ok) {
      onChange(undefined);
      setProblem(entry.message);
      return;
    }
    setDraft(null);
  };
  return (
    <TextField
      className="test-field"
      aria-label={hideLabel ? label : undefined}
      isInvalid={problem !== null}
      value={draft ?? (value === undefined ? '' : readingText(value, kind, system))}
      onChange={take}
      onBlur={settle}
      inputMode="decimal"
      autoComplete="off"
    >
      {!hideLabel && <Label>{label}</Label>}
      <span className="test-field-line">
        <Input />
        {unit !== '' && <span className="unit">{unit}</span>}
      </span>
      {hint && <Text slot="description">{hint}</Text>}
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}
