import type { RecordOrigin } from '@plugside/records/model';

export interface Fact {
  /** Field of the record, for its origin. */
  field: string;
  name: string;
  value: string | null;
}

/** What is known of a record, each value with where it comes from. */
export function Facts({
  facts,
  origins,
}: {
  facts: readonly Fact[];
  origins(field: string): RecordOrigin | undefined;
}) {
  return (
    <dl className="facts">
      {facts.map(({ field, name, value }) => (
        <div key={field} className="fact-row">
          <dt>{name}</dt>
          <dd>
            {value === null ? (
              <span className="soft-text">not on record</span>
            ) : (
              <>
                <span className="fact-value">{value}</span>{' '}
                <span className="fact-origin">{originWords(origins(field))}</span>
              </>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** As the store writes it where a person has changed a value. */
const BY_HAND = 'entered by hand';

/** Where a value comes from; without a note of it, somebody here typed it in. */
export function originWords(origin: RecordOrigin | undefined): string {
  if (!origin) return 'entered by the department';
  const day = origin.date ? `, ${origin.date}` : '';
  if (origin.kind === 'department' && origin.text === BY_HAND) {
    return `entered by the department${day}`;
  }
  return `${origin.kind}: ${origin.text}${day}`;
}
