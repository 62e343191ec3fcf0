import { useEffect, useState } from 'react';
import { FieldError, Input, Label, TextField } from 'react-aria-components';

interface TextEntryProps {
  label: string;
  value: string;
  /** Told when an entry is finished, without the space around it. */
  onChange(text: string): void;
  /** What is told where nothing stands in the field. */
  whenBlank: string;
  /** What is wrong with the value as it stands. */
  problem?: string | undefined;
}

/** A line of text that counts once it is finished: on Enter, or when the field is left. */
export function TextEntry({ label, value, onChange, whenBlank, problem }: TextEntryProps) {
  const [draft, setDraft] = useState(value);
  const [blank, setBlank] = useState(false);
  const shown = blank ? whenBlank : draft === value ? problem : undefined;
  useEffect(() => setDraft(value), [value]);
  const settle = () => {
    const text = draft.trim();
    setBlank(text === '');
    if (text !== '' && text !== value) onChange(text);
  };
  return (
    <TextField
      className="text-entry"
      value={draft}
      onChange={setDraft}
      onBlur={settle}
      onKeyDown={(event) => {
        if (event.key === 'Enter') settle();
      }}
      isInvalid={shown !== undefined}
      autoComplete="off"
    >
      <Label>{label}</Label>
      <Input />
      <FieldError>{shown}</FieldError>
    </TextField>
  );
}
