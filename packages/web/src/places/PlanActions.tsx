import { addAttackLines, type Plan, writePlan } from '@plugside/fireground';
import type { FieldsIn } from '@plugside/records/model';
import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';
import { reasonOf } from '../api/reason.ts';
import { createRecord } from '../api/records.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { freeName, LONGEST_NAME, plansNamed } from './free-name.ts';
import { PlaceLink } from './PlaceLink.tsx';
import { goTo } from './place.ts';

interface PlanActionsProps {
  plan: Plan;
  /** What the saved plan refers to. */
  refers: Pick<FieldsIn<'plans'>, 'buildingId' | 'hydrantIds' | 'rigIds' | 'path'>;
  children?: ReactNode;
}

type Saving =
  | { state: 'no' }
  | { state: 'saving'; of: Plan }
  | { state: 'saved'; of: Plan; id: string; name: string; note: string }
  | { state: 'failed'; of: Plan; reason: string };

/** On with a plan: into the lay, or into the records. */
export function PlanActions({ plan, refers, children }: PlanActionsProps) {
  const [saving, setSaving] = useState<Saving>({ state: 'no' });
  const save = async () => {
    setSaving({ state: 'saving', of: plan });
    try {
      const text = writePlan(plan);
      const title = plan.title.slice(0, LONGEST_NAME);
      const before = await plansNamed(title);
      const same = before.find((one) => one.text === text);
      if (same) {
        const note = 'It was saved before, just as it is; nothing was added.';
        setSaving({ state: 'saved', of: plan, id: same.id, name: same.name, note });
        return;
      }
      const name = freeName(title, before);
      const saved = await createRecord('plans', { name, text, ...refers });
      const note =
        name === title ? '' : `There is another plan “${title}” on record, which stays as it is.`;
      setSaving({ state: 'saved', of: plan, id: saved.id, name: saved.name, note });
    } catch (error) {
      setSaving({ state: 'failed', of: plan, reason: reasonOf(error, { paths: true }) });
    }
  };
  const openInLay = () => {
    usePlan.getState().open(plan, `Open ${plan.title}`);
    goTo('/');
  };
  const drill = () => {
    // A drill is felt at the nozzle: two usual lines where the plan ends at the engine.
    const complete = plan.nozzles.length > 0 ? plan : addAttackLines(plan, plan.scene, [{}, {}]);
    usePlan.getState().open(complete, `Open ${plan.title}`);
    goTo('/drill/new?from=lay');
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
        <Button className="plain-button" onPress={drill}>
          Drill it
        </Button>
        {children}
      </div>
      <p role="status" className="save-told">
        {told.state === 'saving' && 'Saving…'}
        {told.state === 'saved' && (
          <>
            Saved: <PlaceLink href={`/records/plans/${told.id}`}>{told.name}</PlaceLink>
            {told.note !== '' && `. ${told.note}`}
          </>
        )}
        {told.state === 'failed' && <span className="tone-warning">Not saved. {told.reason}</span>}
      </p>
    </div>
  );
}
