import { scaleLinear } from 'd3-scale';
import { useMemo } from 'react';
import type { Units } from '../editing/use-units.ts';
import { Axes } from '../field-tests/Graph.tsx';
import { EDGE, evenAxis } from '../field-tests/graph-frame.ts';

interface LevelGraphProps {
  /** Corners: straight lines between. */
  level: readonly { atMin: number; gal: number }[];
  tankGal: number;
  /** A moment to point out, in a word; null: none. */
  moment: { atMin: number; text: string } | null;
  units: Units;
  widthPx: number;
  heightPx: number;
}

/** Water in a tank against minutes from the call. */
export function LevelGraph({ level, tankGal, moment, units, widthPx, heightPx }: LevelGraphProps) {
  const base = heightPx - EDGE.bottom;
  const drawn = useMemo(() => {
    const endMin = Math.max(1, ...level.map(({ atMin }) => atMin));
    const scale = scaleLinear([0, endMin], [EDGE.left, widthPx - EDGE.right]);
    const y = evenAxis(tankGal * 1.1, 'volume', units.system, [base, EDGE.top], 4);
    const corners = level.map(({ atMin, gal }) => `${scale(atMin)} ${y.at(gal)}`);
    return {
      at: (minutes: number) => scale(minutes),
      x: {
        at: (minutes: number) => scale(minutes),
        ticks: scale.ticks(6).map((value) => ({ value, text: String(value) })),
      },
      y,
      line: `M${corners.join('L')}`,
      area: `M${scale(level[0]?.atMin ?? 0)} ${base}L${corners.join('L')}L${scale(level.at(-1)?.atMin ?? 0)} ${base}Z`,
    };
  }, [level, tankGal, units.system, widthPx, base]);
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={drawn.x} y={drawn.y} />
      <path className="tank-area" d={drawn.area} />
      <path className="curve" d={drawn.line} />
      {moment && (
        <>
          <path className="here-line" d={`M${drawn.at(moment.atMin)} ${EDGE.top}V${base}`} />
          <text
            className="needed-text"
            x={drawn.at(moment.atMin) - 6}
            y={EDGE.top + 8}
            textAnchor="end"
          >
            {moment.text}
          </text>
        </>
      )}
    </>
  );
}
