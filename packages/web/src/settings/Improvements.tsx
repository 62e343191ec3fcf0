import type { Improvement } from '@plugside/fireground';
import { memo } from 'react';
import { Button } from 'react-aria-components';
import { useUnits } from '../editing/use-units.ts';
import type { Picture } from '../plan-store/pictures.ts';
import { usePlan } from '../plan-store/plan-store.ts';

/** One change each, what it would bring, and a button that makes it. */
export const Improvements = memo(function Improvements({
  found,
}: {
  found: Picture<Improvement[]>;
}) {
  const units = useUnits();
  const open = usePlan((state) => state.open);
  const list = found.ok ? found.found.filter((one) => one.gainGpm > 0.5) : [];
  return (
    <section className="improvements" aria-labelledby="improvements">
      <h2 className="section-name" id="improvements">
        One change for more water
      </h2>
      {!found.ok && <p className="soft-text">{found.problem}</p>}
      {found.ok && list.length === 0 && (
        <p className="soft-text">No single change tried here brings more.</p>
      )}
      <ol>
        {list.slice(0, 5).map((one) => (
          <li key={one.change} className="improvement">
            <span className="improvement-gain figures">
              +{units.number(one.gainGpm, 'flow')}{' '}
              <span className="unit">{units.of(1, 'flow').unit}</span>
            </span>
            <span className="improvement-what">
              {one.change}
              {one.thenBinding[0] && (
                <span className="soft-text"> then the limit is {one.thenBinding[0].label}</span>
              )}
            </span>
            <Button
              className="quiet-button"
              onPress={() => open(one.plan, one.change)}
              aria-label={`Use: ${one.change}`}
            >
              Use
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
});
