import { deferral } from '@plugside/fireground';
import { originOf, type Stored } from '@plugside/records/model';
import type { ReactNode } from 'react';
import { useUnits } from '../../editing/use-units.ts';
import { type Fact, Facts, originWords } from './Facts.tsx';

/** Kinds that an engine drafts from; the others have water behind an outlet or in a vessel as well. */
const OPEN_WATER: readonly Stored<'water-sources'>['kind'][] = ['pond', 'lake', 'river'];

/** Where to draft: what is known of the water, and what to look at before it is counted on. */
export function WaterFacts({ source }: { source: Stored<'water-sources'> }) {
  const units = useUnits();
  const { usableGal, kind } = source;
  const origins = (field: string) => originOf('water-sources', source, field);
  const facts: Fact[] = [
    { field: 'kind', name: 'Kind', value: kind },
    {
      field: 'liftFt',
      name: 'Lift',
      value: source.liftFt === undefined ? null : units.text(source.liftFt, 'length'),
    },
    { field: 'access', name: 'Access', value: source.access ?? null },
    {
      field: 'elevationFt',
      name: "Water's surface",
      value: source.elevationFt === undefined ? null : units.text(source.elevationFt, 'length'),
    },
    { field: 'note', name: 'Note', value: source.note ?? null },
  ];
  return (
    <section className="panel-part" aria-label={`Water source: ${source.name}`}>
      <h2 className="panel-title">{source.name}</h2>
      {usableGal === undefined ? (
        <p className="needed">
          {kind === 'river'
            ? 'How much it gives in a dry season is not on record.'
            : 'How much water can be used is not on record.'}
        </p>
      ) : (
        <p className="needed figures">
          <span className="figure">{units.number(usableGal, 'volume')}</span>{' '}
          <span className="unit">{units.of(usableGal, 'volume').unit}</span> can be used
          <span className="fact-origin">{originWords(origins('usableGal'))}</span>
        </p>
      )}
      <Facts facts={facts} origins={origins} />
      <h3 className="section-name">Before it is counted on</h3>
      <ul className="drafting">
        <Caution>
          Access: ground that carries the rig, room to turn and stand, and a way in at night and in
          wet weather.
        </Caution>
        <Caution>
          Lift: from the water to the pump's intake. Each foot or metre of it takes from the flow;
          measure it at low water, and prove the flow by drafting there.
        </Caution>
        <Caution>
          {kind === 'dry hydrant'
            ? 'Strainer: open, and deep enough under the lowest water. Flush and draft it on the schedule of its owner.'
            : 'Strainer: deep enough that it draws no air, and clear of mud, weed and stones.'}
        </Caution>
        {OPEN_WATER.includes(kind) && (
          <Caution>
            Ice, flood and drought: keep off ice; the depth and the bank may not be what is on
            record.
          </Caution>
        )}
        {(kind === 'cistern' || kind === 'tank') && (
          <Caution>
            It empties: know the refill before it is the only supply, and that it vents while water
            is drawn.
          </Caution>
        )}
      </ul>
      <p className="deferral">{deferral}</p>
    </section>
  );
}

function Caution({ children }: { children: ReactNode }) {
  return (
    <li className="caution">
      <span className="caution-shape" aria-hidden="true" />
      <span>{children}</span>
    </li>
  );
}
