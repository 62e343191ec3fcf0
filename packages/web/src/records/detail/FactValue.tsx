import { type Kind, kindLabels } from '@plugside/records/model';
import { useLoaded } from '../../api/use-loaded.ts';
import { useUnits } from '../../editing/use-units.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { recordPath } from '../address.ts';
import type { FieldSpec } from '../fields/field.ts';
import type { Values } from '../form/draft.ts';
import { recordsWhere } from '../lookups.ts';
import { recordTitle, valueWords } from '../words.ts';

/** A value of a record: in words, or with links where it names other records. */
export function FactValue({ spec, value }: { spec: FieldSpec; value: unknown }) {
  const units = useUnits();
  const { type } = spec;
  if (type.is === 'record') return <RecordLinks kind={type.to} ids={[value as string]} />;
  if (type.is === 'records') return <RecordLinks kind={type.to} ids={value as string[]} />;
  if (type.is === 'rows') return <RowsTable columns={type.columns} rows={value as Values[]} />;
  const words = valueWords(spec, value, units) ?? '';
  if ((type.is === 'text' && type.lines && type.lines > 3) || type.is === 'json') {
    return <LongText words={words} />;
  }
  return <span className="fact-value">{words}</span>;
}

const SHORT = 160;

function LongText({ words }: { words: string }) {
  if (words.length <= SHORT) return <span className="fact-value">{words}</span>;
  return (
    <details className="long-text">
      <summary>{words.length.toLocaleString('en-US')} characters</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it */}
      <pre tabIndex={0}>{words}</pre>
    </details>
  );
}

interface OthersProps {
  kind: Kind;
  ids: readonly string[];
}

function useTitles({ kind, ids }: OthersProps): (id: string) => string {
  const units = useUnits();
  const [loaded] = useLoaded(ids.length === 0 ? null : `${kind}:${ids.join()}`, (signal) =>
    recordsWhere(kind, 'id', ids, signal),
  );
  const found: readonly Values[] = loaded.state === 'ready' ? loaded.value : [];
  const titles = new Map(found.map((one) => [one.id, recordTitle(kind, one, units)]));
  const [one] = kindLabels[kind];
  return (id) => titles.get(id) ?? (loaded.state === 'loading' ? '…' : `a ${one}`);
}

function RecordLinks(props: OthersProps) {
  const titleOf = useTitles(props);
  return (
    <span className="fact-links">
      {props.ids.map((id) => (
        <PlaceLink key={id} href={recordPath(props.kind, id)}>
          {titleOf(id)}
        </PlaceLink>
      ))}
    </span>
  );
}

/** What records are called, without the way to them. */
export function RecordNames(props: OthersProps) {
  const titleOf = useTitles(props);
  return props.ids.length === 0 ? 'none' : props.ids.map(titleOf).join(', ');
}

function RowsTable({ columns, rows }: { columns: readonly FieldSpec[]; rows: readonly Values[] }) {
  const units = useUnits();
  const used = columns.filter(({ field }) => rows.some((row) => row[field] !== undefined));
  return (
    <table className="fact-table">
      <thead>
        <tr>
          {used.map(({ field, label }) => (
            <th key={field} scope="col">
              {label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows of a record have no other name
          <tr key={at}>
            {used.map((column) => (
              <td key={column.field}>{valueWords(column, row[column.field], units) ?? '—'}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
