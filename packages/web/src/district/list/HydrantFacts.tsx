import { originOf, type Stored } from '@plugside/records/model';
import { newRoomFor } from '../../drill/together/address.ts';
import { useUnits } from '../../editing/use-units.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import type { MapHydrant } from '../district.ts';
import { classWords, testWords, todayIso } from '../words.ts';
import { type Fact, Facts } from './Facts.tsx';
import { HydrantMark } from './HydrantMark.tsx';

/** A hydrant: what it gives, and what is known of it. */
export function HydrantFacts({
  record,
  hydrant,
}: {
  record: Stored<'hydrants'>;
  hydrant: MapHydrant;
}) {
  const units = useUnits();
  const inches = (value: number | null | undefined) =>
    value === null || value === undefined ? null : units.text(value, 'diameter');
  const facts: Fact[] = [
    { field: 'type', name: 'Type', value: record.type ?? null },
    { field: 'mainIn', name: 'Main', value: inches(record.mainIn) },
    { field: 'main', name: 'Which main', value: record.main ?? null },
    { field: 'mainFedFrom', name: 'Main is fed from', value: record.mainFedFrom ?? null },
    { field: 'steamerIn', name: 'Large outlet', value: inches(record.steamerIn) },
    {
      field: 'sideOutlets',
      name: 'Side outlets',
      value: `${record.sideOutlets} of ${inches(record.sideOutletIn)}`,
    },
    {
      field: 'elevationFt',
      name: 'Height',
      value: record.elevationFt === undefined ? null : units.text(record.elevationFt, 'length'),
    },
    { field: 'owner', name: 'Owner', value: record.owner ?? null },
  ];
  const out = record.status === 'out of service';
  return (
    <section className="panel-part" aria-label={`Hydrant: ${record.name}`}>
      <h2 className="panel-title">
        <HydrantMark of={hydrant} /> {record.name}
      </h2>
      {out && (
        <p className="caution">
          <span className="caution-shape" aria-hidden="true" />
          <span>Out of service{record.statusReason ? `: ${record.statusReason}` : ''}.</span>
        </p>
      )}
      {hydrant.q20Gpm !== null && (
        <p className="needed figures">
          <span className="figure">{units.number(hydrant.q20Gpm, 'flow')}</span>{' '}
          <span className="unit">{units.of(hydrant.q20Gpm, 'flow').unit}</span> at{' '}
          {units.text(20, 'pressure')}
          <span className="fact-origin">
            {classWords(hydrant.class)} · {testWords(hydrant, todayIso())}
          </span>
        </p>
      )}
      {hydrant.testedOn === null && <p className="needed">No flow test on record.</p>}
      <details className="more-facts">
        <summary>What is on record</summary>
        <Facts facts={facts} origins={(field) => originOf('hydrants', record, field)} />
        <p className="link-row">
          <PlaceLink className="record-way" href={`/records/hydrants/${record.id}`}>
            Open its record
          </PlaceLink>
          <PlaceLink className="record-way" href={newRoomFor({ hydrant: record.id })}>
            Drill on it
          </PlaceLink>
        </p>
      </details>
    </section>
  );
}
