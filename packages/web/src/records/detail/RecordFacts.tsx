import { type Kind, originOf, type RecordOrigin } from '@plugside/records/model';
import { originWords } from '../../district/list/Facts.tsx';
import { useUnits } from '../../editing/use-units.ts';
import type { FieldSpec } from '../fields/field.ts';
import { fieldTables } from '../fields/field-tables.ts';
import type { Values } from '../form/draft.ts';
import { valueWords } from '../words.ts';
import { FactValue } from './FactValue.tsx';

/** Every field in trade words, with its unit and where its value comes from. */
export function RecordFacts({ kind, record }: { kind: Kind; record: Values }) {
  const units = useUnits();
  const table = fieldTables[kind].filter(({ field, elsewhere }) => field !== 'name' && !elsewhere);
  const origins = (record.origins ?? {}) as Readonly<Record<string, RecordOrigin>>;
  const known = table.filter((spec) => valueWords(spec, record[spec.field], units) !== null);
  const empty = table.filter((spec) => !known.includes(spec));
  return (
    <section className="record-facts" aria-label="What is on record">
      <dl>
        {known.map((spec) => (
          <div key={spec.field} className={`record-fact record-fact-${spec.type.is}`}>
            <dt>{spec.label}</dt>
            <dd>
              <FactValue spec={spec} value={record[spec.field]} />
              {hasOrigin(spec, origins) && (
                <span className="fact-origin">
                  {originWords(originOf(kind, record, spec.field))}
                </span>
              )}
            </dd>
          </div>
        ))}
      </dl>
      {empty.length > 0 && (
        <p className="soft-text facts-empty">
          Not on record: {empty.map(({ label }) => label.toLowerCase()).join(', ')}.
        </p>
      )}
      <p className="soft-text facts-changed">
        Version {String(record.version)}, last changed {dayOf(record.updatedAt)}
      </p>
    </section>
  );
}

/** A note and the list's own keys are nobody's measurement. */
const PLAIN: ReadonlySet<string> = new Set(['note', 'externalSource', 'externalId']);

const hasOrigin = ({ field }: FieldSpec, origins: Readonly<Record<string, RecordOrigin>>) =>
  !PLAIN.has(field) || origins[field] !== undefined;

const dayOf = (moment: unknown): string => String(moment).slice(0, 10);
