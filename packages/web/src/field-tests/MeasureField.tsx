import { useContext, useEffect, useRef, useState } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import {
  type EntryKind,
  type EntryRange,
  readEntry,
  shownEntry,
} from '../editing/quantity-entry.ts';
import { useView } from '../plan-store/view.ts';
import { readingText } from './reading-text.ts';
import { UnreadTextsContext } from './unread-texts.ts';

interface MeasureFieldProps extends EntryRange {
  label: string;
  kind: EntryKind;
  /** In the inside unit; undefined while nothing stands in the field. */
  value: number | undefined;
  onChange(value: number | undefined): void;
  /** For bare numbers: "rpm". */
  unit?: string;
  hint?: string;
  /** Its name in the form, under which what cannot be read is kept. */
  at?: string;
  /** The label is for the ear alone, where a column's head says it. */
  hideLabel?: boolean;
}

/** A reading to be written down: may be empty, takes any unit, and tells what it could not read. */
export function MeasureField(props: MeasureFieldProps) {
  const { label, kind, value, onChange, min, max, hint, hideLabel, at } = props;
  const system = useView((view) => view.units);
  const unread = useContext(UnreadTextsContext);
  const [draft, setDraft] = useState<string | null>(
    () => (at === undefined ? undefined : unread?.texts[at]) ?? null,
  );
  const [problem, setProblem] = useState<string | null>(() => {
    const entry = draft === null ? null : readEntry(draft, kind, system, { min, max });
    return entry && !entry.ok ? entry.message : null;
  });
  // A form that was left while this stood here: the value before it must not be saved in its place.
  const found = useRef(draft !== null);
  useEffect(() => {
    if (found.current) onChange(undefined);
    found.current = false;
  }, [onChange]);
  const keep = (text: string | null) => at !== undefined && unread?.put(at, text);
  const unit = props.unit ?? shownEntry(1, kind, system).unit;

  const take = (text: string) => {
    setDraft(text);
    setProblem(null);
    if (text.trim() === '') {
      keep(null);
      onChange(undefined);
      return;
    }
    const entry = readEntry(text, kind, system, { min, max });
    keep(entry.ok ? null : text);
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
