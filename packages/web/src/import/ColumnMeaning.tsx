import { fieldSpec, type Mapping, unitsOf } from '@plugside/records/import-fields';
import type { ImportView } from '../api/imports.ts';
import { Choice } from '../editing/Choice.tsx';
import { cellText } from './first-values.ts';
import { type Meaning, meaningText, withField } from './mapping-edits.ts';
import { WordChoices } from './WordChoices.tsx';

interface ColumnMeaningProps {
  column: string;
  meaning: Meaning;
  options: readonly { value: string; text: string }[];
  view: ImportView;
  mapping: Mapping;
  onMeaning(meaning: string): void;
  onChange(mapping: Mapping): void;
}

/** Under this, the guess is shown as one to look at. */
const SURE = 0.7;

const joinOptions = [
  { value: 'first', text: 'the first with a value' },
  { value: 'space', text: 'all, with a space between' },
  { value: 'named', text: 'all, each with its name' },
] as const;

/** One thing that a column is taken for, and how it is read. */
export function ColumnMeaning(props: ColumnMeaningProps) {
  const { column, meaning, options, view, mapping, onMeaning, onChange } = props;
  const name = meaning.startsWith('field:') ? meaning.slice('field:'.length) : null;
  const field = mapping.fields.find((one) => one.field === name);
  const type = name === null ? undefined : fieldSpec(mapping.kind, name)?.type;
  const text = meaningText(mapping.kind, meaning);
  const others = field?.columns.filter((one) => one !== column) ?? [];
  return (
    <div className="meaning">
      <div className="meaning-line">
        <Choice
          label={`${column} is taken for`}
          value={meaning as string}
          options={
            options.some(({ value }) => value === meaning)
              ? options
              : [...options, { value: meaning, text }]
          }
          onChange={onMeaning}
        />
        {field && type?.is === 'measure' && (
          <span className="meaning-how">
            in{' '}
            <Choice
              label={`Unit of ${column}`}
              value={field.unit ?? unitsOf(type.of)[0] ?? ''}
              options={unitsOf(type.of).map((unit) => ({ value: unit, text: unit }))}
              onChange={(unit) => onChange(withField(mapping, field.field, { unit }))}
            />
          </span>
        )}
        {field && asksDecimals(view, column, field.decimal, type?.is) && (
          <span className="meaning-how">
            <Choice
              label={`Decimals of ${column}`}
              value={field.decimal ?? 'point'}
              options={[
                { value: 'point', text: '1,234.5' },
                { value: 'comma', text: '1.234,5' },
              ]}
              onChange={(decimal) => onChange(withField(mapping, field.field, { decimal }))}
            />
          </span>
        )}
      </div>
      {field && others.length > 0 && (
        <p className="meaning-note">
          With {others.join(', ')}:{' '}
          <Choice
            label={`How the columns of ${text} are joined`}
            value={field.join ?? 'first'}
            options={joinOptions}
            onChange={(join) => onChange(withField(mapping, field.field, { join }))}
          />
        </p>
      )}
      {field && (
        <p className={field.confidence < SURE ? 'meaning-note meaning-doubt' : 'meaning-note'}>
          {field.confidence < SURE && <b>Look at this one. </b>}
          {field.why}
        </p>
      )}
      {field && (type?.is === 'choice' || type?.is === 'yes-no') && (
        <WordChoices
          column={column}
          field={field}
          type={type}
          view={view}
          onChange={(words) => onChange(withField(mapping, field.field, { words }))}
        />
      )}
    </div>
  );
}

/** Asked only where a number could be read in two ways. */
const asksDecimals = (
  { sample }: ImportView,
  column: string,
  decimal: 'point' | 'comma' | undefined,
  is: string | undefined,
) =>
  (is === 'measure' || is === 'number') &&
  (decimal === 'comma' || sample.some(({ values }) => /\d,\d/.test(cellText(values[column]))));
