import type { FieldMapping, FieldType } from '@plugside/records/import-fields';
import { useState } from 'react';
import type { ImportView } from '../api/imports.ts';
import { Choice } from '../editing/Choice.tsx';
import { wordsSaid } from './first-values.ts';

interface WordChoicesProps {
  column: string;
  field: FieldMapping;
  type: Extract<FieldType, { is: 'choice' | 'yes-no' }>;
  view: ImportView;
  onChange(words: NonNullable<FieldMapping['words']>): void;
}

const AS_READ = 'as read';
const NOTHING = 'nothing';

/** What the list's own words and codes mean: "OOS" for out of service. */
export function WordChoices({ column, field, type, view, onChange }: WordChoicesProps) {
  const [open, setOpen] = useState(false);
  const said = wordsSaid(view.sample, column, field.field);
  if (said.length === 0) return null;
  const meanings = type.is === 'yes-no' ? ['yes', 'no'] : [...new Set(Object.values(type.words))];
  const choose = (word: string, meaning: string) => {
    const { [word]: _, ...rest } = field.words ?? {};
    const value = meaning === NOTHING ? null : type.is === 'yes-no' ? meaning === 'yes' : meaning;
    onChange(meaning === AS_READ ? rest : { ...rest, [word]: value });
  };
  const unread = said.filter(({ refused }) => refused);
  // Opened where something is to be done, and not shut under the finger that does it.
  if (unread.length > 0 && !open) setOpen(true);
  return (
    <details className="words" open={open || undefined}>
      <summary>
        {unread.length > 0
          ? `${unread.length} of its words ${unread.length === 1 ? 'is' : 'are'} not understood`
          : 'Its words'}
      </summary>
      <ul>
        {said.map(({ word, text, means, refused }) => (
          <li key={word} className="word-line">
            <span className="word">{text}</span>
            <span>
              means{' '}
              <Choice
                label={`“${text}” in ${column} means`}
                value={chosen(field.words, word)}
                options={[
                  { value: AS_READ, text: means ?? asRead(type, word, refused) },
                  ...meanings.map((one) => ({ value: one, text: one })),
                  { value: NOTHING, text: 'nothing: leave it blank' },
                ]}
                onChange={(meaning) => choose(word, meaning)}
              />
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** A word of the field's own, in a row that did not come through for something else. */
function asRead(type: WordChoicesProps['type'], word: string, refused: boolean): string {
  const own = type.is === 'choice' ? type.words[word.replaceAll('_', ' ')] : undefined;
  if (own !== undefined) return own;
  return refused ? 'not understood: refused' : 'as it stands';
}

function chosen(words: FieldMapping['words'], word: string): string {
  const value = words?.[word];
  if (value === undefined) return AS_READ;
  if (value === null) return NOTHING;
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
}
