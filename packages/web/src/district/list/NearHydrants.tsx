import type { Stored } from '@plugside/records/model';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import type { MapHydrant } from '../district.ts';
import { pick } from '../selection.ts';
import type { NearHydrant } from '../streets/messages.ts';
import { classWords, layRiseWords, testWords, todayIso } from '../words.ts';
import { HydrantMark } from './HydrantMark.tsx';
import { useRises } from './use-rises.ts';

interface NearHydrantsProps {
  near: readonly NearHydrant[];
  hydrants: ReadonlyMap<string, MapHydrant>;
  building: Stored<'buildings'>;
  onMore: (() => void) | null;
}

/** Hydrants by the length of street to the building; hose is laid over it in whole sections. */
export function NearHydrants({ near, hydrants, building, onMore }: NearHydrantsProps) {
  const units = useUnits();
  const riseTo = useRises(building, near, hydrants);
  const today = todayIso();
  return (
    <section className="panel-part" aria-labelledby="near-hydrants">
      <h3 className="section-name" id="near-hydrants">
        Hydrants, by length along the streets
      </h3>
      {near.length === 0 && <p className="nothing-here">No hydrant can be reached.</p>}
      <ol className="rows">
        {near.map((route) => {
          const hydrant = hydrants.get(route.id);
          if (!hydrant) return null;
          const out = hydrant.status === 'out of service';
          const tested = testWords(hydrant, today) ?? 'no flow test';
          return (
            <li key={route.id}>
              <Button className="row" onPress={() => pick('hydrant', route.id)}>
                <HydrantMark of={hydrant} />
                <span className="row-text">
                  <span>
                    <span className="row-name">{hydrant.name}</span>{' '}
                    <span className="row-told">
                      {layRiseWords(riseTo(route.id), units)} · {tested}
                    </span>
                  </span>
                  {out ? (
                    <span className="row-told caution-word">
                      out of service{hydrant.statusReason ? `: ${hydrant.statusReason}` : ''}
                    </span>
                  ) : (
                    <span className="row-told">
                      <span className="hidden-text">{classWords(hydrant.class)}, </span>
                      {hydrant.q20Gpm === null
                        ? 'flow not known'
                        : `${units.text(hydrant.q20Gpm, 'flow')} at ${units.text(20, 'pressure')}`}
                    </span>
                  )}
                  {!route.alongStreets && (
                    <span className="row-told">straight line: not joined to the streets</span>
                  )}
                </span>
                <span className="row-figure figures">{units.text(route.lengthFt, 'length')}</span>
              </Button>
            </li>
          );
        })}
      </ol>
      {onMore && (
        <Button className="plain-button" onPress={onMore}>
          Look farther
        </Button>
      )}
    </section>
  );
}
