import { useEffect, useState } from 'react';
import { QuantityField } from '../editing/QuantityField.tsx';
import { DEMAND } from '../editing/ranges.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import type { AnswerWords } from './answer-words.ts';

interface AnswerProps {
  words: AnswerWords | null;
  problem: string | null;
  /** Editable when the question sets for a demand. */
  demandGpm: number | null;
}

/** The answer line. Its room is kept, so that nothing below jumps when the words change. */
export function Answer({ words, problem, demandGpm }: AnswerProps) {
  const change = usePlan((state) => state.change);
  return (
    <div className="answer">
      {demandGpm !== null ? (
        <p className="answer-figure figures">
          <QuantityField
            label="Flow to set for"
            value={demandGpm}
            kind="flow"
            size="figure"
            {...DEMAND}
            onChange={(gpm, key) => change('Demand', (now) => ({ ...now, demandGpm: gpm }), key)}
          />{' '}
          <span className="answer-where">for the scene</span>
        </p>
      ) : (
        words &&
        problem === null && (
          <p className="answer-figure figures">
            <span className="answer-number">{words.number}</span>{' '}
            <span className="answer-unit">{words.unit}</span>{' '}
            <span className="answer-where">{words.whereTo}</span>
          </p>
        )
      )}
      {problem !== null && (
        <p
          className={demandGpm === null ? 'answer-problem answer-problem-alone' : 'answer-problem'}
        >
          <span className="caution-shape" aria-hidden="true" />
          <span>
            <b>This plan cannot be answered as it stands.</b> {problem}
            {words && ' The drawing below is the last one that could.'}
          </span>
        </p>
      )}
      {words && problem === null && (
        <p className="answer-words">
          {words.parts.map((part) => (
            <span key={part.text} className={`tone-${part.tone}`}>
              {part.text}
            </span>
          ))}
        </p>
      )}
      <LiveAnswer text={problem ?? spoken(words)} />
    </div>
  );
}

function spoken(words: AnswerWords | null): string {
  if (!words) return '';
  return `${words.number} ${words.unit} ${words.whereTo}. ${words.parts.map((one) => one.text).join('')}`;
}

const SETTLED_MS = 900;

/** Tells the answer to a screen reader once it has settled, not on every step of a drag. */
function LiveAnswer({ text }: { text: string }) {
  const [told, setTold] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setTold(text), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <p className="hidden-text" aria-live="polite">
      {told}
    </p>
  );
}
