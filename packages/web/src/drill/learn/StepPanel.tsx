import type { DrillScene, DrillStep, PlayedRole } from '@plugside/drill';
import { nameOf, portOf } from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { hoseName, inUnits, roleWords } from '../words.ts';
import type { TooEarly, WrongPort } from './order.ts';

interface StepPanelProps {
  scene: DrillScene;
  /** Looked through now. */
  role: PlayedRole;
  /** What to do now; undefined: wait. */
  step: DrillStep | undefined;
  /** What the others have to do first. */
  waitsFor: DrillStep | undefined;
  doneCount: number;
  early: TooEarly | null;
  /** A hose end that is on the wrong port. */
  wrong: WrongPort | null;
  onShow(step: DrillStep): void;
}

/** The step at hand: what to do, why, what the water does, what can hurt. */
export function StepPanel(props: StepPanelProps) {
  const { scene, role, step, waitsFor, doneCount, early, wrong, onShow } = props;
  const units = useUnits();
  const say = (text: string) => inUnits(text, units);
  const shown = step ?? waitsFor;
  if (!shown) return null;
  const number = scene.steps.indexOf(shown) + 1;
  return (
    <section className="step-panel" aria-label="The step at hand" data-step={shown.id}>
      <div className="step-head">
        <div className="step-count figures">
          <span>
            Step {number} of {scene.steps.length} · <b>{roleWords[shown.role]}</b>
          </span>
          <progress
            className="step-progress"
            value={doneCount}
            max={scene.steps.length}
            aria-label={`${doneCount} of ${scene.steps.length} steps done`}
          />
          {step && step.role === role && step.how.length > 0 && (
            <Button className="plain-button show-me" onPress={() => onShow(step)}>
              Do it for me
            </Button>
          )}
        </div>
        <div aria-live="polite">
          {step ? (
            <h2 className="step-what">{say(step.what)}</h2>
          ) : (
            <h2 className="step-what">
              Wait: the {shown.role} does this. <span className="soft-text">{say(shown.what)}</span>
            </h2>
          )}
        </div>
        {early && (
          <p className="too-early" role="alert">
            <span className="caution-shape" aria-hidden="true" />
            <span>
              <b>Out of order.</b> “{say(early.did.what)}” comes after “{say(early.before.what)}”{' '}
              {say(early.before.why)}
            </span>
          </p>
        )}
        {wrong && (
          <p className="too-early" role="alert">
            <span className="caution-shape" aria-hidden="true" />
            <span>
              <b>Wrong port.</b> This end of the {wrongHose(scene, wrong)} belongs on{' '}
              {portWords(scene, wrong.planned)}. Uncouple it and couple it there.
            </span>
          </p>
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
      {step?.how.length === 0 && (
        <p className="soft-text">This goes on by itself: watch the hose and the gauges.</p>
      )}
    </section>
  );
}

function wrongHose(scene: DrillScene, { hose }: WrongPort): string {
  const found = scene.hoses.find(({ id }) => id === hose);
  return found ? hoseName(found).toLowerCase() : hose;
}

function portWords(scene: DrillScene, ref: string): string {
  const found = portOf(scene.plan, ref);
  return found ? `${nameOf(found.piece)}, ${found.port.label.toLowerCase()}` : ref;
}
