import { mostRadioCharacters } from '@plugside/drill';
import { useId } from 'react';

interface WordsFieldProps {
  /** For the ear; the field stands among words that say it to the eye. */
  label: string;
  placeholder?: string;
  value: string;
  isInvalid?: boolean;
  onChange(words: string): void;
}

/** A line of the instructor's own words, no longer than what is said by radio. */
export function WordsField({ label, placeholder, value, isInvalid, onChange }: WordsFieldProps) {
  const id = useId();
  return (
    <>
      <label className="hidden-text" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        className="room-input"
        type="text"
        autoComplete="off"
        placeholder={placeholder}
        maxLength={mostRadioCharacters}
        value={value}
        aria-invalid={isInvalid || undefined}
        onChange={(event) => onChange(event.target.value)}
      />
    </>
  );
}
