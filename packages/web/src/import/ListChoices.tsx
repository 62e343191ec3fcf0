import type { Mapping } from '@plugside/records/import-fields';
import { useId } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../editing/Choice.tsx';
import { TextEntry } from './TextEntry.tsx';

interface ListChoicesProps {
  mapping: Mapping;
  columns: readonly string[];
  onChange(mapping: Mapping): void;
}

const NONE = '';

/** What the list is called and how its rows are known again: so that nothing is ever doubled. */
export function ListChoices({ mapping, columns, onChange }: ListChoicesProps) {
  const heading = useId();
  const { sourceName, idColumn, only, dateOrder } = mapping;
  const readsDates = mapping.fields.some(({ field }) => field === 'testedOn');
  return (
    <section className="import-part" aria-labelledby={heading}>
      <h3 id={heading}>The list</h3>
      <div className="choice-grid">
        <div>
          <TextEntry
            label="Name of the list"
            value={sourceName}
            whenBlank="Give the list a name."
            onChange={(text) => onChange({ ...mapping, sourceName: text })}
          />
          <p className="hint">
            Keep it the same from month to month: with the key it is how rows are known again.
          </p>
        </div>
        <div>
          <span className="choice-label">Key of each row</span>
          <Choice
            label="Key of each row"
            value={idColumn ?? NONE}
            options={[
              { value: NONE, text: 'no column: name and place' },
              ...columns.map((column) => ({ value: column, text: column })),
            ]}
            onChange={(column) => {
              const { idColumn: _, ...rest } = mapping;
              onChange(column === NONE ? rest : { ...rest, idColumn: column });
            }}
          />
          <p className="hint">
            {idColumn === undefined
              ? 'A row whose name or place changes counts as a new one. A column with lasting ids is better.'
              : 'An id that the list’s owner never gives to another row.'}
          </p>
        </div>
        {readsDates && (
          <div>
            <span className="choice-label">Dates such as 03/04/2024</span>
            <Choice
              label="Order of dates"
              value={dateOrder ?? 'ask'}
              options={[
                { value: 'ask', text: 'not said: refused' },
                { value: 'month first', text: 'month first: March 4' },
                { value: 'day first', text: 'day first: 3 April' },
              ]}
              onChange={(order) => {
                const { dateOrder: _, ...rest } = mapping;
                onChange(order === 'ask' ? rest : { ...rest, dateOrder: order });
              }}
            />
          </div>
        )}
        {only && (
          <div>
            <span className="choice-label">Rows taken</span>
            <p>
              Only where{' '}
              {only
                .map(({ column, values }) =>
                  values.includes('*')
                    ? `${column} is not blank`
                    : `${column} is ${values.join(' or ')}`,
                )
                .join(', or ')}
              ; the others are skipped.
            </p>
            <Button
              className="plain-button"
              onPress={() => {
                const { only: _, ...rest } = mapping;
                onChange(rest);
              }}
            >
              Take every row
            </Button>
          </div>
        )}
      </div>
    </section>
  );
}
