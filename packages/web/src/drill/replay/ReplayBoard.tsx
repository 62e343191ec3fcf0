import { type DrillView, TICKS_PER_S } from '@plugside/drill';
import { useEffect, useMemo, useState } from 'react';
import type { DrillRecord } from '../../api/index.ts';
import { RadioLog } from '../together/RadioLog.tsx';
import { WholeDrawing } from '../together/whole/WholeDrawing.tsx';
import { GaugeCharts } from './GaugeCharts.tsx';
import { MarkList } from './MarkList.tsx';
import { marksIn } from './marks.ts';
import type { Played } from './replay-run.ts';
import { Score } from './Score.tsx';
import { Scrubber } from './Scrubber.tsx';

interface ReplayBoardProps {
  record: DrillRecord;
  played: Played;
  /** At the moment last asked for. */
  view: DrillView | undefined;
  askFor(tick: number): void;
}

/** Score, time, and the drill as it stood at the moment chosen. */
export function ReplayBoard({ record, played, view, askFor }: ReplayBoardProps) {
  const { scene, log } = record;
  const [timeS, setTimeS] = useState(0);
  const lastS = (played.ticks.at(-1) ?? 0) / TICKS_PER_S;
  const marks = useMemo(() => marksIn(log), [log]);
  useEffect(() => askFor(Math.round(timeS * TICKS_PER_S)), [timeS, askFor]);
  const goTo = (tick: number) => setTimeS(Math.min(lastS, Math.max(0, tick / TICKS_PER_S)));
  return (
    <div className="replay">
      <Score scene={scene} judgements={played.judgements} onMoment={goTo} />
      <Scrubber timeS={timeS} lastS={lastS} marks={marks} onTime={setTimeS} />
      {view && <WholeDrawing scene={scene} view={view} />}
      <GaugeCharts played={played} marks={marks} timeS={timeS} lastS={lastS} onTime={setTimeS} />
      <div className="instructor-logs">
        <MarkList scene={scene} marks={marks} timeS={timeS} onMark={goTo} />
        {view && <RadioLog radio={view.radio} most={12} />}
      </div>
    </div>
  );
}
