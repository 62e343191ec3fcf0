import { type DrillScene, type DrillView, mayDo } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { CautionList } from '../local/CautionList.tsx';
import { DrillStage } from '../stage/index.ts';
import { useDrill } from '../use-drill.ts';
import { inUnits } from '../words.ts';
import type { RoomLink } from './room-link.ts';
import type { RoomState } from './room-state.ts';

interface PlayerScreenProps {
  link: RoomLink;
  room: RoomState;
  scene: DrillScene;
  view: DrillView;
}

/** The stage of a role in a shared drill. */
export function PlayerScreen({ link, room, scene, view }: PlayerScreenProps) {
  const { role } = room;
  const units = useUnits();
  const { events, refused, history } = useDrill(link);
  const { next, guided, done } = view;
  return (
    <>
      <DrillStage
        scene={scene}
        view={view}
        role={role}
        can={(action) => mayDo(role, scene, action)}
        onAction={(action) => link.act(action)}
        refused={refused}
        events={events}
        history={history}
        {...(guided && {
          guide: {
            step: next,
            panel: (
              <div className="next-step" aria-live="polite">
                <p className="section-name">Next for you</p>
                {next ? (
                  <>
                    <p className="next-what">{inUnits(next.what, units)}</p>
                    <p className="soft-text">{inUnits(next.why, units)}</p>
                    {next.hazard !== undefined && (
                      <p className="tone-warning">{inUnits(next.hazard, units)}</p>
                    )}
                  </>
                ) : (
                  <p className="next-what">
                    {done ? 'Your steps are done. Watch your gauges.' : 'Wait: others go first.'}
                  </p>
                )}
              </div>
            ),
          },
        })}
      />
      <CautionList scene={scene} />
    </>
  );
}
