import type { DrillScene } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { inUnits } from '../words.ts';
import { sceneCautions } from './scene-cautions.ts';

/** What stands beside a drill all the time: its cautions, and to whom it defers. */
export function CautionList({ scene }: { scene: DrillScene }) {
  const units = useUnits();
  const told = sceneCautions(scene);
  return (
    <footer className="drill-cautions">
      <ul>
        {told.slice(0, -1).map((text) => (
          <li key={text}>
            <span className="caution-shape" aria-hidden="true" /> {inUnits(text, units)}
          </li>
        ))}
      </ul>
      <p className="deferral">{told.at(-1)}</p>
    </footer>
  );
}
