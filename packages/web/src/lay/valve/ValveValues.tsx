import { type AssistValve, nameOf } from '@plugside/fireground';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { LOSS } from '../../editing/ranges.ts';
import { Switcher } from '../../editing/Switcher.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { patchAppliance } from '../../plan-store/edits/pieces.ts';
import { usePlan } from '../../plan-store/plan-store.ts';

const PATHS = [
  { key: 'clapperLoss', name: 'through the clapper' },
  { key: 'suctionLoss', name: 'to pump suction' },
  { key: 'dischargeLoss', name: 'from pump discharge' },
] as const;

/** The valve's own values: what each path loses, and a clapper that sticks. */
export function ValveValues({ valve }: { valve: AssistValve }) {
  const units = useUnits();
  const change = usePlan((state) => state.change);
  const name = nameOf(valve);
  return (
    <details className="valve-values">
      <summary>Its losses, and a stuck clapper</summary>
      {PATHS.map(({ key, name: path }) => (
        <p key={key} className="given-line">
          Loses
          <QuantityField
            label={`Loss ${path}, ${name}`}
            value={valve[key].lossPsi}
            kind="pressure"
            {...LOSS}
            onChange={(lossPsi, step) =>
              change(
                'Valve loss',
                (plan) => patchAppliance(plan, valve.id, { [key]: { ...valve[key], lossPsi } }),
                step,
              )
            }
          />
          {path} at {units.text(valve[key].atGpm, 'flow')}
        </p>
      ))}
      <div className="given-line given-booster">
        Clapper
        <Switcher
          label={`Clapper of ${name}`}
          value={valve.clapperStuck ?? 'free'}
          options={[
            { value: 'free', text: 'Free' },
            { value: 'shut', text: 'Stuck shut' },
          ]}
          onChange={(state) =>
            change('Clapper', (plan) =>
              patchAppliance<AssistValve>(plan, valve.id, {
                clapperStuck: state === 'shut' ? 'shut' : undefined,
              }),
            )
          }
        />
      </div>
    </details>
  );
}
