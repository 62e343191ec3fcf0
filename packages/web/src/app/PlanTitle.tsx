import { useState } from 'react';
import { usePlan } from '../plan-store/plan-store.ts';

/** The plan's title, edited where it stands; invented data is marked beside it. */
export function PlanTitle() {
  const title = usePlan((state) => state.history.present.title);
  const invented = usePlan((state) => state.history.present.invented);
  const change = usePlan((state) => state.change);
  const [draft, setDraft] = useState<string | null>(null);
  const commit = () => {
    const next = draft?.trim();
    if (next && next !== title) change('Title', (plan) => ({ ...plan, title: next }));
    setDraft(null);
  };
  return (
    <div className="plan-title">
      <h1 className="hidden-text">{title}</h1>
      <input
        aria-label="Title of the plan"
        className="title-input"
        value={draft ?? title}
        maxLength={120}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') event.currentTarget.blur();
          if (event.key === 'Escape') setDraft(null);
        }}
      />
      {invented && <span className="invented">invented for practice</span>}
    </div>
  );
}
