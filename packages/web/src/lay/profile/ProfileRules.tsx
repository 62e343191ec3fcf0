import { useUnits } from '../../editing/use-units.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import type { Tracks } from '../scene/tracks.ts';
import { distanceTicks, type ProfileFrame } from './profile-frame.ts';

interface ProfileRulesProps {
  frame: ProfileFrame;
  tracks: Tracks;
  sizes: DrawingSizes;
}

/** The lines and numbers that the pressures are read against. */
export function ProfileRules({ frame, tracks, sizes }: ProfileRulesProps) {
  const units = useUnits();
  const { scale } = tracks;
  const layFt = Math.max(...tracks.supply.map((track) => track.layFt), 1);
  const ticks = distanceTicks(scale, layFt, units.system, sizes.compact ? 44 : 70);
  const unit = units.of(1, 'length').unit;
  return (
    <g className="rules">
      {frame.ticks.map((tick) => (
        <g key={tick.text}>
          <path className="rule" d={`M${sizes.startPx} ${frame.y(tick.psi)}H${sizes.widthPx}`} />
          <text
            className="tick"
            x={sizes.startPx - 5}
            y={frame.y(tick.psi)}
            dy="0.34em"
            textAnchor="end"
          >
            {tick.text}
          </text>
        </g>
      ))}
      <path className="axis" d={`M${sizes.startPx} ${frame.y(0)}H${sizes.widthPx}`} />
      <path
        className="fold"
        d={`M${scale.hookupEndX} 0V${frame.bottomPx}M${scale.sceneX} 0V${frame.bottomPx}`}
      />
      {ticks.map((tick, i) => (
        <g key={tick.text}>
          <path className="axis" d={`M${tick.x} ${frame.bottomPx}v5`} />
          <text className="tick" x={tick.x} y={frame.bottomPx + 18} textAnchor="middle">
            {i === ticks.length - 1 ? `${tick.text} ${unit}` : tick.text}
          </text>
        </g>
      ))}
      {!sizes.compact && (
        <>
          <text
            className="tick"
            x={(sizes.startPx + scale.hookupEndX) / 2}
            y={frame.bottomPx + 18}
            textAnchor="middle"
          >
            {scale.hookupEndX > 250 ? 'at the source, not to scale' : 'not to scale'}
          </text>
          {tracks.attack.length > 0 && (
            <text
              className="tick"
              x={(scale.attackStartX + sizes.widthPx) / 2}
              y={frame.bottomPx + 18}
              textAnchor="middle"
            >
              {scale.attackToScale ? 'attack lines' : 'attack lines, wider scale'}
            </text>
          )}
        </>
      )}
    </g>
  );
}
