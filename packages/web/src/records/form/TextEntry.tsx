import { useState } from 'react';
import { FieldError, Input, Label, Text, TextArea, TextField } from 'react-aria-components';
import { useView } from '../../plan-store/view.ts';
import { unitOf } from '../fields/allowed-words.ts';
import type { FieldSpec } from '../fields/field.ts';
import { limitsAt } from '../fields/limits.ts';
import { shownText } from './draft.ts';
import type { FieldEntryProps } from './entry-props.ts';
import { readField } from './field-text.ts';
import { Needed } from './Needed.tsx';

/** Words, numbers and dates: takes any unit, keeps what was typed, and says what it could not read. */
export function TextEntry(props: FieldEntryProps) {
  const { kind, spec, within = [], at, draft, before, onChange, problems, hideLabel } = props;
  const system = useView((view) => view.units);
  const limits = limitsAt(kind, [...within, spec.field]);
  const [left, setLeft] = useState(false);
  const unit = unitOf(spec, system);
  const text = shownText(spec, draft, before ?? limits.fallback, system, limits);
  const read =
    draft?.is === 'text'
      ? readField(spec, draft.text, draft.system, { ...limits, required: false })
      : null;
  // Half a number is no fault: it is told once the field is left.
  const problem = problems[at] ?? (left && read && !read.ok ? read.message : null);
  const lines = linesOf(spec);
  return (
    <TextField
      className={`test-field entry-${spec.type.is}${lines > 1 ? ' test-field-wide' : ''}`}
      data-at={at}
      aria-label={hideLabel ? (props.spoken ?? spec.label) : undefined}
      isInvalid={problem !== null}
      isRequired={limits.required && within.length === 0}
      validationBehavior="aria"
      value={text}
      onChange={(typed) => {
        setLeft(false);
        onChange({ is: 'text', text: typed, system });
      }}
      onBlur={() => setLeft(true)}
      type={spec.type.is === 'date' ? 'date' : 'text'}
      inputMode={isNumber(spec) ? 'decimal' : undefined}
      autoComplete="off"
      spellCheck={spec.type.is === 'text' ? undefined : 'false'}
    >
      {!hideLabel && (
        <Label>
          {spec.label}
          {limits.required && within.length === 0 && <Needed />}
        </Label>
      )}
      <span className="test-field-line">
        {lines > 1 ? <TextArea rows={lines} /> : <Input />}
        {unit !== '' && <span className="unit">{unit}</span>}
      </span>
      {spec.help && !hideLabel && <Text slot="description">{spec.help}</Text>}
      <FieldError>{problem}</FieldError>
    </TextField>
  );
}

function linesOf({ type }: FieldSpec): number {
  if (type.is === 'text') return type.lines ?? 1;
  return type.is === 'path' || type.is === 'rings' || type.is === 'json' ? 5 : 1;
}

const isNumber = ({ type }: FieldSpec): boolean =>
  type.is === 'quantity' || type.is === 'count' || type.is === 'bare' || type.is === 'degrees';
