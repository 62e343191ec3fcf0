import { formatNumber } from '@plugside/fireground';
import type { DistrictSummary } from '../../api/district.ts';
import { HydrantCards } from '../../paper/HydrantCards.tsx';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { kindPath } from '../address.ts';
import { shownKinds } from '../fields/field-tables.ts';
import { kindName } from '../words.ts';
import { Downloads } from './Downloads.tsx';
import { GroundHeights } from './GroundHeights.tsx';
import { TestsDue } from './TestsDue.tsx';

interface StartPageProps {
  /** Null until it is known. */
  district: DistrictSummary | null;
  failed: string | null;
}

/** What is kept, what is due, and what can be brought in and taken along. */
export function StartPage({ district, failed }: StartPageProps) {
  const total = district && Object.values(district.counts).reduce((sum, one) => sum + one, 0);
  return (
    <section className="records-start" aria-labelledby="records-title">
      <div className="record-list-head">
        <h2 id="records-title" className="records-title">
          Records
        </h2>
        <PlaceLink className="plain-button main-button link-button" href="/import">
          Bring in a list
        </PlaceLink>
      </div>
      {failed && (
        <p className="tone-warning" role="alert">
          The records could not be read. {failed}
        </p>
      )}
      {district?.invented && (
        <p className="start-invented">
          <b>{district.name} is invented.</b> Its hydrants, tests, streets and buildings are made up
          for practice: plan nothing real on them. Start Plugside with{' '}
          <code>PLUGSIDE_DB=your-file.sqlite</code> to keep your own.
        </p>
      )}
      {district && total === 0 && (
        <p>
          Nothing is kept yet. <PlaceLink href="/import">Bring in a list</PlaceLink> of hydrants, or
          add the first one by hand.
        </p>
      )}
      {!district && !failed && (
        <p className="nothing" role="status">
          Reading…
        </p>
      )}
      <ul className="kind-cards">
        {shownKinds.map((kind) => (
          <li key={kind}>
            <PlaceLink className="kind-card" href={kindPath(kind)}>
              <span className="figures kind-card-count">
                {district ? formatNumber(district.counts[kind] ?? 0, 0) : '…'}
              </span>
              {kindName(kind)}
            </PlaceLink>
          </li>
        ))}
      </ul>
      <TestsDue />
      {district && <HydrantCards hydrants={district.counts.hydrants ?? 0} />}
      <GroundHeights />
      <Downloads />
    </section>
  );
}
