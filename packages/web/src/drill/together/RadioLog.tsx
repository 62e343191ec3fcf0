import { type RadioEntry, TICKS_PER_S } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { clockText, inUnits, roleWords } from '../words.ts';

interface RadioLogProps {
  radio: readonly RadioEntry[];
  /** The newest so many. */
  most: number;
}

/** What was said, the newest first. */
export function RadioLog({ radio, most }: RadioLogProps) {
  const units = useUnits();
  const said = radio.slice(-most).reverse();
  return (
    <section className="radio-log" aria-label="Radio log">
      <h2 className="section-name">Radio</h2>
      {said.length === 0 ? (
        <p className="soft-text">Nothing has been said yet.</p>
      ) : (
        <ol aria-live="polite">
          {said.map(({ tick, from, to, text }) => (
            <li key={`${tick} ${from} ${text}`}>
              <span className="figures soft-text">{clockText(tick / TICKS_PER_S)}</span>{' '}
              <b>
                {roleWords[from]}
                {to !== undefined && ` to ${roleWords[to].toLowerCase()}`}
              </b>{' '}
              {inUnits(text, units)}
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
