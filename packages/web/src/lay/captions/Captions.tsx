import type { CSSProperties } from 'react';
import type { Answered } from '../../plan-store/ask.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import type { Tracks } from '../scene/tracks.ts';
import { LayCaption } from './LayCaption.tsx';
import { SceneCaption } from './SceneCaption.tsx';
import { SourceCaption } from './SourceCaption.tsx';

interface CaptionsProps {
  answered: Answered;
  tracks: Tracks;
  sizes: DrawingSizes;
}

/** What is given, written over the piece that it belongs to and changed there. */
export function Captions({ tracks, sizes }: CaptionsProps) {
  const plan = usePlan((state) => state.history.present);
  const style = {
    '--source-width': `${Math.min(sizes.startPx + sizes.hookupPx, sizes.widthPx * 0.4)}px`,
    '--scene-width': `${Math.max(sizes.widthPx - tracks.scale.sceneX, 190)}px`,
  } as CSSProperties;
  const many = plan.rigs.filter((rig) => rig.role !== 'booster').length > 3;
  const sources = [...plan.hydrants, ...plan.drafts];
  return (
    <div className={many ? 'captions captions-many' : 'captions'} style={style}>
      <div className="caption caption-source">
        {sources.map((source) => (
          <SourceCaption key={source.id} plan={plan} sourceId={source.id} />
        ))}
      </div>
      <div className="caption caption-lay">
        <LayCaption plan={plan} />
      </div>
      <div className="caption caption-scene">
        <SceneCaption plan={plan} />
      </div>
    </div>
  );
}
