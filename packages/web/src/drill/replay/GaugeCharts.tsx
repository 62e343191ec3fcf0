import { TICKS_PER_S } from '@plugside/drill';
import { type PointerEvent, useRef } from 'react';
import { useUnits } from '../../editing/use-units.ts';
import { useWidth } from '../../lay/use-drawing.ts';
import { fullVacuumText, gaugeQuantity, gaugeReading } from '../stage/gauge-scale.ts';
import { clockText } from '../words.ts';
import {
  type ChartSize,
  hasVacuum,
  heightOf,
  lineOf,
  readingAt,
  topOf,
  xAt,
} from './chart-frame.ts';
import type { Mark } from './marks.ts';
import type { GaugeSeries, Played } from './replay-run.ts';

const HEIGHT = 64;
const LANE_HEIGHT = 30;

interface GaugeChartsProps {
  played: Played;
  marks: readonly Mark[];
  timeS: number;
  lastS: number;
  onTime(timeS: number): void;
}

/** Every gauge over the whole drill on one axis of time, with what was done and said above. */
export function GaugeCharts({ played, marks, timeS, lastS, onTime }: GaugeChartsProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  const size: ChartSize = { width, height: HEIGHT, lastS };
  const x = xAt(timeS, size);
  const point = (event: PointerEvent<HTMLDivElement>) => {
    if (event.buttons === 0 && event.type === 'pointermove') return;
    const { left } = event.currentTarget.getBoundingClientRect();
    const share = Math.min(1, Math.max(0, (event.clientX - left) / Math.max(1, width)));
    onTime(Math.round(share * lastS * 2) / 2);
  };
  return (
    <section className="charts" aria-label="Gauges over time">
      <h2 className="section-name">Gauges over time</h2>
      <div className="charts-sheet">
        <div className="chart-row lane-row">
          <p className="chart-name soft-text">
            <i className="mark-key mark-action" aria-hidden="true" /> done{' '}
            <i className="mark-key mark-radio" aria-hidden="true" /> said{' '}
            <i className="mark-key mark-caution" aria-hidden="true" /> went wrong
          </p>
          {/* The slider above does the same by keyboard. */}
          <div className="chart-line" ref={place} onPointerDown={point} onPointerMove={point}>
            {width > 0 && (
              <svg width={width} height={LANE_HEIGHT} aria-hidden="true">
                {marks.map((mark) => (
                  <MarkShape key={mark.seq} mark={mark} size={size} />
                ))}
                <path className="chart-now" d={`M${x} 0V${LANE_HEIGHT}`} />
              </svg>
            )}
          </div>
        </div>
        {played.series.map((series) => (
          <div className="chart-row" key={series.id}>
            <ChartName series={series} ticks={played.ticks} tick={timeS * TICKS_PER_S} />
            <div className="chart-line" onPointerDown={point} onPointerMove={point}>
              {width > 0 && <Chart series={series} ticks={played.ticks} size={size} x={x} />}
            </div>
          </div>
        ))}
        <div className="chart-row">
          <p className="chart-name" />
          <p className="chart-ends figures soft-text">
            <span>{clockText(0)}</span>
            <span>{clockText(lastS / 2)}</span>
            <span>{clockText(lastS)}</span>
          </p>
        </div>
      </div>
    </section>
  );
}

function ChartName(props: { series: GaugeSeries; ticks: readonly number[]; tick: number }) {
  const { series, ticks, tick } = props;
  const units = useUnits();
  const { number, unit, vacuum } = gaugeReading(
    series,
    readingAt(series, ticks, tick),
    units,
    series.fullGal,
  );
  return (
    <p className="chart-name">
      <span>{series.label}</span>
      <span className="figures">
        <b>{number}</b>{' '}
        <span className="unit">
          {unit}
          {vacuum && ' vacuum'}
        </span>
      </span>
    </p>
  );
}

interface ChartProps {
  series: GaugeSeries;
  ticks: readonly number[];
  size: ChartSize;
  x: number;
}

function Chart({ series, ticks, size, x }: ChartProps) {
  const units = useUnits();
  const quantity = gaugeQuantity[series.unit];
  const top = topOf(series);
  const { width, height } = size;
  const least = series.least;
  const y = (value: number) => height * (1 - heightOf(series, value, top));
  const spoken = [0, 0.25, 0.5, 0.75, 1].map((share) => {
    const tick = share * (ticks.at(-1) ?? 0);
    const { number, unit, vacuum } = gaugeReading(
      series,
      readingAt(series, ticks, tick),
      units,
      series.fullGal,
    );
    return `${clockText(tick / TICKS_PER_S)} ${number} ${unit}${vacuum ? ' vacuum' : ''}`;
  });
  return (
    <svg
      width={width}
      height={height + 8}
      viewBox={`0 -4 ${width} ${height + 8}`}
      role="img"
      aria-label={`${series.label} over time: ${spoken.join(', ')}`}
    >
      {least !== undefined && (
        <rect className="chart-under" y={y(least)} width={width} height={height - y(least)} />
      )}
      <path className="chart-base" d={`M0 ${y(0)}H${width}`} />
      <path className="chart-reading" d={lineOf(series, ticks, TICKS_PER_S, top, size)} />
      <path className="chart-now" d={`M${x} -4V${height + 4}`} />
      <text className="chart-top figures" x={width - 2} y={8} textAnchor="end">
        {series.fullGal === undefined ? units.text(top, quantity) : 'full'}
      </text>
      {hasVacuum(series) && (
        <text className="chart-top figures" x={width - 2} y={height} textAnchor="end">
          {fullVacuumText(units)} vacuum
        </text>
      )}
    </svg>
  );
}

function MarkShape({ mark, size }: { mark: Mark; size: ChartSize }) {
  const x = xAt(mark.tick / TICKS_PER_S, size);
  if (mark.kind === 'event') {
    if (mark.event.level !== 'caution') return null;
    return <path className="mark-caution" d={`M${x - 5} 29L${x} 20L${x + 5} 29Z`} />;
  }
  if (mark.kind === 'fault')
    return <path className="mark-caution" d={`M${x - 5} 29L${x} 20L${x + 5} 29Z`} />;
  if (mark.kind === 'radio')
    return <path className="mark-radio" d={`M${x - 4} 10h8v7h-4l-3 3v-3h-1Z`} />;
  return <path className={`mark-${mark.kind}`} d={`M${x} 1V8`} />;
}
