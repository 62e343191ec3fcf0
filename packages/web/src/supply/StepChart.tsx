import { clock, type TimeToWater } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';

const LAST_TICKS = 6;

/** The steps to water as bars over time, each with its words. */
export function StepChart({ time }: { time: TimeToWater }) {
  const { steps, waterAtMin, fullAtMin } = time;
  const endMin = Math.max(1, fullAtMin, ...steps.map((step) => step.endMin));
  const scale = scaleLinear([0, endMin], [0, 100]);
  return (
    <div className="step-chart">
      <ol>
        {steps.map(({ text, startMin, endMin: doneMin }) => (
          <li key={`${text}:${startMin}`}>
            <span className="step-text">{text}</span>
            <span className="step-time figures">
              {doneMin > startMin ? `${clock(startMin)}–${clock(doneMin)}` : clock(startMin)}
            </span>
            <span className="step-track" aria-hidden="true">
              <span
                className="step-bar"
                style={{
                  left: `${scale(startMin)}%`,
                  width: `max(3px, ${scale(doneMin) - scale(startMin)}%)`,
                }}
              />
            </span>
          </li>
        ))}
      </ol>
      <p className="step-ticks figures" aria-hidden="true">
        {scale.ticks(LAST_TICKS).map((tick) => (
          <span key={tick} style={{ left: `${scale(tick)}%` }}>
            {tick}
          </span>
        ))}
      </p>
      <p className="step-water">
        First water at the engine after <b className="figures">{clock(waterAtMin)}</b> min
        {fullAtMin > waterAtMin && (
          <>
            , all of it after <b className="figures">{clock(fullAtMin)}</b>
          </>
        )}
      </p>
    </div>
  );
}
