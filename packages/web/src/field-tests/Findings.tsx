import { findingText, type TestFinding } from '@plugside/fireground';
import { useView } from '../plan-store/view.ts';

/** What a test leaves to doubt, worst first, told by a shape and words. */
export function Findings({ findings }: { findings: readonly TestFinding[] }) {
  const system = useView((view) => view.units);
  if (findings.length === 0) return null;
  const order = ['error', 'caution', 'fact'];
  const sorted = [...findings].sort((a, b) => order.indexOf(a.level) - order.indexOf(b.level));
  return (
    <ul className="findings">
      {sorted.map((one) => (
        <li key={one.text} className={one.level === 'fact' ? 'fact' : 'caution'}>
          {one.level !== 'fact' && <span className="caution-shape" aria-hidden="true" />}
          <span>
            {one.level === 'error' && <span className="caution-word">Cannot be used. </span>}
            {findingText(one, system)}
          </span>
        </li>
      ))}
    </ul>
  );
}
