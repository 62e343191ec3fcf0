import { area, line } from 'd3-shape';
import { useMemo } from 'react';
import { type Units, useUnits } from '../../editing/use-units.ts';
import type { Answered } from '../../plan-store/ask.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import { LabelLayer, type LabelSpec } from '../scene/LabelLayer.tsx';
import type { PlacedStation, Tracks } from '../scene/tracks.ts';
import { Ceilings, Floors } from './LimitBands.tsx';
import { PdpHandle } from './PdpHandle.tsx';
import { distanceTicks, greatestShown, type ProfileFrame, profileFrame } from './profile-frame.ts';
import { lineRects, stationLabels } from './profile-labels.ts';
import { type Ceiling, ceilings, floors } from './profile-limits.ts';

interface ProfileDrawingProps {
  answered: Answered;
  tracks: Tracks;
  sizes: DrawingSizes;
  /** Hydrant pressure alone, on the same axis. */
  unassisted: { tracks: Tracks; text: string } | null;
  /** The same answer with the hose at the two ends of its coefficient's range. */
  band: { low: Tracks; high: Tracks } | null;
  fontsReady: boolean;
  describedBy: string;
}

const MARGIN_PX = 4;

/** Pressure against distance, under the evolution and on its axis. */
export function ProfileDrawing(props: ProfileDrawingProps) {
  const { answered, tracks, sizes, unassisted, band, fontsReady, describedBy } = props;
  const units = useUnits();
  const over = useMemo(() => ceilings(tracks, answered.limits), [tracks, answered.limits]);
  const under = useMemo(() => floors(tracks, answered.limits), [tracks, answered.limits]);
  const frame = useMemo(() => {
    const stations = [...tracks.supply, ...tracks.attack].flatMap((track) => track.stations);
    const pressures = stations.map((one) => one.psi);
    const supplyLimits = over
      .filter((one) => one.x0 < tracks.scale.sceneX)
      .map((one) => one.limitPsi);
    const shut = answered.shutOff.lines.map((one) => one.shutPsi);
    const most = greatestShown([...pressures, ...supplyLimits], shut);
    return profileFrame([...pressures, most], sizes.profilePx, units.system);
  }, [tracks, over, answered.shutOff, sizes.profilePx, units.system]);
  const shutLines = useMemo(() => shutOffLines(answered, tracks, frame), [answered, tracks, frame]);
  const labels = useMemo(
    () => [
      ...stationLabels(tracks, frame, sizes, units),
      ...shutLines
        .filter((one) => one.tell)
        .map(
          (one): LabelSpec => ({
            id: `shut:${one.id}`,
            x: one.x0 + (one.x1 - one.x0) * 0.72,
            y: one.y,
            lines: [
              `${one.above ? '↑ ' : ''}${units.number(one.psi, 'pressure')} with nozzles shut`,
            ],
            look: one.passed ? 'warning' : 'soft',
            priority: 3,
            alternates: [0.45, 0.25].map(
              (share) => [one.x0 + (one.x1 - one.x0) * share, one.y] as const,
            ),
            sides: ['below', 'above'],
            gap: 5,
            reach: 20,
          }),
        ),
      ...unassistedLabel(unassisted, frame, sizes),
      ...ceilingLabels(over, frame, units),
    ],
    [tracks, frame, sizes, units, shutLines, unassisted, over],
  );
  const soft = useMemo(
    () => [
      ...lineRects(tracks, frame),
      ...(unassisted ? lineRects(unassisted.tracks, frame) : []),
      ...over.map((one) => ({
        x: one.x0,
        y: frame.y(one.limitPsi) - 2,
        width: one.x1 - one.x0,
        height: 4,
      })),
      ...under.map((one) => ({
        x: one.x - 26,
        y: frame.y(one.limitPsi) - 2,
        width: 52,
        height: frame.y(0) - frame.y(one.limitPsi) + 2,
      })),
    ],
    [tracks, unassisted, over, under, frame],
  );
  const fixed = useMemo(
    () => [
      ...frame.ticks.map((tick) => ({
        x: 0,
        y: frame.y(tick.psi) - 8,
        width: sizes.startPx,
        height: 16,
      })),
      // The rings that set the pumps.
      ...tracks.supply.flatMap((track) =>
        track.stations
          .filter((one) => one.kind === 'discharge')
          .map((one) => ({ x: one.x - 8, y: frame.y(one.psi) - 8, width: 16, height: 16 })),
      ),
    ],
    [frame, sizes.startPx, tracks],
  );
  const bounds = { x: 2, y: 0, width: sizes.widthPx - MARGIN_PX, height: frame.bottomPx - 2 };
  return (
    <div className="profile">
      <svg
        width={sizes.widthPx}
        height={sizes.profilePx}
        viewBox={`0 0 ${sizes.widthPx} ${sizes.profilePx}`}
        role="img"
        aria-label={`Pressure along the lay, ${units.of(1, 'pressure').spoken} against distance`}
        aria-describedby={describedBy}
      >
        <Rules frame={frame} tracks={tracks} sizes={sizes} />
        <Ceilings list={over} frame={frame} />
        <Floors list={under} frame={frame} compact={sizes.compact} />
        {band && <Band band={band} frame={frame} />}
        {shutLines.map((one) => (
          <path
            key={one.id}
            className={one.passed ? 'shut-line shut-line-passed' : 'shut-line'}
            d={`M${one.x0} ${one.y}H${one.x1}`}
          />
        ))}
        {unassisted?.tracks.supply.slice(0, 1).map((track) => (
          <path
            key={track.path.id}
            className="alone"
            d={pathOf(supplyOnly(track.stations), frame)}
          />
        ))}
        {tracks.attack.map((track) => (
          <path key={track.path.id} className="pressure attack" d={pathOf(track.stations, frame)} />
        ))}
        {[...tracks.supply].reverse().map((track, i, all) => {
          const main = i === all.length - 1;
          return (
            <g key={track.path.id} className={main ? 'pressure' : 'pressure second'}>
              {main && <path className="under" d={underOf(track.stations, frame)} />}
              <path className="pressure-line" d={pathOf(track.stations, frame)} />
            </g>
          );
        })}
        {tracks.supply.flatMap((track) =>
          track.stations
            .filter((one) => one.kind !== 'terrain')
            .map((one, i) => (
              <circle
                key={`${track.path.id}:${one.piece}:${one.port ?? i}`}
                className="station"
                cx={one.x}
                cy={frame.y(one.psi)}
                r={one.kind === 'discharge' || one.kind === 'intake' ? 4.5 : 3}
              />
            )),
        )}
        <LabelLayer
          labels={labels}
          obstacles={fixed}
          soft={soft}
          bounds={bounds}
          textPx={sizes.textPx + (sizes.compact ? 0 : 1)}
          fontsReady={fontsReady}
        />
      </svg>
      {tracks.supply.flatMap((track) =>
        track.stations.flatMap((one) =>
          one.kind === 'discharge'
            ? [
                <PdpHandle
                  key={`${track.path.id}:${one.piece}`}
                  answered={answered}
                  station={one}
                  frame={frame}
                />,
              ]
            : [],
        ),
      )}
    </div>
  );
}

function pathOf(stations: readonly PlacedStation[], frame: ProfileFrame): string {
  return (
    line<PlacedStation>()
      .x((one) => one.x)
      .y((one) => frame.y(one.psi))([...stations]) ?? ''
  );
}

function underOf(stations: readonly PlacedStation[], frame: ProfileFrame): string {
  return (
    area<PlacedStation>()
      .x((one) => one.x)
      .y0(frame.y(0))
      .y1((one) => frame.y(one.psi))([...stations]) ?? ''
  );
}

/** Without the scene's own pump: hydrant pressure ends where the attack engine takes over. */
function supplyOnly(stations: readonly PlacedStation[]): PlacedStation[] {
  const last = stations.at(-1);
  return last?.kind === 'discharge' ? stations.slice(0, -1) : [...stations];
}

function unassistedLabel(
  unassisted: ProfileDrawingProps['unassisted'],
  frame: ProfileFrame,
  sizes: DrawingSizes,
): LabelSpec[] {
  const stations = unassisted?.tracks.supply[0]?.stations.filter((one) => one.region === 'lay');
  if (!unassisted || !stations || stations.length === 0) return [];
  const first = unassisted.tracks.supply[0]!.stations.filter((one) => one.region === 'hookup').at(
    -1,
  );
  const last = stations.find((one) => one.kind === 'intake') ?? stations.at(-1)!;
  if (!first) return [];
  const t = 0.4;
  return [
    {
      id: 'alone',
      x: first.x + (last.x - first.x) * t,
      y: frame.y(first.psi + (last.psi - first.psi) * t),
      lines: sizes.compact ? unassisted.text.split(': ') : [unassisted.text],
      look: 'soft',
      priority: 5,
      sides: ['above', 'below'],
      gap: 6,
      reach: 30,
    },
  ];
}

function ceilingLabels(over: readonly Ceiling[], frame: ProfileFrame, units: Units): LabelSpec[] {
  return over.flatMap((one): LabelSpec[] => {
    const y = frame.y(one.limitPsi);
    const widthPx = one.x1 - one.x0;
    if (widthPx < 56 || y < frame.topPx) return [];
    const limit = units.of(one.limitPsi, 'pressure');
    const text =
      widthPx > 170 ? `hose, at most ${limit.number} ${limit.unit}` : `max ${limit.number}`;
    return [
      {
        id: `ceiling:${one.x0}:${one.limitPsi}`,
        x: one.x0 + (one.x1 - one.x0) * 0.8,
        y,
        alternates: [0.5, 0.35].map((share) => [one.x0 + (one.x1 - one.x0) * share, y] as const),
        lines: [text],
        look: 'warning',
        priority: 6,
        sides: ['above'],
        gap: 4,
        reach: 0,
      },
    ];
  });
}

interface ShutLine {
  id: string;
  x0: number;
  x1: number;
  y: number;
  above: boolean;
  psi: number;
  passed: boolean;
  tell: boolean;
}

function shutOffLines(answered: Answered, tracks: Tracks, frame: ProfileFrame): ShutLine[] {
  const lines: ShutLine[] = [];
  for (const { path, stations } of tracks.supply) {
    for (const [i, span] of path.spans.entries()) {
      if (span.kind !== 'hose' || path.regions[i] === 'hookup') continue;
      const shut = answered.shutOff.lines.find((one) => one.id === span.line);
      if (!shut) continue;
      const first = lines.every((one) => one.id !== span.line);
      const y = frame.y(shut.shutPsi);
      lines.push({
        id: first ? span.line : `${span.line}#${i}`,
        x0: stations[i]!.x,
        x1: stations[i + 1]!.x,
        // Off the scale: told at the top edge.
        y: Math.max(y, frame.topPx),
        above: y < frame.topPx,
        psi: shut.shutPsi,
        passed: shut.passed,
        tell: first && shut.shutPsi > shut.flowingPsi + 2,
      });
    }
  }
  return lines;
}

function Band({ band, frame }: { band: { low: Tracks; high: Tracks }; frame: ProfileFrame }) {
  const low = band.low.supply[0]?.stations ?? [];
  const high = band.high.supply[0]?.stations ?? [];
  if (low.length !== high.length) return null;
  const pairs = low.map((one, i) => ({ x: one.x, a: one.psi, b: high[i]!.psi }));
  const d = area<(typeof pairs)[number]>()
    .x((one) => one.x)
    .y0((one) => frame.y(one.a))
    .y1((one) => frame.y(one.b))(pairs);
  return <path className="band" d={d ?? ''} />;
}

interface RulesProps {
  frame: ProfileFrame;
  tracks: Tracks;
  sizes: DrawingSizes;
}

function Rules({ frame, tracks, sizes }: RulesProps) {
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
