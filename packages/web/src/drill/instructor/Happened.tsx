import { type NoticedEvent, TICKS_PER_S } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { clockText, inUnits } from '../words.ts';

const MOST = 10;

/** What happened by itself, the newest first. */
export function Happened({ events }: { events: readonly NoticedEvent[] }) {
  const units = useUnits();
  const newest = events.slice(-MOST).reverse();
  return (
    <section className="radio-log" aria-label="What happened">
      <h2 className="section-name">What happened</h2>
      {newest.length === 0 ? (
        <p className="soft-text">Nothing out of the ordinary yet.</p>
      ) : (
        <ol>
          {newest.map(({ tick, kind, piece, level, text }) => (
            <li key={`${tick} ${kind} ${piece}`}>
              <span className="figures soft-text">{clockText(tick / TICKS_PER_S)}</span>{' '}
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
