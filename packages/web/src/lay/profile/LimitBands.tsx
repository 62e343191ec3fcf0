import type { ProfileFrame } from './profile-frame.ts';
import type { Ceiling, Floor } from './profile-limits.ts';

/** Hatching for "not here", told by its strokes and not by colour alone. */
export function Hatches() {
  return (
    <defs>
      <pattern
        id="keep-out"
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path className="hatch" d="M0 0V7" />
      </pattern>
    </defs>
  );
}

interface CeilingsProps {
  list: readonly Ceiling[];
  frame: ProfileFrame;
}

/** "At most": hatched above the hose that it holds for. */
export function Ceilings({ list, frame }: CeilingsProps) {
  return (
    <g className="ceilings">
      <Hatches />
      {list.map((one) => {
        const y = frame.y(one.limitPsi);
        if (y < frame.topPx - 2 || one.x1 - one.x0 < 1) return null;
        return (
          <g
            key={`${one.x0}:${one.limitPsi}`}
            className={one.passed ? 'limit limit-passed' : 'limit'}
          >
            <rect
              fill="url(#keep-out)"
              x={one.x0}
              y={Math.max(y - 26, 0)}
              width={one.x1 - one.x0}
              height={Math.min(26, y)}
            />
            <path className="limit-line" d={`M${one.x0} ${y}H${one.x1}`} />
          </g>
        );
      })}
    </g>
  );
}

interface FloorsProps {
  list: readonly Floor[];
  frame: ProfileFrame;
  compact: boolean;
}

/** "At least": a hatched step to stay above, and the room left standing on it. */
export function Floors({ list, frame, compact }: FloorsProps) {
  const half = compact ? 11 : 26;
  return (
    <g className="floors">
      {list.map((one) => {
        const y = frame.y(one.limitPsi);
        const base = frame.y(0);
        const value = frame.y(one.valuePsi);
        return (
          <g key={one.id} className={one.passed ? 'limit limit-passed' : 'limit'}>
            <rect
              fill="url(#keep-out)"
              x={one.x - half}
              y={y}
              width={half * 2}
              height={Math.max(base - y, 0)}
            />
            <path className="limit-line" d={`M${one.x - half} ${y}H${one.x + half}`} />
            {value < y - 3 && <path className="room" d={`M${one.x} ${y}V${value}`} />}
          </g>
        );
      })}
    </g>
  );
}
