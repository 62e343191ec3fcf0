import type {
  DrillAction,
  DrillScene,
  DrillStep,
  DrillView,
  NoticedEvent,
  Problem,
  Role,
} from '@plugside/drill';
import { type CSSProperties, type ReactNode, useEffect, useMemo, useState } from 'react';
import { ToggleButton } from 'react-aria-components';
import { DrillSound } from '../sound/DrillSound.tsx';
import { ControlList } from './ControlList.tsx';
import { Gauge } from './Gauge.tsx';
import { gaugeGroups } from './gauge-groups.ts';
import type { GaugeHistory } from './gauge-history.ts';
import { InHand } from './InHand.tsx';
import { marksOf, marksOfAction } from './marks.ts';
import { News } from './News.tsx';
import { PumpControl } from './PumpControl.tsx';
import { RadioPanel } from './RadioPanel.tsx';
import { StageDrawing } from './StageDrawing.tsx';
import { StageWatch } from './StageWatch.tsx';
import { StreamList } from './StreamList.tsx';
import { shownPorts } from './shown-ports.ts';
import { type Picked, type Stage, StageContext, type StageRefused } from './stage-context.ts';
import './stage.css';

export interface StageGuide {
  /** Points at what this step is about; left out: at nothing. */
  step?: DrillStep | undefined;
  /** What stands above the stage: the step in words. */
  panel: ReactNode;
}

export interface DrillStageProps {
  scene: DrillScene;
  view: DrillView;
  role: Role;
  /** Why this role may not do an action; undefined where it may. */
  can(action: DrillAction): Problem | undefined;
  onAction(action: DrillAction): void;
  /** The last action that the drill itself refused. */
  refused?: { action: DrillAction; problem: Problem } | null;
  /** What the role noticed, oldest first. */
  events?: readonly NoticedEvent[];
  /** Left out: gauges without their last minutes. */
  history?: GaugeHistory;
  guide?: StageGuide;
}

/** One role's view of a drill, and all that the role can do there. */
export function DrillStage(props: DrillStageProps) {
  const { scene, view, role, can, onAction, refused = null, events = [], history, guide } = props;
  const [picked, setPicked] = useState<Picked | null>(null);
  const [held, setHeld] = useState<StageRefused | null>(null);
  const [all, setAll] = useState(false);
  // On a phone the list would stand between the drawing and the radio.
  const [listOpen, setListOpen] = useState(() => window.matchMedia('(min-width: 700px)').matches);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another role has other hands
  useEffect(() => {
    setPicked(null);
    setHeld(null);
  }, [role]);
  useEffect(() => {
    if (refused)
      setHeld({ marks: marksOfAction(refused.action), message: refused.problem.message });
  }, [refused]);
  const step = guide?.step;
  const marks = useMemo(() => marksOf(step?.role === role ? step : undefined), [step, role]);
  const stage: Stage = {
    scene,
    view,
    marks,
    refused: held,
    picked,
    pick: (next) => {
      setHeld(null);
      setPicked(next);
    },
    act: (action) => {
      const problem = can(action);
      if (problem) {
        setHeld({ marks: marksOfAction(action), message: problem.message });
        return;
      }
      setHeld(null);
      // What was in the hand has been put where it belongs.
      if (action.do === 'couple') setPicked({ kind: 'port', port: action.port });
      if (action.do === 'uncouple') setPicked({ kind: 'end', hose: action.hose, end: action.end });
      onAction(action);
    },
  };
  return (
    <StageContext value={stage}>
      <div
        className="stage-whole"
        data-pumps={view.pumps.length || undefined}
        style={{ '--pumps': view.pumps.length } as CSSProperties}
      >
        {/* Another role is told anew. */}
        <StageWatch key={role} scene={scene} view={view} events={events} />
        <div className="stage">
          {guide && <div className="stage-guide">{guide.panel}</div>}
          <section className="stage-ground" aria-label="At hand, drawn">
            <StageDrawing all={all} />
            <div className="stage-extras">
              {(all || shownPorts(scene, view, false).size < view.ports.length) && (
                <ToggleButton className="plain-button all-ports" isSelected={all} onChange={setAll}>
                  {all ? 'Show the usual ports' : 'Show every port'}
                </ToggleButton>
              )}
              <DrillSound view={view} events={events} />
            </div>
            <InHand />
          </section>
          <div className="stage-right">
            <section
              className="stage-gauges"
              aria-label={view.gauges.length > 0 ? 'Gauges' : 'Streams'}
              data-many={view.gauges.length > 4 || undefined}
            >
              {gaugeGroups(view).map(({ name, gauges }) => (
                <div key={gauges[0]!.id} className="gauge-group">
                  {name && <h3 className="gauge-group-name">{name}</h3>}
                  {gauges.map((gauge) => (
                    <Gauge
                      key={gauge.id}
                      scene={scene}
                      view={view}
                      gauge={gauge}
                      readings={history && (history[gauge.id] ?? [])}
                    />
                  ))}
                </div>
              ))}
              {view.streams && <StreamList streams={view.streams} />}
            </section>
            <div className="stage-side">
              {view.pumps.map((pump) => (
                <PumpControl key={pump.rigId} pump={pump} />
              ))}
              <RadioPanel suggested={step?.role === role ? step.how : []} />
              <News events={events} />
            </div>
          </div>
          <details
            className="stage-list"
            open={listOpen}
            onToggle={(event) => setListOpen(event.currentTarget.open)}
          >
            <summary>All controls, as a list</summary>
            <ControlList all={all} />
          </details>
        </div>
      </div>
    </StageContext>
  );
}
