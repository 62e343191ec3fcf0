import {
  exponentPaper,
  fromInside,
  type PanelReading,
  type QuickEstimate,
  quantities,
  RATING_RESIDUAL_PSI,
} from '@plugside/fireground';
import { useId, useMemo } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { Axes, Graph } from './Graph.tsx';
import { EDGE, evenAxis } from './graph-frame.ts';

interface QuickGraphProps {
  reading: PanelReading;
  estimate: QuickEstimate;
}

/** What the intake would read with one, two, three … like lines flowing. */
export function QuickGraph({ reading, estimate }: QuickGraphProps) {
  const units = useUnits();
  const { curve } = estimate;
  if (!curve) return null;
  return (
    <Graph
      summary={`With ${1 + curve.moreLines} lines the intake keeps ${units.text(curve.leftPsi, 'pressure')}.`}
      caption={`Intake pressure, ${units.of(1, 'pressure').unit}, line by line`}
    >
      {(widthPx, heightPx) => (
        <Lines reading={reading} estimate={estimate} widthPx={widthPx} heightPx={heightPx} />
      )}
    </Graph>
  );
}

function Lines(props: QuickGraphProps & { widthPx: number; heightPx: number }) {
  const { reading, estimate, widthPx, heightPx } = props;
  const units = useUnits();
  const hatch = useId();
  const figures = useMemo(() => {
    const { staticPsi, residualPsi, flowGpm } = reading;
    const promised = Math.max(flowGpm, ...estimate.rules.map(({ totalGpm }) => totalGpm));
    // Where the curve comes to nothing: no rule's promise past it is worth drawing.
    const emptyGpm = estimate.emptyGpm ?? flowGpm;
    const mostGpm = Math.min(Math.max(promised, estimate.q20Gpm ?? 0) * 1.15, emptyGpm * 1.04);
    const paper = exponentPaper(mostGpm, [EDGE.left, widthPx - EDGE.right]);
    const perGpm = fromInside(1, 'flow', quantities.flow.shown[units.system]);
    const base = heightPx - EDGE.bottom;
    const y = evenAxis(staticPsi * 1.1, 'pressure', units.system, [base, EDGE.top], 5);
    const slope = (residualPsi - staticPsi) / (paper.x(flowGpm) - EDGE.left);
    const left = (gpm: number) => staticPsi + slope * (paper.x(gpm) - EDGE.left);
    const count = Math.min(8, Math.floor(mostGpm / flowGpm + 1e-9));
    return {
      y,
      x: {
        at: paper.x,
        ticks: paper.ticks(46, perGpm).map(({ flowGpm: value, shown }) => ({
          value,
          text: Math.round(shown).toLocaleString('en-US'),
        })),
      },
      line: `M${EDGE.left} ${y.at(staticPsi)}L${paper.x(mostGpm)} ${y.at(left(mostGpm))}`,
      lines: Array.from({ length: count }, (_, at) => {
        const gpm = flowGpm * (at + 1);
        return { number: at + 1, x: paper.x(gpm), y: y.at(left(gpm)), psi: left(gpm) };
      }).filter(({ y: place }) => place <= base + 1),
      limitY: y.at(RATING_RESIDUAL_PSI),
      base,
    };
  }, [reading, estimate, units.system, widthPx, heightPx]);
  const clip = useId();
  return (
    <>
      <defs>
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse">
          <path className="hatch" d="M-1 8L8 -1" />
        </pattern>
        <clipPath id={clip}>
          <rect x={EDGE.left} y={0} width={widthPx} height={figures.base} />
        </clipPath>
      </defs>
      <Axes widthPx={widthPx} heightPx={heightPx} x={figures.x} y={figures.y} paper />
      <g clipPath={`url(#${clip})`}>
        <rect
          fill={`url(#${hatch})`}
          x={EDGE.left}
          y={figures.limitY}
          width={widthPx - EDGE.left - EDGE.right}
          height={Math.max(0, figures.base - figures.limitY)}
        />
        <path
          className="limit-line"
          d={`M${EDGE.left} ${figures.limitY}H${widthPx - EDGE.right}`}
        />
        <path className="curve" d={figures.line} />
      </g>
      {figures.lines.map(({ number, x, y, psi }) => {
        const keeps = psi >= RATING_RESIDUAL_PSI - 1e-9;
        return (
          <g key={number}>
            <circle className={keeps ? 'station' : 'station-short'} cx={x} cy={y} r={5.5} />
            <text className={keeps ? 'line-number' : 'line-number line-short'} x={x + 9} y={y - 9}>
              {number === 1 ? '1 line' : number}
            </text>
          </g>
        );
      })}
    </>
  );
}
