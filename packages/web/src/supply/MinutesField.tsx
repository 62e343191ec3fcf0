import { type KeyboardEvent, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { MINUTES, readMinutes, shownMinutes, steppedMinutes } from './read-minutes.ts';

interface MinutesFieldProps {
  /** Spoken name with its unit. */
  label: string;
  value: number;
  isDisabled?: boolean;
  onChange(minutes: number): void;
}

/** Minutes, typed or stepped by halves. What cannot be taken stays as typed, with what can. */
export function MinutesField({ label, value, isDisabled, onChange }: MinutesFieldProps) {
  const [draft, setDraft] = useState<string | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const messageId = useId();
  const clear = () => {
    setDraft(null);
    setProblem(null);
  };
  const step = (steps: 1 | -1) => {
    clear();
    onChange(steppedMinutes(value, steps));
  };
  const settle = () => {
    if (draft === null) return;
    if (draft.trim() === shownMinutes(value)) {
      clear();
      return;
    }
    const read = readMinutes(draft, value);
    if (!read.ok) {
      setProblem(read.message);
      return;
    }
    clear();
    onChange(read.minutes);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault();
      step(event.key === 'ArrowUp' ? 1 : -1);
    } else if (event.key === 'Enter') settle();
    else if (event.key === 'Escape' && draft !== null) {
      event.stopPropagation();
      clear();
    }
  };
  return (
    <div className="minutes" data-disabled={isDisabled || undefined}>
      <div className="minutes-group">
        <Button
          aria-label={`Less: ${label}`}
          excludeFromTabOrder
          preventFocusOnPress
          isDisabled={isDisabled ?? false}
          onPress={() => step(-1)}
        >
          −
        </Button>
        <input
          type="text"
          role="spinbutton"
          inputMode="decimal"
          autoComplete="off"
          aria-label={label}
          aria-valuenow={value}
          aria-valuemin={MINUTES.least}
          aria-valuemax={MINUTES.greatest}
          aria-valuetext={`${shownMinutes(value)} min`}
          aria-invalid={problem !== null || undefined}
          aria-describedby={problem ? messageId : undefined}
          disabled={isDisabled}
          value={draft ?? shownMinutes(value)}
          onChange={(event) => {
            setDraft(event.target.value);
            setProblem(null);
          }}
          onKeyDown={onKeyDown}
          onBlur={settle}
        />
        <span className="unit">min</span>
        <Button
          aria-label={`More: ${label}`}
          excludeFromTabOrder
          preventFocusOnPress
          isDisabled={isDisabled ?? false}
          onPress={() => step(1)}
        >
          +
        </Button>
      </div>
      {problem && (
        <p className="minutes-problem" id={messageId} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
