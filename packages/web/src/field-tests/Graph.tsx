import { type ReactNode, useRef } from 'react';
import { useWidth } from '../lay/use-drawing.ts';
import { type Axis, EDGE, graphHeight } from './graph-frame.ts';

interface GraphProps {
  /** What is drawn, in words: the picture's name for the ear. */
  summary: string;
  /** Over the drawing: what stands against what. */
  caption: string;
  children(widthPx: number, heightPx: number): ReactNode;
}

/** A drawing as wide as its place. */
export function Graph({ summary, caption, children }: GraphProps) {
  const frame = useRef<HTMLDivElement>(null);
  const widthPx = useWidth(frame);
  const heightPx = graphHeight(widthPx);
  return (
    <figure className="test-graph">
      <figcaption className="section-name">{caption}</figcaption>
      <div ref={frame}>
        {widthPx > 0 && (
          <svg
            width={widthPx}
            height={heightPx}
            viewBox={`0 0 ${widthPx} ${heightPx}`}
            role="img"
            aria-label={summary}
          >
            {children(widthPx, heightPx)}
          </svg>
        )}
      </div>
    </figure>
  );
}

interface AxesProps {
  widthPx: number;
  heightPx: number;
  x: Pick<Axis, 'at' | 'ticks'>;
  y: Axis;
  /** Lines up from the flow marks, as on printed paper. */
  paper?: boolean;
}

/** Rules, axis and marks. */
export function Axes({ widthPx, heightPx, x, y, paper }: AxesProps) {
  const base = heightPx - EDGE.bottom;
  return (
    <g>
      {y.ticks.map(({ value, text }) => (
        <g key={text}>
          <path className="rule" d={`M${EDGE.left} ${y.at(value)}H${widthPx - EDGE.right}`} />
          <text className="tick" x={EDGE.left - 6} y={y.at(value)} dy="0.34em" textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {x.ticks.map(({ value, text }) => (
        <g key={text}>
          {paper && <path className="rule" d={`M${x.at(value)} ${EDGE.top}V${base}`} />}
          <text className="tick" x={x.at(value)} y={base + 19} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <path className="axis" d={`M${EDGE.left} ${base}H${widthPx - EDGE.right}`} />
    </g>
  );
}
