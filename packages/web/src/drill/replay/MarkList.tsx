import { actionWords, type DrillScene, TICKS_PER_S } from '@plugside/drill';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { clockText, inUnits, roleWords } from '../words.ts';
import type { Mark } from './marks.ts';

interface MarkListProps {
  scene: DrillScene;
  marks: readonly Mark[];
  timeS: number;
  onMark(tick: number): void;
}

/** All that was done, said and happened, in order; each leads to its moment. */
export function MarkList({ scene, marks, timeS, onMark }: MarkListProps) {
  const units = useUnits();
  const now = marks.filter(({ tick }) => tick / TICKS_PER_S <= timeS + 0.01).at(-1)?.seq;
  return (
    <section className="mark-list" aria-labelledby="mark-list-name">
      <h2 className="section-name" id="mark-list-name">
        What was done and what happened
      </h2>
      {marks.length === 0 && <p className="soft-text">Nothing was done in this drill.</p>}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: scrolled by keys */}
      <ol tabIndex={0} aria-label="In order of time">
        {marks.map((mark) => (
          <li key={mark.seq} data-now={mark.seq === now || undefined}>
            <Button className="mark-button" onPress={() => onMark(mark.tick)}>
              <span className="figures soft-text">{clockText(mark.tick / TICKS_PER_S)}</span>
              <span className="mark-words">
                {mark.kind === 'event' ? (
                  <span className={mark.event.level === 'caution' ? 'tone-warning' : 'soft-text'}>
                    {inUnits(mark.event.text, units)}
                  </span>
                ) : (
                  <>
                    <b>{roleWords[mark.role]}</b>{' '}
                    {'byComputer' in mark && mark.byComputer && (
                      <span className="soft-text">(computer) </span>
                    )}
                    {actionWords(scene, mark.action, units)}
                    {mark.kind === 'refused' && (
                      <span className="tone-warning">
                        {' '}
                        not possible: {inUnits(mark.problem.message, units)}
                      </span>
                    )}
                  </>
                )}
              </span>
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
}
