import type { RecordOrigin } from '@plugside/records/model';
import { FieldError, Input, Label, TextField } from 'react-aria-components';
import { Choice } from '../../editing/Choice.tsx';
import { WordField } from '../../field-tests/WordField.tsx';
import { type OriginDraft, originDraft, originKinds } from './origin-draft.ts';

interface OriginEntryProps {
  /** The field's label. */
  of: string;
  draft: OriginDraft | undefined;
  before: RecordOrigin | undefined;
  onChange(draft: OriginDraft): void;
  problem: string | undefined;
}

/** Where a value comes from: its kind, in words, and since when. */
export function OriginEntry({ of, draft, before, onChange, problem }: OriginEntryProps) {
  const origin = draft ?? originDraft(before);
  const change = (part: Partial<OriginDraft>) => onChange({ ...origin, ...part });
  return (
    <div className="origin-entry">
      <Choice<OriginDraft['kind']>
        label={`${of} comes from`}
        value={origin.kind}
        options={[
          { value: '', text: 'entered by the department' },
          ...originKinds.map((kind) => ({ value: kind, text: kind })),
        ]}
        onChange={(kind) => change({ kind })}
      />
      {origin.kind !== '' && (
        <div className="origin-words">
          <TextField
            className="test-field"
            isInvalid={problem !== undefined}
            validationBehavior="aria"
            value={origin.text}
            maxLength={500}
            onChange={(text) => change({ text })}
            autoComplete="off"
          >
            <Label>In words</Label>
            <span className="test-field-line">
              <Input />
            </span>
            <FieldError>{problem}</FieldError>
          </TextField>
          <WordField
            label="Since"
            type="date"
            value={origin.date}
            onChange={(date) => change({ date })}
          />
        </div>
      )}
    </div>
  );
}
