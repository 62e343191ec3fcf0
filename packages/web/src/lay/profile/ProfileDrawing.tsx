import { area, line } from 'd3-shape';
import { useMemo } from 'react';
import { useUnits } from '../../editing/use-units.ts';
import type { Answered } from '../../plan-store/ask.ts';
import type { DrawingSizes } from '../scene/drawing-sizes.ts';
import { LabelLayer } from '../scene/LabelLayer.tsx';
import type { PlacedStation, Tracks } from '../scene/tracks.ts';
import { Ceilings, Floors } from './LimitBands.tsx';
import { type AloneLine, aloneLabel, ceilingLabels } from './line-labels.ts';
import { PdpHandle } from './PdpHandle.tsx';
import { ProfileRules } from './ProfileRules.tsx';
import { greatestShown, type ProfileFrame, profileFrame } from './profile-frame.ts';
import { lineRects, stationLabels } from './profile-labels.ts';
import { ceilings, floors } from './profile-limits.ts';
import { shutOffLabels, shutOffLines } from './shut-off-lines.ts';

interface ProfileDrawingProps {
  answered: Answered;
  tracks: Tracks;
  sizes: DrawingSizes;
  /** Hydrant pressure alone, on the same axis. */
  unassisted: AloneLine | null;
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
      ...shutOffLabels(shutLines, units),
      ...aloneLabel(unassisted, frame, sizes),
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
  const bounds = useMemo(
    () => ({ x: 2, y: 0, width: sizes.widthPx - MARGIN_PX, height: frame.bottomPx - 2 }),
    [sizes.widthPx, frame.bottomPx],
  );
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
        <ProfileRules frame={frame} tracks={tracks} sizes={sizes} />
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
      {pumpStations(tracks).map((one) => (
        <PdpHandle key={one.piece} answered={answered} station={one} frame={frame} />
      ))}
    </div>
  );
}

/** Each pump's discharge once, though two supplies may end at the same engine. */
function pumpStations(tracks: Tracks): PlacedStation[] {
  const found = new Map<string, PlacedStation>();
  for (const one of tracks.supply.flatMap((track) => track.stations)) {
    if (one.kind === 'discharge' && !found.has(one.piece)) found.set(one.piece, one);
  }
  return [...found.values()];
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
