import { type Plan, writePlan } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import type { Route } from '@plugside/records/streets';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { ProblemError } from '../../api/problem.ts';
import { createRecord } from '../../api/records.ts';
import { goTo } from '../../places/place.ts';
import { usePlan } from '../../plan-store/plan-store.ts';

interface LayActionsProps {
  plan: Plan;
  building: Stored<'buildings'>;
  hydrant: Stored<'hydrants'>;
  rigs: readonly Stored<'rigs'>[];
  route: Route;
}

type Saving =
  | { state: 'no' }
  | { state: 'saving'; of: Plan }
  | { state: 'saved'; of: Plan; id: string; name: string }
  | { state: 'failed'; of: Plan; reason: string };

/** On with the plan: into the lay, or into the records. */
export function LayActions({ plan, building, hydrant, rigs, route }: LayActionsProps) {
  const [saving, setSaving] = useState<Saving>({ state: 'no' });
  const save = async () => {
    setSaving({ state: 'saving', of: plan });
    try {
      const saved = await createRecord('plans', {
        name: plan.title.slice(0, 120),
        text: writePlan(plan),
        buildingId: building.id,
        hydrantIds: [hydrant.id],
        rigIds: rigs.map(({ id }) => id),
        path: route.path.map(([longitude, latitude]) => [longitude, latitude]),
      });
      setSaving({ state: 'saved', of: plan, id: saved.id, name: saved.name });
    } catch (error) {
      setSaving({ state: 'failed', of: plan, reason: reasonOf(error) });
    }
  };
  const openInLay = () => {
    usePlan.getState().open(plan, `Open ${plan.title}`);
    goTo('/');
  };
  // Told only of the plan that it is about: after a change there is something new to save.
  const told = saving.state !== 'no' && saving.of === plan ? saving : { state: 'no' as const };
  return (
    <div className="lay-actions">
      <div className="lay-buttons">
        <Button className="plain-button main-button" onPress={openInLay}>
          Open in the lay
        </Button>
        <Button
          className="plain-button"
          isDisabled={told.state === 'saving' || told.state === 'saved'}
          onPress={() => void save()}
        >
          Save the plan
        </Button>
      </div>
      <p role="status" className="save-told">
        {told.state === 'saving' && 'Saving…'}
        {told.state === 'saved' && <>Saved: {told.name}</>}
        {told.state === 'failed' && <span className="tone-warning">Not saved. {told.reason}</span>}
      </p>
    </div>
  );
}

function reasonOf(error: unknown): string {
  if (error instanceof ProblemError && error.problem.issues?.length) {
    return error.problem.issues
      .map(({ path, message, remedy }) => `${path}: ${message} ${remedy ?? ''}`.trim())
      .join(' ');
  }
  return error instanceof Error ? error.message : String(error);
}
