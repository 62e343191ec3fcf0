import type { ImportReport, NotedRow } from '@plugside/records/import-fields';
import { rowsText } from './count-words.ts';

const HEADS: Readonly<Record<NotedRow['what'], string>> = {
  'cannot be used': 'kept, but plans cannot use them',
  'kept in the note': 'with a value that is left out or rounded up, and kept in the note',
};

/** Rows that were taken and should be looked at, by what there is to see. */
export function NotedRows({ report }: { report: ImportReport }) {
  const { noted, notedCount } = report;
  const kinds = Object.keys(HEADS) as NotedRow['what'][];
  return kinds.map((what) => {
    const rows = noted.filter((one) => one.what === what);
    if (rows.length === 0) return null;
    return (
      <details key={what} className="kept-values" open={what === 'cannot be used'}>
        <summary>
          {rowsText(rows.length)} {HEADS[what]}
        </summary>
        <ul>
          {rows.map((one) => (
            <li key={`${one.row}:${one.text}`} className="kept-line">
              <b>
                Row {one.row}
                {one.record && `, ${one.record}`}
              </b>
              <span>{one.text}</span>
            </li>
          ))}
        </ul>
        {notedCount > noted.length && (
          <p className="soft-text">The first {noted.length.toLocaleString('en-US')} are shown.</p>
        )}
      </details>
    );
  });
}
