import type { ReactNode } from 'react';
import { FormActions } from './FormActions.tsx';
import { type UnreadTexts, UnreadTextsContext } from './unread-texts.ts';
import { WordField } from './WordField.tsx';

interface TestScreenProps {
  /** What is tested: "Pump test of Engine 1". */
  spoken: string;
  title: string;
  /** How its numbers are to be read. */
  intro?: ReactNode;
  unread: UnreadTexts;
  /** What is missing; null where it can be saved. */
  missing: string | null;
  onSave(): void | Promise<void>;
  onCancel?: (() => void) | undefined;
  /** What the numbers say, beside the form. */
  found: ReactNode;
  children: ReactNode;
}

/** A test being written down, with what it says while the numbers come in. */
export function TestScreen(props: TestScreenProps) {
  const { spoken, title, intro, unread, missing, onSave, onCancel, found, children } = props;
  return (
    <section className="test-screen" aria-label={spoken}>
      <UnreadTextsContext value={unread}>
        <form className="test-form" onSubmit={(event) => event.preventDefault()}>
          <h2>{title}</h2>
          {intro && <p className="soft-text">{intro}</p>}
          {children}
          <FormActions
            missing={missing}
            saveText="Save test"
            onSave={onSave}
            {...(onCancel && { onCancel })}
          />
        </form>
      </UnreadTextsContext>
      <div className="test-found">{found}</div>
    </section>
  );
}

interface DayOfTestProps {
  day: string;
  onChange(day: string): void;
  /** What is wrong with it. */
  problem: string | null;
}

export function DayOfTest({ day, onChange, problem }: DayOfTestProps) {
  return (
    <WordField
      label="Tested on"
      type="date"
      value={day}
      onChange={onChange}
      problem={problem}
      required
    />
  );
}

interface WhoAndNoteProps {
  by: string;
  note: string;
  onChange(part: { by?: string; note?: string }): void;
}

/** Who tested, and what else is worth keeping. */
export function WhoAndNote({ by, note, onChange }: WhoAndNoteProps) {
  return (
    <>
      <WordField
        label="Tested by"
        value={by}
        maxLength={200}
        onChange={(who) => onChange({ by: who })}
      />
      <WordField
        wide
        label="Note"
        value={note}
        maxLength={4000}
        onChange={(words) => onChange({ note: words })}
      />
    </>
  );
}
