import type { DrillScene, DrillView } from '@plugside/drill';
import { Switch } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { CautionList } from '../local/CautionList.tsx';
import { AllGauges } from '../together/AllGauges.tsx';
import { RadioLog } from '../together/RadioLog.tsx';
import type { RoomLink } from '../together/room-link.ts';
import type { RoomState } from '../together/room-state.ts';
import { WholeDrawing } from '../together/whole/WholeDrawing.tsx';
import { useDrill } from '../use-drill.ts';
import { inUnits } from '../words.ts';
import { ClockPanel } from './ClockPanel.tsx';
import { CodeShown } from './CodeShown.tsx';
import { EndPanel } from './EndPanel.tsx';
import { FaultPanel } from './FaultPanel.tsx';
import { Happened } from './Happened.tsx';
import { SayPanel } from './SayPanel.tsx';
import { ScorePanel } from './ScorePanel.tsx';
import { SeatsPanel } from './SeatsPanel.tsx';
import { WallPanel } from './WallPanel.tsx';
import './instructor.css';

interface InstructorScreenProps {
  link: RoomLink;
  room: RoomState;
  scene: DrillScene;
  view: DrillView;
}

/** All of a drill, to the one who leads it. */
export function InstructorScreen({ link, room, scene, view }: InstructorScreenProps) {
  const units = useUnits();
  const { events, refused } = useDrill(link);
  const isHere = room.connection.is === 'here';
  return (
    <div className="instructor">
      <div className="instructor-side">
        <div className="instructor-top">
          <CodeShown code={room.code} />
          <ClockPanel link={link} view={view} />
        </div>
        <SeatsPanel link={link} room={room} hasScript={scene.steps.length > 0} />
      </div>
      <div className="instructor-foot">
        <SayPanel link={link} scene={scene} />
        <ScorePanel link={link} scene={scene} />
        <WallPanel link={link} room={room} />
        <section className="panel instructor-end" aria-label="For the whole drill">
          {scene.steps.length > 0 && (
            <Switch
              className="room-switch"
              isSelected={room.settings?.guided === true}
              isDisabled={!isHere || room.settings === undefined}
              onChange={(on) => link.ask({ type: 'guide', on })}
            >
              <span className="room-switch-track" aria-hidden="true" />
              Show each role its next step
            </Switch>
          )}
          <EndPanel link={link} isHere={isHere} />
        </section>
      </div>
      <div className="instructor-main">
        {refused && (
          <p className="tone-warning" role="alert">
            {inUnits(refused.problem.message, units)}
          </p>
        )}
        <WholeDrawing scene={scene} view={view} />
        <FaultPanel link={link} scene={scene} view={view} />
        <div className="instructor-logs">
          <RadioLog radio={view.radio} most={10} />
          <Happened events={events} />
        </div>
        <AllGauges scene={scene} view={view} />
        <CautionList scene={scene} />
      </div>
    </div>
  );
}
