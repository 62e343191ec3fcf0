import type { DrillScene, DrillView, NoticedEvent } from '@plugside/drill';
import { useRef } from 'react';
import { useUnits } from '../../editing/use-units.ts';
import { inUnits } from '../words.ts';
import { gaugeReading } from './gauge-scale.ts';
import { warnsOf } from './gauge-warns.ts';
import { cautionsNow, type KeptCaution, lingering } from './standing-cautions.ts';

interface StageWatchProps {
  scene: DrillScene;
  view: DrillView;
  events: readonly NoticedEvent[];
}

/** What stays in sight wherever one works: the pumps' pressures where gauges scroll away, and cautions. */
export function StageWatch({ scene, view, events }: StageWatchProps) {
  const units = useUnits();
  const kept = useRef<readonly KeptCaution[]>([]);
  kept.current = lingering(kept.current, cautionsNow(scene, view, events), view.timeS);
  const more = kept.current.length - 1;
  return (
    <div className="stage-watch">
      {view.pumps.length > 0 && (
        // The gauges say the same to a screen reader.
        <div className="watch-strip figures" aria-hidden="true">
          {view.pumps.map(({ rigId, label }) => (
            <p key={rigId}>
              {view.pumps.length > 1 && <span className="watch-rig">{label}</span>}
              {(['intake', 'discharge'] as const).map((port) => (
                <WatchedGauge key={port} scene={scene} view={view} id={`${rigId}.${port}`} />
              ))}
            </p>
          ))}
        </div>
      )}
      <div className="stage-caution" role="status" aria-atomic="false">
        {kept.current.map(({ text }) => (
          <p key={text}>
            <span className="caution-shape" aria-hidden="true" />
            <span>{inUnits(text, units)}</span>
          </p>
        ))}
        {more > 0 && (
          <span className="caution-more figures" aria-hidden="true">
            +{more}
          </span>
        )}
      </div>
    </div>
  );
}

function WatchedGauge({ scene, view, id }: Omit<StageWatchProps, 'events'> & { id: string }) {
  const units = useUnits();
  const gauge = view.gauges.find((one) => one.id === id);
  if (!gauge) return null;
  const { number, unit, vacuum } = gaugeReading(gauge, gauge.value, units);
  return (
    <span className="watch-gauge" data-out={warnsOf(scene, view, gauge) !== undefined || undefined}>
      {id.endsWith('.intake') ? 'intake' : 'discharge'} <b>{number}</b> {unit}
      {vacuum && ' vac'}
    </span>
  );
}
