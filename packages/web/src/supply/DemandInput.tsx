import { type BuildingField, type BuildingForDemand, buildingFields } from '@plugside/fireground';
import { useId } from 'react';
import type { EntryKind } from '../editing/quantity-entry.ts';
import { MeasureField } from '../field-tests/MeasureField.tsx';

interface DemandInputProps {
  field: BuildingField;
  inputs: BuildingForDemand;
  /** Where it was taken from, where the record does not say it in so many words. */
  note?: string | undefined;
  onInputs(inputs: BuildingForDemand): void;
}

const KINDS: Readonly<Record<string, EntryKind>> = {
  ft: 'length',
  'ft²': 'area',
  'ft³': 'space',
  gpm: 'flow',
  'gpm/ft²': 'density',
};

/** One input of the demand methods, in the reader's units. */
export function DemandInput({ field, inputs, note, onInputs }: DemandInputProps) {
  const row = buildingFields[field];
  const id = useId();
  const label = sentenceCase(row.words.replace(/^(the|its) /, '').replace(/^whether it is /, ''));
  const set = (value: unknown) => {
    const { [field]: _, ...rest } = inputs;
    onInputs(value === undefined ? rest : { ...rest, [field]: value });
  };
  const value = inputs[field];
  if (row.kind === 'number' || row.kind === 'count') {
    const unit = row.kind === 'number' ? row.unit : '';
    const kind = KINDS[unit] ?? (row.kind === 'count' ? 'count' : 'coefficient');
    return (
      <MeasureField
        label={label}
        kind={kind}
        {...(KINDS[unit] === undefined && { unit })}
        value={value as number | undefined}
        min={row.least}
        max={row.greatest}
        onChange={set}
        {...(note && { hint: note })}
      />
    );
  }
  const options = row.kind === 'choice' ? row.choices.map(String) : ['yes', 'no'];
  const shown = typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value ?? '');
  const read = (text: string): unknown => {
    if (text === '') return undefined;
    if (row.kind === 'yes or no') return text === 'yes';
    return row.choices.find((choice) => String(choice) === text);
  };
  return (
    <div className="test-field">
      <label htmlFor={id}>{label}</label>
      <span className="test-field-line">
        <select id={id} value={shown} onChange={(event) => set(read(event.target.value))}>
          <option value="">not known</option>
          {options.map((option) => (
            <option key={option}>{option}</option>
          ))}
        </select>
      </span>
      {note && <span className="hint">{note}</span>}
    </div>
  );
}

const sentenceCase = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
