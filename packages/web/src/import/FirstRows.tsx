import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import type { ImportView, SampleRow } from '../api/imports.ts';
import { useUnits } from '../editing/use-units.ts';
import { rowsText } from './count-words.ts';
import { cellText, shortText } from './first-values.ts';
import { fieldLabel, understoodLines } from './understood-words.ts';

const SHOWN_AT_FIRST = 8;

/** A row of more columns is shown without its blank ones. */
const SHORT_ROW = 20;

/** The first rows as they stand beside what becomes of them. */
export function FirstRows({ view }: { view: ImportView }) {
  const heading = useId();
  const [all, setAll] = useState(false);
  const { sample } = view;
  const count = (is: SampleRow['understood']['is']) =>
    sample.filter(({ understood }) => understood.is === is).length;
  const [refused, skipped] = [count('refused'), count('skipped')];
  const shown = all ? sample : sample.slice(0, SHOWN_AT_FIRST);
  return (
    <section className="import-part" aria-labelledby={heading}>
      <h3 id={heading}>First rows, as understood</h3>
      <p role="status">
        Of the first {rowsText(sample.length)}, {count('record')} understood
        {refused > 0 && (
          <>
            , <span className="caution-word">{refused} to be refused</span>
          </>
        )}
        {skipped > 0 && `, ${skipped} skipped`}.
      </p>
      <ul className="first-rows">
        {shown.map((row, at) => (
          <li key={row.row}>
            <RowLine row={row} view={view} open={at === 0} />
          </li>
        ))}
      </ul>
      {sample.length > shown.length && (
        <Button className="plain-button" onPress={() => setAll(true)}>
          Show {rowsText(sample.length)}
        </Button>
      )}
    </section>
  );
}

function RowLine({ row, view, open }: { row: SampleRow; view: ImportView; open: boolean }) {
  const { understood } = row;
  const shown =
    view.columns.length <= SHORT_ROW
      ? view.columns
      : view.columns.filter(
          (column) => cellText(row.values[column]) !== '' || faultIn(row, column),
        );
  const blank = view.columns.length - shown.length;
  return (
    <details className="row-line" open={open || undefined}>
      <summary>
        <span className="row-number">Row {row.row}</span>
        <span className="row-says">
          {understood.is === 'record' && nameOf(row, view)}
          {understood.is === 'skipped' && (
            <span className="soft-text">skipped: of another kind</span>
          )}
          {understood.is === 'refused' && (
            <>
              <span className="caution-word">Refused.</span> {understood.refusal.reason}
            </>
          )}
        </span>
      </summary>
      <div className="row-both">
        <div>
          <h4>In the file</h4>
          <dl className="row-facts">
            {shown.map((column) => (
              <div key={column} className={faultIn(row, column) ? 'row-fault' : undefined}>
                <dt>{column}</dt>
                <dd>
                  {shortText(cellText(row.values[column]), 120) || (
                    <span className="soft-text">blank</span>
                  )}
                </dd>
              </div>
            ))}
          </dl>
          {blank > 0 && <p className="hint">{blank} blank columns are left out.</p>}
        </div>
        <div>
          <h4>As understood</h4>
          <Understood row={row} view={view} />
        </div>
      </div>
    </details>
  );
}

function Understood({ row, view }: { row: SampleRow; view: ImportView }) {
  const units = useUnits();
  const { understood } = row;
  if (understood.is === 'skipped') {
    return <p>Nothing: the row is of another kind, so it is passed over.</p>;
  }
  if (understood.is === 'refused') {
    const { reason, remedy } = understood.refusal;
    return (
      <p>
        <span className="caution-word">Refused.</span> {reason} {remedy}
      </p>
    );
  }
  return (
    <>
      <dl className="row-facts">
        {understoodLines(view.kind, understood.fields, units).map(
          ({ field, label, value, origin }) => (
            <div key={field}>
              <dt>{label}</dt>
              <dd>
                {value}
                {origin && <span className="fact-origin">{origin}</span>}
              </dd>
            </div>
          ),
        )}
      </dl>
      {understood.remarks.map((remark) => (
        <p key={remark} className="soft-text">
          {remark}
        </p>
      ))}
    </>
  );
}

function nameOf({ understood }: SampleRow, view: ImportView): string {
  if (understood.is !== 'record') return '';
  const { name, testedOn } = understood.fields;
  if (typeof name === 'string' && name !== '') return name;
  if (typeof testedOn === 'string') return `${fieldLabel(view.kind, 'testedOn')} ${testedOn}`;
  return 'without a name';
}

const faultIn = ({ understood }: SampleRow, column: string) =>
  understood.is === 'refused' && understood.refusal.column === column;
