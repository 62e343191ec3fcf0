import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { reasonOf } from '../api/reason.ts';
import { Progress } from '../editing/Progress.tsx';
import { Switcher } from '../editing/Switcher.tsx';
import { type CardsStanding, cancelCards, cardsStanding, startCards } from './cards.ts';
import { type PaperSize, usePaper } from './paper-choice.ts';
import './paper.css';

const PAPERS: readonly { value: PaperSize; text: string }[] = [
  { value: 'letter', text: 'Letter' },
  { value: 'a4', text: 'A4' },
];
const ASK_AGAIN_MS = 400;

/** A card of every hydrant, in one file to print. */
export function HydrantCards({ hydrants }: { hydrants: number }) {
  const { paper, units, setPaper } = usePaper();
  const [standing, setStanding] = useState<CardsStanding | null>(null);
  const [failed, setFailed] = useState<string | null>(null);
  const running = standing?.state === 'running' ? standing.id : null;
  useEffect(() => {
    if (running === null) return;
    const stop = new AbortController();
    const ask = async () => {
      while (!stop.signal.aborted) {
        await new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MS));
        const next = await cardsStanding(running, stop.signal);
        setStanding(next);
        if (next.state !== 'running') return;
      }
    };
    ask().catch((error: unknown) => {
      if (!stop.signal.aborted) {
        setStanding(null);
        setFailed(reasonOf(error));
      }
    });
    return () => stop.abort();
  }, [running]);
  const start = async () => {
    setFailed(null);
    try {
      setStanding(await startCards({ paper, units }));
    } catch (error) {
      setFailed(reasonOf(error));
    }
  };
  const cancel = async () => {
    if (running === null) return;
    try {
      setStanding((await cancelCards(running)) ?? null);
    } catch (error) {
      setFailed(reasonOf(error));
    }
  };
  const count = hydrants === 1 ? 'one hydrant' : `all ${hydrants.toLocaleString('en-US')} hydrants`;
  return (
    <section className="cards-part" aria-labelledby="cards-title">
      <h3 id="cards-title">On paper</h3>
      <p>
        A card of {count} in one file: what each gives, and what reaches an engine over each length
        of hose, unassisted and boosted. Pump charts and single cards are at each rig and hydrant.
      </p>
      <div className="cards-do">
        <Switcher label="Paper" value={paper} options={PAPERS} onChange={setPaper} />
        {running === null ? (
          <Button className="plain-button" isDisabled={hydrants === 0} onPress={() => void start()}>
            Make the cards
          </Button>
        ) : (
          <Button className="plain-button" onPress={() => void cancel()}>
            Cancel
          </Button>
        )}
        {standing?.file && (
          <a
            className="plain-button main-button link-button"
            href={standing.file}
            target="_blank"
            rel="noopener"
          >
            Open the {standing.progress.total} cards
          </a>
        )}
      </div>
      {standing?.state === 'running' && (
        <Progress
          label="Cards made"
          {...standing.progress}
          text={`${standing.progress.done} of ${standing.progress.total}`}
        />
      )}
      <p role="status">
        {standing?.state === 'cancelled' && 'Cancelled: no file was made.'}
        {standing?.state === 'done' && 'The cards are ready.'}
        {standing?.state === 'failed' && standing.failure && (
          <span className="tone-warning">
            {standing.failure.detail} {standing.failure.remedy}
          </span>
        )}
        {failed && <span className="tone-warning">The cards could not be made. {failed}</span>}
      </p>
    </section>
  );
}
