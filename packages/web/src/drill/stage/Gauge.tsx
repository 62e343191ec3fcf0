import type { DrillScene, DrillView, GaugeView } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { gaugeName } from './gauge-groups.ts';
import type { Reading } from './gauge-history.ts';
import {
  fullVacuumText,
  gaugeLimits,
  gaugeQuantity,
  gaugeReading,
  gaugeShare,
  gaugeTicks,
  gaugeTop,
  isCompound,
} from './gauge-scale.ts';
import { warnsOf } from './gauge-warns.ts';
import { Strip } from './Strip.tsx';

interface GaugeProps {
  scene: DrillScene;
  view: DrillView;
  gauge: GaugeView;
  readings: readonly Reading[] | undefined;
}

const percent = (share: number) => `${share * 100}%`;

/** One gauge: its number, the number on a scale with its limits, and how it came there. */
export function Gauge({ scene, view, gauge, readings }: GaugeProps) {
  const units = useUnits();
  const quantity = gaugeQuantity[gauge.unit];
  const top = gaugeTop(scene, gauge);
  const shown = gaugeReading(gauge, gauge.value, units, top);
  const compound = isCompound(gauge);
  const at = (value: number) => gaugeShare(gauge, value, top);
  const [zero, now] = [at(0), at(gauge.value)];
  const limits = gaugeLimits(scene, view, gauge);
  const warns = warnsOf(scene, view, gauge);
  return (
    <div
      className="gauge"
      data-out={warns !== undefined || undefined}
      data-compound={compound || undefined}
      data-long={shown.number.length > 4 || undefined}
      data-gauge={gauge.id}
    >
      <p className="gauge-name">{gaugeName(view, gauge)}</p>
      <div className="gauge-head">
        <p className="gauge-value figures">
          <b>{shown.number}</b> <span className="unit">{shown.unit}</span>
        </p>
        <p className="gauge-note">
          {shown.vacuum && <b>vacuum{limits.length > 0 && ', '}</b>}
          {warns ? (
            <span className="caution-word">
              <span className="caution-shape" aria-hidden="true" />{' '}
              {warns.sense === 'least' ? 'under' : 'over'} {units.text(warns.value, quantity)}
            </span>
          ) : (
            limits.map(({ text, value }) => `${text} ${units.text(value, quantity)}`).join(' · ')
          )}
        </p>
      </div>
      <div className="gauge-scale" aria-hidden="true">
        {limits.map(({ value, sense }) => (
          <i
            key={sense}
            className="gauge-out"
            style={
              sense === 'least'
                ? { left: 0, width: percent(at(value)) }
                : { left: percent(at(value)), right: 0 }
            }
          />
        ))}
        <i
          className="gauge-fill"
          style={{ left: percent(Math.min(zero, now)), width: percent(Math.abs(now - zero)) }}
        />
        {compound && <i className="gauge-zero" style={{ left: percent(zero) }} />}
        {limits.map(({ value, sense }) => (
          <i key={sense} className="gauge-limit" style={{ left: percent(at(value)) }} />
        ))}
      </div>
      <div className="gauge-ticks figures" aria-hidden="true">
        {compound && <i title={fullVacuumText(units)}>vac</i>}
        {gaugeTicks(top, gauge, units).map(({ at: share, text }) => (
          <span key={text} style={{ left: percent(share) }}>
            {text}
          </span>
        ))}
      </div>
      {readings && <Strip readings={readings} nowS={view.timeS} at={at} limits={limits} />}
    </div>
  );
}
