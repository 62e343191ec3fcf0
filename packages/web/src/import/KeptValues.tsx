import type { ImportKind, ImportReport, KeptValue } from '@plugside/records/import-fields';
import { type Units, useUnits } from '../editing/use-units.ts';
import { fieldLabel, valueText } from './understood-words.ts';

/** Values that the department gave itself: the list says otherwise, and they were left as they are. */
export function KeptValues({ report }: { report: ImportReport }) {
  const units = useUnits();
  const { kind, kept, keptCount, dryRun } = report;
  return (
    <details className="kept-values">
      <summary>
        {keptCount.toLocaleString('en-US')} {keptCount === 1 ? 'value' : 'values'} of your own{' '}
        {dryRun ? 'would be kept' : 'kept'} where the list says otherwise
      </summary>
      <ul>
        {kept.map((one) => (
          <li key={`${one.row}:${one.field}`} className="kept-line">
            <b>
              {one.record}, {fieldLabel(kind, one.field).toLowerCase()}
            </b>
            <span>ours: {said(kind, one.field, one.ours, units)}</span>
            <span>theirs: {said(kind, one.field, one.theirs, units)}</span>
          </li>
        ))}
      </ul>
      {keptCount > kept.length && (
        <p className="soft-text">The first {kept.length.toLocaleString('en-US')} are shown.</p>
      )}
      <p className="soft-text">To take the list’s value, change it in the record itself.</p>
    </details>
  );
}

/** Numbers and yes-or-no come as text. */
function said(kind: ImportKind, field: string, text: KeptValue['ours'], units: Units): string {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === 'number' || typeof value === 'boolean' || Array.isArray(value)) {
      return valueText(kind, field, value, units);
    }
  } catch {
    // Words are no JSON.
  }
  return text;
}
