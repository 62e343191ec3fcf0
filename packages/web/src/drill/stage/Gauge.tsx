import type { DrillScene, DrillView, GaugeView } from '@plugside/drill';
import { splitPortRef } from '@plugside/fireground';
import { useUnits } from '../../editing/use-units.ts';
import { gaugeName } from './gauge-groups.ts';
import type { Reading } from './gauge-history.ts';
import { gaugeLimits, gaugeQuantity, gaugeTicks, gaugeTop, isOut } from './gauge-scale.ts';
import { Strip } from './Strip.tsx';

interface GaugeProps {
  scene: DrillScene;
  view: DrillView;
  gauge: GaugeView;
  readings: readonly Reading[] | undefined;
}

const percent = (share: number) => `${Math.min(100, Math.max(0, share * 100))}%`;

/** One gauge: its number, the number on a scale with its limits, and how it came there. */
export function Gauge({ scene, view, gauge, readings }: GaugeProps) {
  const units = useUnits();
  const quantity = gaugeQuantity[gauge.unit];
  const shown = units.of(gauge.value, quantity);
  const top = gaugeTop(scene, gauge);
  const limits = gaugeLimits(scene, view, gauge);
  const out = limits.find((limit) => isOut(gauge.value, limit));
  const warns = out !== undefined && (out.sense === 'greatest' || isFed(view, gauge));
  return (
    <div className="gauge" data-out={warns || undefined} data-gauge={gauge.id}>
      <p className="gauge-name">{gaugeName(view, gauge)}</p>
      <div className="gauge-head">
        <p className="gauge-value figures">
          <b>{shown.number}</b> <span className="unit">{shown.unit}</span>
        </p>
        <p className="gauge-note">
          {warns ? (
            <span className="caution-word">
              <span className="caution-shape" aria-hidden="true" />{' '}
              {out.sense === 'least' ? 'under' : 'over'} {units.text(out.value, quantity)}
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
                ? { left: 0, width: percent(value / top) }
                : { left: percent(value / top), right: 0 }
            }
          />
        ))}
        <i className="gauge-fill" style={{ width: percent(gauge.value / top) }} />
        {limits.map(({ value, sense }) => (
          <i key={sense} className="gauge-limit" style={{ left: percent(value / top) }} />
        ))}
      </div>
      <div className="gauge-ticks figures" aria-hidden="true">
        {gaugeTicks(top, gauge.unit, units).map(({ at, text }) => (
          <span key={text} style={{ left: percent(at) }}>
            {text}
          </span>
        ))}
      </div>
      {readings && <Strip readings={readings} nowS={view.timeS} top={top} limits={limits} />}
    </div>
  );
}

/** An intake that nothing feeds warns of nothing: its valves are shut, or its pump lives on the tank. */
function isFed({ valves, hoseEnds }: DrillView, { id, value }: GaugeView): boolean {
  const { pieceId } = splitPortRef(id);
  return (
    value > 1 ||
    valves.some(
      (valve) =>
        valve.pieceId === pieceId &&
        valve.kind === 'intake' &&
        valve.opening > 0.02 &&
        hoseEnds.some(({ port, looks }) => port === valve.id && looks !== 'flat'),
    )
  );
}
