import {
  freePortsOf,
  type Hydrant,
  type Line,
  nameOf,
  type Plan,
  splitPortRef,
} from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { HoseChoice } from '../../editing/HoseChoice.tsx';
import { QuantityField } from '../../editing/QuantityField.tsx';
import { HOSE_LENGTH, RATING, RESIDUAL, STATIC, TEST_FLOW } from '../../editing/ranges.ts';
import { Switcher } from '../../editing/Switcher.tsx';
import { isBoosting, setBoosting } from '../../plan-store/edits/boost.ts';
import { addSideLine, removeLine } from '../../plan-store/edits/lines.ts';
import { changeHose, patchHydrant, patchLine, patchRig } from '../../plan-store/edits/pieces.ts';
import { boosterAt, hookupLines } from '../../plan-store/hookup.ts';
import { usePlan } from '../../plan-store/plan-store.ts';

interface SourceCaptionProps {
  plan: Plan;
  sourceId: string;
}

/** A source and what stands at it: flow test, assist valve, booster, side lines. */
export function SourceCaption({ plan, sourceId }: SourceCaptionProps) {
  const hydrant = plan.hydrants.find((one) => one.id === sourceId);
  const draft = plan.drafts.find((one) => one.id === sourceId);
  const source = hydrant ?? draft;
  if (!source) return null;
  return (
    <section className="given" aria-label={nameOf(source)}>
      <h3>{nameOf(source)}</h3>
      {hydrant && <FlowTest hydrant={hydrant} />}
      <AtSource plan={plan} sourceId={sourceId} />
    </section>
  );
}

function FlowTest({ hydrant }: { hydrant: Hydrant }) {
  const change = usePlan((state) => state.change);
  const name = nameOf(hydrant);
  const set = (what: string, patch: Partial<Hydrant>, key?: string) =>
    change(what, (plan) => patchHydrant(plan, hydrant.id, patch), key);
  return (
    <p className="given-line">
      <QuantityField
        label={`Static pressure, ${name}`}
        value={hydrant.staticPsi}
        kind="pressure"
        {...STATIC}
        min={hydrant.residualPsi + 1}
        onChange={(staticPsi, key) => set('Static pressure', { staticPsi }, key)}
      />{' '}
      static,{' '}
      <QuantityField
        label={`Residual pressure in the flow test, ${name}`}
        value={hydrant.residualPsi}
        kind="pressure"
        {...RESIDUAL}
        max={hydrant.staticPsi - 1}
        onChange={(residualPsi, key) => set('Residual pressure', { residualPsi }, key)}
      />{' '}
      at{' '}
      <QuantityField
        label={`Flow in the flow test, ${name}`}
        value={hydrant.testGpm}
        kind="flow"
        {...TEST_FLOW}
        onChange={(testGpm, key) => set('Test flow', { testGpm }, key)}
      />
    </p>
  );
}

function AtSource({ plan, sourceId }: SourceCaptionProps) {
  const change = usePlan((state) => state.change);
  const booster = boosterAt(plan, sourceId);
  const hydrant = plan.hydrants.find((one) => one.id === sourceId);
  const hookup = booster ? hookupLines(plan, booster.id) : [];
  const canAdd =
    hydrant !== undefined &&
    booster !== undefined &&
    freePortsOf(plan, hydrant, 'out').some((port) => port.name.startsWith('side')) &&
    freePortsOf(plan, booster, 'in').length > 0;
  return (
    <>
      {booster && (
        <div className="given-line given-booster">
          <b>{nameOf(booster)}</b>
          <Switcher
            label={`Booster, ${nameOf(booster)}`}
            value={isBoosting(plan, booster.id) ? 'on' : 'off'}
            options={[
              { value: 'off', text: 'Off', spoken: 'Booster off: hydrant pressure alone' },
              { value: 'on', text: 'Boosting', spoken: 'Booster on' },
            ]}
            onChange={(state) =>
              change('Booster', (now) => setBoosting(now, booster.id, state === 'on'))
            }
          />
          rated{' '}
          <QuantityField
            label={`Rated capacity, ${nameOf(booster)}`}
            value={booster.ratedGpm}
            kind="flow"
            {...RATING}
            onChange={(ratedGpm, key) =>
              change('Rated capacity', (now) => patchRig(now, booster.id, { ratedGpm }), key)
            }
          />
        </div>
      )}
      {booster && (
        <ul className="hookup-lines" aria-label={`Hose at ${nameOf(booster)}`}>
          {hookup.map((one) => (
            <HookupLine key={one.line.id} {...one} />
          ))}
          {canAdd && (
            <li>
              <Button
                className="quiet-button"
                onPress={() =>
                  change('Add a side line', (now) => addSideLine(now, booster.id, '3'))
                }
              >
                + side line
              </Button>
            </li>
          )}
        </ul>
      )}
    </>
  );
}

/** A short hose at the booster; a side line can be taken away. */
function HookupLine({ line, word }: { line: Line; word: string }) {
  const change = usePlan((state) => state.change);
  const name =
    word === 'side' ? `the side line from ${splitPortRef(line.from).port}` : `the ${word} line`;
  return (
    <li className="given-line">
      {word}
      <HoseChoice
        label={`Hose of ${name}`}
        value={line.hose}
        onChange={(hose) => change('Hose size', (now) => changeHose(now, line.id, hose))}
      />
      <QuantityField
        label={`Length of ${name}`}
        value={line.lengthFt}
        kind="length"
        {...HOSE_LENGTH}
        onChange={(lengthFt, key) =>
          change('Hose length', (now) => patchLine(now, line.id, { lengthFt }), key)
        }
      />
      {word === 'side' && (
        <Button
          className="quiet-button remove"
          aria-label={`Take away ${name}`}
          onPress={() => change('Take away a side line', (now) => removeLine(now, line.id))}
        >
          ×
        </Button>
      )}
    </li>
  );
}
