import type { DrillScene, DrillView } from '@plugside/drill';
import { Gauge } from '../stage/Gauge.tsx';
import { RadioLog } from './RadioLog.tsx';
import { WholeDrawing } from './whole/WholeDrawing.tsx';

interface WallScreenProps {
  scene: DrillScene;
  view: DrillView;
}

/** For a screen on the wall: every gauge, the whole arrangement and the radio; nothing to touch. */
export function WallScreen({ scene, view }: WallScreenProps) {
  return (
    <div className="wall">
      <section className="wall-gauges" aria-label="Gauges">
        {view.gauges.map((gauge) => (
          <Gauge key={gauge.id} scene={scene} view={view} gauge={gauge} readings={undefined} />
        ))}
      </section>
      <WholeDrawing scene={scene} view={view} />
      <RadioLog radio={view.radio} most={6} />
    </div>
  );
}
