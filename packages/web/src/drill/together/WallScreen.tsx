import type { DrillScene, DrillView } from '@plugside/drill';
import { AllGauges } from './AllGauges.tsx';
import { RadioLog } from './RadioLog.tsx';
import { WholeDrawing } from './whole/WholeDrawing.tsx';

interface WallScreenProps {
  scene: DrillScene;
  view: DrillView;
}

/** For a screen on the wall: every gauge, the whole arrangement and the radio; nothing to touch. */
export function WallScreen({ scene, view }: WallScreenProps) {
  return (
    <div className="wall-screen">
      <AllGauges scene={scene} view={view} />
      <WholeDrawing scene={scene} view={view} large />
      <RadioLog radio={view.radio} most={6} />
    </div>
  );
}
