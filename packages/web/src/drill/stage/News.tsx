import type { NoticedEvent } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { clockText, inUnits } from '../words.ts';

/** What this role noticed of late, the newest first. */
export function News({ events }: { events: readonly NoticedEvent[] }) {
  const units = useUnits();
  return (
    <section className="news" aria-label="What happened">
      <h2 className="section-name">What happened</h2>
      {events.length === 0 ? (
        <p className="soft-text">Nothing out of the ordinary yet.</p>
      ) : (
        <ol aria-live="polite">
          {events
            .slice(-5)
            .reverse()
            .map(({ tick, level, text, kind, piece }) => (
              <li key={`${tick}:${kind}:${piece}`}>
                <span className="figures soft-text">{clockText(tick / 20)}</span>{' '}
                {level === 'caution' && <span className="caution-shape" aria-hidden="true" />}{' '}
                <span className={level === 'caution' ? 'tone-warning' : undefined}>
                  {inUnits(text, units)}
                </span>
              </li>
            ))}
        </ol>
      )}
    </section>
  );
}
