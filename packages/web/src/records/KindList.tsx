import { formatNumber } from '@plugside/fireground';
import type { Kind } from '@plugside/records/model';
import { Choice } from '../editing/Choice.tsx';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { goTo } from '../places/place.ts';
import { kindPath } from './address.ts';
import { shownKinds } from './fields/field-tables.ts';
import { kindName } from './words.ts';

interface KindListProps {
  here: Kind | null;
  /** Null while they are not known. */
  counts: Readonly<Record<string, number>> | null;
}

const shownCount = (counts: KindListProps['counts'], kind: Kind): string =>
  counts ? formatNumber(counts[kind] ?? 0, 0) : '';

/** Every kind beside the records, with how many there are. */
export function KindList({ here, counts }: KindListProps) {
  return (
    <nav className="kinds" aria-label="Kinds of record">
      <ul>
        <li>
          <PlaceLink
            href="/records"
            className="kind-link"
            aria-current={here === null ? 'page' : undefined}
          >
            Overview
          </PlaceLink>
        </li>
        {shownKinds.map((kind) => (
          <li key={kind}>
            <PlaceLink
              href={kindPath(kind)}
              className="kind-link"
              aria-current={kind === here ? 'page' : undefined}
            >
              {kindName(kind)}
              <span className="kind-count figures">{shownCount(counts, kind)}</span>
            </PlaceLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}

const START = 'start';

/** The same where there is no room beside. */
export function KindChooser({ here, counts }: KindListProps) {
  return (
    <div className="kind-chooser">
      <Choice<Kind | typeof START>
        label="Kind of record"
        value={here ?? START}
        options={[
          { value: START, text: 'Overview' },
          ...shownKinds.map((kind) => ({
            value: kind,
            text: counts ? `${kindName(kind)} (${shownCount(counts, kind)})` : kindName(kind),
          })),
        ]}
        onChange={(kind) => goTo(kind === START ? '/records' : kindPath(kind))}
      />
    </div>
  );
}
