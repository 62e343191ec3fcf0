import { Button } from 'react-aria-components';
import type { FieldSpec } from '../fields/field.ts';
import { type Drafts, isBlank, type RowDraft, rowDrafts, type Values } from './draft.ts';
import type { FieldEntryProps } from './entry-props.ts';
import { OneEntry } from './OneEntry.tsx';

/** Values that belong together, under one name. */
export function PartsEntry(props: FieldEntryProps & { parts: readonly FieldSpec[] }) {
  const { kind, spec, at, draft, before, onChange, problems, parts } = props;
  const cells: Drafts = draft?.is === 'parts' ? draft.cells : {};
  return (
    <fieldset className="test-group parts-entry">
      <legend>{spec.label}</legend>
      <div className="parts-fields">
        {parts.map((part) => (
          <OneEntry
            key={part.field}
            kind={kind}
            spec={part}
            within={[spec.field]}
            at={`${at}.${part.field}`}
            draft={cells[part.field]}
            before={(before as Values | undefined)?.[part.field]}
            onChange={(cell) => onChange({ is: 'parts', cells: { ...cells, [part.field]: cell } })}
            problems={problems}
          />
        ))}
      </div>
      {spec.help && <p className="field-help">{spec.help}</p>}
      {problems[at] && <p className="field-problem">{problems[at]}</p>}
    </fieldset>
  );
}

interface RowsEntryProps extends FieldEntryProps {
  columns: readonly FieldSpec[];
  /** What a row is: "load". */
  one: string;
}

/** A list, one row under the other, each cell a field. */
export function RowsEntry(props: RowsEntryProps) {
  const { kind, spec, at, draft, before, onChange, problems, columns, one } = props;
  const rows = draft?.is === 'rows' ? draft.rows : rowDrafts(before);
  const put = (next: readonly RowDraft[]) => onChange({ is: 'rows', rows: next });
  // Rows without anything in them are not written, and problems count the others.
  let written = -1;
  return (
    <fieldset className="test-group rows-entry">
      <legend>{spec.label}</legend>
      {spec.help && <p className="field-help">{spec.help}</p>}
      {rows.map((row, index) => {
        if (!isBlank(columns, row)) written += 1;
        const place = `${at}[${written}]`;
        return (
          <div className="rows-row" key={row.key}>
            <span className="rows-number" aria-hidden="true">
              {index + 1}
            </span>
            <div className="rows-cells">
              {columns.map((column) => (
                <OneEntry
                  key={column.field}
                  kind={kind}
                  spec={column}
                  within={[spec.field]}
                  at={`${place}.${column.field}`}
                  spoken={`${column.label}, ${one} ${index + 1}`}
                  draft={row.cells[column.field]}
                  before={row.before[column.field]}
                  onChange={(cell) =>
                    put(
                      rows.map((each) =>
                        each.key === row.key
                          ? { ...each, cells: { ...each.cells, [column.field]: cell } }
                          : each,
                      ),
                    )
                  }
                  problems={problems}
                />
              ))}
            </div>
            <Button
              className="quiet-button remove-button"
              aria-label={`Take ${one} ${index + 1} away`}
              onPress={() => put(rows.filter(({ key }) => key !== row.key))}
            >
              ×
            </Button>
          </div>
        );
      })}
      {problems[at] && <p className="field-problem">{problems[at]}</p>}
      <Button
        className="quiet-button add-button"
        onPress={() => {
          const key = Math.max(-1, ...rows.map((row) => row.key)) + 1;
          put([...rows, { key, before: {}, cells: {} }]);
        }}
      >
        + Add a {one}
      </Button>
    </fieldset>
  );
}
