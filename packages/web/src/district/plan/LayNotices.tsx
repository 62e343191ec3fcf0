import { findingText } from '@plugside/fireground';
import type { PlanningNotice } from '@plugside/records/planning';
import type { Answered } from '../../plan-store/ask.ts';
import { useView } from '../../plan-store/view.ts';
import type { WayNotice } from './way-notices.ts';

/** What the plan took for granted, and what to be careful with. */
export function LayNotices({
  way,
  planning,
  answered,
}: {
  way: readonly WayNotice[];
  planning: readonly PlanningNotice[];
  answered: Answered | null;
}) {
  const system = useView((view) => view.units);
  const told = [
    ...way,
    ...planning.map((one) => ({ level: one.level, text: findingText(one, system) })),
    ...(answered?.notices ?? []).filter((one) => one.level === 'caution'),
  ];
  const seen = new Set<string>();
  const unique = told.filter(({ text }) => !seen.has(text) && seen.add(text));
  if (unique.length === 0) return null;
  return (
    <>
      <h3 className="section-name">Cautions</h3>
      <ul>
        {unique.map(({ level, text }) => (
          <li key={text} className={level === 'fact' ? 'fact' : 'caution'}>
            {level !== 'fact' && <span className="caution-shape" aria-hidden="true" />}
            <span>{text}</span>
          </li>
        ))}
      </ul>
    </>
  );
}
