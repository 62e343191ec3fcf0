import { alongCurve, type HoseCurve } from '../scene/curves.ts';

interface HoseShapeProps {
  curve: HoseCurve;
  widthPx: number;
  /** Signed by the curve's direction [gpm]. */
  flowGpm: number;
  velocityFtS: number;
  shut: boolean;
  /** Passes its pressure limit. */
  over: boolean;
}

const STILL_GPM = 0.5;

/** A hose: filled with water when it flows, hollow when it does not; marks move with the water. */
export function HoseShape({ curve, widthPx, flowGpm, velocityFtS, shut, over }: HoseShapeProps) {
  const flowing = Math.abs(flowGpm) > STILL_GPM;
  const kind = flowing ? 'flowing' : shut ? 'shut' : 'still';
  const seconds = Math.min(4, Math.max(0.5, 18 / Math.max(velocityFtS, 1)));
  const middle = alongCurve(curve.points, 0.5);
  return (
    <g className={`hose hose-${kind}${over ? ' hose-over' : ''}`}>
      <path className="casing" d={curve.d} strokeWidth={widthPx + 2} />
      <path
        className="water"
        d={curve.d}
        strokeWidth={Math.max(widthPx - (flowing ? 0 : 1.6), 1)}
      />
      {flowing && widthPx > 3 && (
        <path
          className={flowGpm < 0 ? 'current backwards' : 'current'}
          d={curve.d}
          strokeWidth={Math.max(1.2, widthPx * 0.26)}
          style={{ animationDuration: `${seconds}s` }}
        />
      )}
      {flowing && flowGpm < -STILL_GPM && (
        <path
          className="against"
          d="M6 -7L-5 0L6 7"
          transform={`translate(${middle.at[0]} ${middle.at[1]}) rotate(${middle.angle})`}
        />
      )}
    </g>
  );
}
