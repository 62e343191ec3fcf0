import type { Mapping } from '@plugside/records/import-fields';
import { useId, useState } from 'react';
import type { ImportView } from '../api/imports.ts';
import { Choice } from '../editing/Choice.tsx';
import { ColumnMeaning } from './ColumnMeaning.tsx';
import { firstValues } from './first-values.ts';
import {
  type Meaning,
  meaningsFor,
  meaningsOf,
  otherUseOf,
  withMeaning,
  withOtherMeaning,
  withoutMeaning,
} from './mapping-edits.ts';

interface ColumnListProps {
  view: ImportView;
  mapping: Mapping;
  onChange(mapping: Mapping): void;
}

const NOT_TAKEN = 'not taken';

/** More columns that nothing is taken from are folded away under the others. */
const MOST_UNFOLDED = 12;

/** Every column of the file, in its order, with what it is taken for. */
export function ColumnList({ view, mapping, onChange }: ColumnListProps) {
  const heading = useId();
  const { unused } = mapping;
  const columns = view.columns.filter((column) => !column.startsWith('refused_'));
  // As they were at first: a column that is then taken stays where it is.
  const [folded] = useState(() => (unused.length > MOST_UNFOLDED ? unused : []));
  const line = (column: string) => (
    <ColumnLine key={column} column={column} view={view} mapping={mapping} onChange={onChange} />
  );
  return (
    <section className="import-part" aria-labelledby={heading}>
      <h3 id={heading}>Columns</h3>
      <p className="unused-columns">
        {unused.length === 0 ? (
          'Every column is taken.'
        ) : (
          <>
            <b>Not taken:</b> {unused.join(', ')}.
          </>
        )}
      </p>
      <div className="column-heads" aria-hidden="true">
        <span>In the file</span>
        <span>First values</span>
        <span>Taken for</span>
      </div>
      <ul className="columns">{columns.filter((column) => !folded.includes(column)).map(line)}</ul>
      {folded.length > 0 && (
        <details className="folded-columns">
          <summary>{folded.length} more columns, of which nothing was taken</summary>
          <ul className="columns">{folded.map(line)}</ul>
        </details>
      )}
    </section>
  );
}

function ColumnLine({ column, view, mapping, onChange }: ColumnListProps & { column: string }) {
  const taken = meaningsFor(mapping, column);
  const other = otherUseOf(mapping, column);
  const options = meaningsOf(mapping.kind);
  const free = options.filter(({ value }) => !taken.includes(value));
  const values = firstValues(view.sample, column);
  return (
    <li className={taken.length > 0 || other ? 'column-line' : 'column-line column-unused'}>
      <b className="column-name">{column}</b>
      <span className="column-values">
        {values.length > 0 ? values.join(' · ') : 'blank in the first rows'}
      </span>
      <div className="column-taken">
        <div className="column-meanings">
          {taken.map((meaning) => (
            <ColumnMeaning
              key={meaning}
              column={column}
              meaning={meaning}
              options={[
                { value: NOT_TAKEN, text: 'not taken' },
                ...withOwn(options, free, meaning),
              ]}
              view={view}
              mapping={mapping}
              onMeaning={(next) =>
                onChange(
                  next === NOT_TAKEN
                    ? withoutMeaning(mapping, column, meaning)
                    : withOtherMeaning(mapping, column, meaning, next as Meaning),
                )
              }
              onChange={onChange}
            />
          ))}
          {other && <span className="column-other">{other}</span>}
          {taken.length === 0 && (
            <Choice
              label={`${column} is taken for`}
              value={NOT_TAKEN}
              options={[{ value: NOT_TAKEN, text: other ? 'nothing else' : 'not taken' }, ...free]}
              onChange={(next) => onChange(withMeaning(mapping, column, next as Meaning))}
            />
          )}
        </div>
        {taken.length > 0 && (
          <Choice
            label={`${column} is also taken for`}
            value=""
            options={[{ value: '', text: '+ also' }, ...free]}
            onChange={(next) => onChange(withMeaning(mapping, column, next as Meaning))}
          />
        )}
      </div>
    </li>
  );
}

/** What is free to choose, and the one that is chosen, in the order of all. */
const withOwn = (
  options: ReturnType<typeof meaningsOf>,
  free: ReturnType<typeof meaningsOf>,
  own: Meaning,
) => options.filter((one) => one.value === own || free.includes(one));
