import type { HoseEndView, StreamView } from '@plugside/drill';
import { useStage } from './stage-context.ts';
import { isStreamShort, lineWords, streamWords } from './stream-words.ts';

/** What a crew has in place of gauges: how each stream looks, and how its line feels. */
export function StreamList({ streams }: { streams: readonly StreamView[] }) {
  const { view } = useStage();
  const lineAt = (nozzle: string): HoseEndView | undefined =>
    view.hoseEnds.find(({ at, port }) => at === nozzle && port !== null);
  return (
    <ul className="stream-list">
      {streams.map((one) => {
        const line = lineAt(one.nozzle)?.looks;
        const short = isStreamShort(one.stream, line);
        return (
          <li key={one.nozzle} data-stream={one.nozzle}>
            <span className="gauge-name">{one.label}</span>
            <span className={short ? 'stream-looks tone-warning' : 'stream-looks'}>
              {short && <span className="caution-shape" aria-hidden="true" />}{' '}
              {streamWords[one.stream]}
            </span>
            {line && <span className="soft-text">{lineWords[line]}</span>}
          </li>
        );
      })}
    </ul>
  );
}
