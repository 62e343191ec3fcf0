import { demandOf, freePortsOf, nameOf, type Plan } from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { DEMAND } from '../../editing/ranges.ts';

import { addAttackLine } from '../../plan-store/edits/lines.ts';
import { usePlan } from '../../plan-store/plan-store.ts';

/** What the scene needs, and its lines. */
export function SceneCaption({ plan }: { plan: Plan }) {
  const change = usePlan((state) => state.change);
  const rig = plan.rigs.find((one) => one.id === plan.scene);
  const demandGpm = demandOf(plan);
  return (
    <section className="given" aria-label="At the scene">
      <h3>{rig ? nameOf(rig) : 'At the scene'}</h3>
      <p className="given-line">
        needs{' '}
        <QuantityField
          label="Flow that the scene needs"
          value={demandGpm}
          kind="flow"
          {...DEMAND}
          onChange={(gpm, key) => change('Demand', (now) => ({ ...now, demandGpm: gpm }), key)}
        />
      </p>
      {rig && (
        <Button
          className="quiet-button"
          isDisabled={freePortsOf(plan, rig, 'out').length === 0}
          onPress={() => change('Add an attack line', (now) => addAttackLine(now, rig.id))}
        >
          + attack line
        </Button>
      )}
    </section>
  );
}
