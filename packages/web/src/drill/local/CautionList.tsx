import type { Evolution } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { inUnits } from '../words.ts';

/** What stands beside an evolution all the time: its cautions, and to whom it defers. */
export function CautionList({ evolution }: { evolution: Evolution }) {
  const units = useUnits();
  const deferral = evolution.cautions.at(-1);
  return (
    <footer className="drill-cautions">
      <ul>
        {evolution.cautions.slice(0, -1).map((text) => (
          <li key={text}>
            <span className="caution-shape" aria-hidden="true" /> {inUnits(text, units)}
          </li>
        ))}
      </ul>
      <p className="deferral">{deferral}</p>
    </footer>
  );
}
