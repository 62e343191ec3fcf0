import { parseHoseSize } from '@plugside/fireground';
import { originOf, type Stored } from '@plugside/records/model';
import { type Units, useUnits } from '../../editing/use-units.ts';
import { type Fact, Facts } from './Facts.tsx';

/** A station and the rigs that stand in it. */
export function StationFacts({
  station,
  rigs,
}: {
  station: Stored<'stations'>;
  rigs: readonly Stored<'rigs'>[];
}) {
  const units = useUnits();
  const facts: Fact[] = [
    {
      field: 'elevationFt',
      name: 'Height of ground',
      value: station.elevationFt === undefined ? null : units.text(station.elevationFt, 'length'),
    },
    { field: 'note', name: 'Note', value: station.note ?? null },
  ];
  return (
    <>
      <section className="panel-part" aria-label={`Station: ${station.name}`}>
        <h2 className="panel-title">{station.name}</h2>
        <details className="more-facts">
          <summary>What is on record</summary>
          <Facts facts={facts} origins={(field) => originOf('stations', station, field)} />
        </details>
      </section>
      <section className="panel-part" aria-labelledby="station-rigs">
        <h3 className="section-name" id="station-rigs">
          Rigs here
        </h3>
        {rigs.length === 0 && (
          <p className="nothing-here">
            No rig has this station on record. Set a rig's station to list it here.
          </p>
        )}
        <ul className="rows">
          {rigs.map((rig) => (
            <li key={rig.id} className="row">
              <span className="row-text">
                <span>
                  <span className="row-name">{rig.name}</span>{' '}
                  <span className="row-told">{rig.kind}</span>
                </span>
                <span className="row-told">{carriedWords(rig, units)}</span>
                {!rig.inService && <span className="row-told caution-word">out of service</span>}
              </span>
              {rig.ratedGpm !== undefined && (
                <span className="row-figure figures">
                  <span className="hidden-text">rated </span>
                  {units.text(rig.ratedGpm, 'flow')}
                </span>
              )}
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

/** Tank and hose in one line. */
function carriedWords({ tankGal, hose }: Stored<'rigs'>, units: Units): string {
  const bySize = new Map<string, number>();
  for (const { size, lengthFt } of hose) bySize.set(size, (bySize.get(size) ?? 0) + lengthFt);
  const loads = [...bySize].map(([size, ft]) => {
    const known = parseHoseSize(size);
    return `${units.text(ft, 'length')} of ${known ? units.hose(known) : size}`;
  });
  const tank = tankGal === undefined ? [] : [`tank ${units.text(tankGal, 'volume')}`];
  const told = [...tank, ...loads].join(' · ');
  return told === '' ? 'tank and hose not on record' : told;
}
