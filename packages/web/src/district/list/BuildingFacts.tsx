import { originOf, type Stored } from '@plugside/records/model';
import { useUnits } from '../../editing/use-units.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { type Fact, Facts, originWords } from './Facts.tsx';

const yesNo = (value: boolean | undefined): string | null =>
  value === undefined ? null : value ? 'yes' : 'no';

/** A building: what it needs, and what is known of it. */
export function BuildingFacts({ building }: { building: Stored<'buildings'> }) {
  const units = useUnits();
  const { neededGpm } = building;
  const origins = (field: string) => originOf('buildings', building, field);
  const area = building.areaFt2;
  const facts: Fact[] = [
    { field: 'occupancy', name: 'Use', value: building.occupancy ?? null },
    { field: 'construction', name: 'Built', value: building.construction ?? null },
    { field: 'storeys', name: 'Storeys', value: building.storeys?.toString() ?? null },
    {
      field: 'areaFt2',
      name: 'Ground floor',
      value: area === undefined ? null : units.text(area, 'area'),
    },
    {
      field: 'elevationFt',
      name: 'Height of ground',
      value: building.elevationFt === undefined ? null : units.text(building.elevationFt, 'length'),
    },
    { field: 'sprinklered', name: 'Sprinklers', value: yesNo(building.sprinklered) },
    { field: 'standpipe', name: 'Standpipe', value: yesNo(building.standpipe) },
  ];
  return (
    <section className="panel-part" aria-label={`Building: ${building.name}`}>
      <h2 className="panel-title">{building.name}</h2>
      {building.address && <p className="soft-text">{building.address}</p>}
      {neededGpm === undefined ? (
        <p className="needed">No needed fire flow on record.</p>
      ) : (
        <p className="needed figures">
          Needs <span className="figure">{units.number(neededGpm, 'flow')}</span>{' '}
          <span className="unit">{units.of(neededGpm, 'flow').unit}</span>
          <span className="fact-origin">{originWords(origins('neededGpm'))}</span>
        </p>
      )}
      <details className="more-facts">
        <summary>What is on record</summary>
        <Facts facts={facts} origins={origins} />
        <PlaceLink className="record-way" href={`/records/buildings/${building.id}`}>
          Open its record
        </PlaceLink>
      </details>
    </section>
  );
}
