import type { ImportReport } from '@plugside/records/import-fields';
import { kindLabels } from '@plugside/records/model';
import { useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { ImportView } from '../api/imports.ts';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { rowsText, spentText } from './count-words.ts';
import { KeptValues } from './KeptValues.tsx';
import { NotedRows } from './NotedRows.tsx';
import { RefusedRows } from './RefusedRows.tsx';
import type { ImportHandle } from './use-import.ts';

interface ReportProps {
  view: ImportView;
  handle: ImportHandle;
  /** Brings in for good. */
  onRun(): void;
}

/** What a run made of the file, and what is left to mend. */
export function Report({ view, handle, onRun }: ReportProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { report, kind } = view;
  if (!report) return null;
  const many = kindLabels[kind][1];
  return (
    <section className="import-part report" aria-labelledby="import-report">
      <h2 id="import-report" ref={heading} tabIndex={-1}>
        {report.dryRun ? `Tried: ${view.name}` : `Brought in: ${view.name}`}
      </h2>
      <p className="import-lead">
        {report.dryRun ? (
          <>
            <b>Nothing was written.</b> This is what bringing in would do with{' '}
            {rowsText(report.rows)}.
          </>
        ) : (
          <>
            {rowsText(report.rows)} of the list “{report.sourceName}”, in{' '}
            {spentText(view.elapsedMs ?? 0)}.
          </>
        )}
      </p>
      <Counts report={report} many={many} />
      {report.otherKinds.length > 0 && (
        <p>
          Of the skipped rows, {otherKindsText(report)}. Import the file once more for each kind
          that is wanted.
        </p>
      )}
      {report.dryRun ? (
        <p className="import-actions">
          {report.added + report.changed > 0 ? (
            <Button className="plain-button main-button" onPress={onRun}>
              Bring in
            </Button>
          ) : (
            'There is nothing to bring in as it stands.'
          )}
        </p>
      ) : (
        <Onward kind={kind} many={many} />
      )}
      {report.notices.length > 0 && (
        <ul className="import-notices" aria-label="Noticed">
          {report.notices.map((notice) => (
            <li key={notice}>{notice}</li>
          ))}
        </ul>
      )}
      {report.notedCount > 0 && <NotedRows report={report} />}
      {report.keptCount > 0 && <KeptValues report={report} />}
      {report.refusedCount > 0 && view.mapping && (
        <RefusedRows view={view} report={report} mapping={view.mapping} handle={handle} />
      )}
    </section>
  );
}

const otherKindsText = ({ otherKinds }: ImportReport): string =>
  otherKinds
    .map(({ kind, count }) => {
      const label = kindLabels[kind][count === 1 ? 0 : 1];
      return `${count.toLocaleString('en-US')} ${count === 1 ? 'is a' : 'are'} ${label}`;
    })
    .join(', ');

function Counts({ report, many }: { report: ImportReport; many: string }) {
  const { added, changed, same, skipped, refusedCount } = report;
  const counts: [string, number][] = [
    [`${many} added`, added],
    ['changed', changed],
    ['unchanged', same],
    ['skipped, of another kind', skipped],
    ['refused', refusedCount],
  ];
  return (
    <dl className="import-counts figures">
      {counts.map(([name, count]) => (
        <div key={name} className={name === 'refused' && count > 0 ? 'count-refused' : undefined}>
          <dt>{name}</dt>
          <dd>{count.toLocaleString('en-US')}</dd>
        </div>
      ))}
    </dl>
  );
}

function Onward({ kind, many }: { kind: string; many: string }) {
  const onMap = kind !== 'rigs' && kind !== 'flow-tests';
  return (
    <ul className="onward">
      <li>
        <PlaceLink className="text-link" href={`/records/${kind}`}>
          The {many} on record
        </PlaceLink>
      </li>
      {onMap && (
        <li>
          <PlaceLink className="text-link" href="/district">
            See them on the district’s map
          </PlaceLink>
        </li>
      )}
      <li>
        <PlaceLink className="text-link" href="/import">
          Import another list
        </PlaceLink>
      </li>
    </ul>
  );
}
