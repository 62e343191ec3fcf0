import type { DrillScene, DrillStep } from '@plugside/drill';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { inUnits, roleWords } from '../words.ts';
import type { TooEarly } from './order.ts';

interface StepPanelProps {
  scene: DrillScene;
  /** What to do now; undefined: wait. */
  step: DrillStep | undefined;
  /** What the others have to do first. */
  waitsFor: DrillStep | undefined;
  doneCount: number;
  early: TooEarly | null;
  onShow(step: DrillStep): void;
}

/** The step at hand: what to do, why, what the water does, what can hurt. */
export function StepPanel(props: StepPanelProps) {
  const { scene, step, waitsFor, doneCount, early, onShow } = props;
  const units = useUnits();
  const say = (text: string) => inUnits(text, units);
  const shown = step ?? waitsFor;
  if (!shown) return null;
  const number = scene.steps.indexOf(shown) + 1;
  return (
    <section className="step-panel" aria-label="The step at hand" data-step={shown.id}>
      <p className="step-count figures">
        Step {number} of {scene.steps.length} · <b>{roleWords[shown.role]}</b>
        <progress
          className="step-progress"
          value={doneCount}
          max={scene.steps.length}
          aria-label={`${doneCount} of ${scene.steps.length} steps done`}
        />
      </p>
      <div aria-live="polite">
        {step ? (
          <h2 className="step-what">{say(step.what)}</h2>
        ) : (
          <h2 className="step-what">
            Wait: the {shown.role} does this. <span className="soft-text">{say(shown.what)}</span>
          </h2>
        )}
      </div>
      <dl className="step-reasons">
        <div>
          <dt>Why</dt>
          <dd>{say(shown.why)}</dd>
        </div>
        <div>
          <dt>The water</dt>
          <dd>{say(shown.water)}</dd>
        </div>
        {shown.hazard && (
          <div className="step-hazard">
            <dt>
              <span className="caution-shape" aria-hidden="true" /> Hazard
            </dt>
            <dd>{say(shown.hazard)}</dd>
          </div>
        )}
      </dl>
      {early && (
        <p className="too-early" role="alert">
          <span className="caution-shape" aria-hidden="true" />
          <span>
            <b>Out of order.</b> “{say(early.did.what)}” comes after “{say(early.before.what)}”{' '}
            {say(early.before.why)}
          </span>
        </p>
      )}
      {step &&
        (step.how.length > 0 ? (
          <Button className="quiet-button show-me" onPress={() => onShow(step)}>
            Do it for me
          </Button>
        ) : (
          <p className="soft-text">This goes on by itself: watch the hose and the gauges.</p>
        ))}
    </section>
  );
}
