import { type DrillScene, type DrillView, faultWords } from '@plugside/drill';
import { useRef } from 'react';
import { CautionList } from '../local/CautionList.tsx';
import { AllGauges } from './AllGauges.tsx';
import { RadioLog } from './RadioLog.tsx';
import { useWallFit } from './use-wall-fit.ts';
import { WholeDrawing } from './whole/WholeDrawing.tsx';

interface WallScreenProps {
  scene: DrillScene;
  view: DrillView;
}

/** For a screen on the wall: every gauge, the whole arrangement and the radio; nothing to touch. */
export function WallScreen({ scene, view }: WallScreenProps) {
  const faults = view.truth?.state.faults ?? [];
  const place = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLDivElement>(null);
  const { shrink, most } = useWallFit(place, sheet);
  return (
    <div className="wall-place" ref={place}>
      <div
        className="wall-screen"
        ref={sheet}
        style={
          shrink < 1 ? { width: `${100 / shrink}%`, transform: `scale(${shrink})` } : undefined
        }
      >
        <AllGauges scene={scene} view={view} />
        <WholeDrawing scene={scene} view={view} most={most} />
        <div className="wall-told">
          <RadioLog radio={view.radio} most={6} />
          {faults.length > 0 && (
            <section className="radio-log" aria-label="Faults">
              <h2 className="section-name">What the instructor made go wrong</h2>
              <ol>
                {faults.map((fault) => (
                  <li key={fault.id} className="tone-warning">
                    {faultWords(scene, fault)}
                  </li>
                ))}
              </ol>
            </section>
          )}
        </div>
        <CautionList scene={scene} />
      </div>
    </div>
  );
}
