import { memo, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Answered } from '../plan-store/ask.ts';
import { LimitRow } from './LimitRow.tsx';

const SHOWN_AT_FIRST = 6;

/** Every limit with the room left, the tightest first. */
export const Limits = memo(function Limits({ answered }: { answered: Answered }) {
  const [all, setAll] = useState(false);
  const ranked = [...answered.limits].sort(
    (a, b) =>
      Number(b.passed) - Number(a.passed) ||
      Number(b.binds) - Number(a.binds) ||
      a.marginFraction - b.marginFraction,
  );
  const shown = all ? ranked : ranked.slice(0, SHOWN_AT_FIRST);
  return (
    <section className="limits" aria-labelledby="limits">
      <h2 className="section-name" id="limits">
        Limits, tightest first
      </h2>
      <ul>
        {shown.map((check) => (
          <LimitRow key={check.id} check={check} answered={answered} />
        ))}
      </ul>
      {ranked.length > SHOWN_AT_FIRST && (
        <Button className="quiet-button" onPress={() => setAll(!all)}>
          {all ? 'Only the tightest' : `All ${ranked.length} limits`}
        </Button>
      )}
    </section>
  );
});
