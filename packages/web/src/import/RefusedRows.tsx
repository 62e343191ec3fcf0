import type { ImportReport, Mapping } from '@plugside/records/import-fields';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import {
  type ImportView,
  mendRows,
  type RefusedRow,
  refusedCsvUrl,
  refusedRows,
} from '../api/imports.ts';
import { useLoaded } from '../api/use-loaded.ts';
import { rowsText } from './count-words.ts';
import { MendRow } from './MendRow.tsx';
import { isMended, keepDrafts, keptDrafts, type MendDrafts, NOT_MENDED } from './mend-drafts.ts';
import type { ImportHandle } from './use-import.ts';

interface RefusedRowsProps {
  view: ImportView;
  report: ImportReport;
  mapping: Mapping;
  handle: ImportHandle;
}

const SHOWN_AT_ONCE = 20;

/** Refused rows by reason, and each of them to be mended where it stands. */
export function RefusedRows({ view, report, mapping, handle }: RefusedRowsProps) {
  const [loaded, retry] = useLoaded(`${view.id}:${view.elapsedMs}`, (signal) =>
    refusedRows(view.id, signal),
  );
  const [drafts, setDrafts] = useState(() => keptDrafts(view.id));
  const [shown, setShown] = useState(SHOWN_AT_ONCE);
  const rows = loaded.state === 'ready' ? loaded.value : [];
  const mended = Object.entries(drafts).filter(([, draft]) => isMended(draft));

  const change = (next: MendDrafts) => {
    setDrafts(next);
    keepDrafts(view.id, next);
  };
  const bringIn = async () => {
    const sent = mended.map(([row, draft]) => ({ row: Number(row), ...draft }));
    if (!(await handle.act(() => mendRows(view.id, sent)))) return;
    keepDrafts(view.id, null);
    await handle.run(report.dryRun);
  };
  return (
    <section className="refused" aria-labelledby="refused-rows">
      <h3 id="refused-rows">{rowsText(report.refusedCount)} refused</h3>
      <Reasons report={report} />
      <h4>Mend them here</h4>
      <p className="soft-text">
        Only what is at fault is shown. Mended rows go through with the whole file again: what is in
        already stays as it is, so nothing is doubled.
      </p>
      {loaded.state === 'failed' && (
        <p className="import-problem" role="alert">
          {loaded.reason}{' '}
          <Button className="plain-button" onPress={retry}>
            Try again
          </Button>
        </p>
      )}
      <ul className="mend-rows">
        {rows.slice(0, shown).map((row) => (
          <MendRow
            key={row.row}
            row={row}
            mapping={mapping}
            draft={drafts[row.row] ?? NOT_MENDED}
            onChange={(draft) => change({ ...drafts, [row.row]: draft })}
          />
        ))}
      </ul>
      {rows.length > shown && (
        <Button className="plain-button" onPress={() => setShown(shown + SHOWN_AT_ONCE)}>
          Show {Math.min(SHOWN_AT_ONCE, rows.length - shown)} more
        </Button>
      )}
      <div className="import-actions">
        <Button
          className={mended.length === 0 ? 'plain-button' : 'plain-button main-button'}
          isDisabled={mended.length === 0}
          onPress={() => void bringIn()}
        >
          {mendWords(mended.length, report.dryRun)}
        </Button>
        {view.hasRefusedFile && (
          <a className="plain-button link-button" href={refusedCsvUrl(view.id)} download>
            Download them as CSV
          </a>
        )}
      </div>
      <p className="soft-text">
        {mended.length === 0 && 'Nothing is mended yet. '}
        {hidden(rows, report)}Or mend the CSV in a spreadsheet and import it as it is: it keeps the
        list’s name and key.
      </p>
    </section>
  );
}

const mendWords = (count: number, dryRun: boolean) => {
  const rows = count === 0 ? 'mended rows' : `${count} mended ${count === 1 ? 'row' : 'rows'}`;
  return dryRun ? `Try again with ${rows}` : `Bring in ${rows}`;
};

const hidden = (rows: readonly RefusedRow[], { refusedCount }: ImportReport) =>
  refusedCount > rows.length && rows.length > 0
    ? `The first ${rows.length.toLocaleString('en-US')} are here, all of them in the CSV. `
    : '';

function Reasons({ report }: { report: ImportReport }) {
  return (
    <ul className="reasons">
      {report.byReason.map(({ code, count, example }) => {
        const remedy = report.refused.find((one) => one.code === code)?.remedy;
        return (
          <li key={code}>
            <b>
              {code}: {rowsText(count)}
            </b>
            <span>For example {example}</span>
            {remedy && <span className="soft-text">{remedy}</span>}
          </li>
        );
      })}
    </ul>
  );
}
