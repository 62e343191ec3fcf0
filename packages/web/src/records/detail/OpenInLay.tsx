import { useState } from 'react';
import { Button } from 'react-aria-components';
import { goTo } from '../../places/place.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import { openText } from '../../share/files.ts';
import type { Values } from '../form/draft.ts';

/** A plan out of the records, onto the lay's drawing. */
export function OpenInLay({ record }: { record: Values }) {
  const [problem, setProblem] = useState<string | null>(null);
  const name = String(record.name);
  const open = () => {
    const opened = openText(String(record.text), name);
    if (!opened.ok) {
      const details = opened.message.details ?? [];
      setProblem([opened.message.text, ...details.map(({ text }) => text)].join(' '));
      return;
    }
    usePlan.getState().open(opened.plan, `Open ${opened.plan.title}`);
    goTo('/');
  };
  return (
    <>
      <Button className="plain-button" onPress={open}>
        Open in the Lay
      </Button>
      {problem && (
        <p className="tone-warning" role="alert">
          {problem}
        </p>
      )}
    </>
  );
}
