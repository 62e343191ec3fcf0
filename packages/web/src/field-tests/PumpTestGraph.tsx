import {
  capabilityFor,
  type PumpCurve,
  type PumpTestEntry,
  RATING_POINTS,
} from '@plugside/fireground';
import { line } from 'd3-shape';
import { useMemo } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { LabelLayer, type LabelSpec } from '../lay/scene/LabelLayer.tsx';
import { rectsAlong } from '../lay/scene/label-placement.ts';
import { useFontsReady } from '../lay/use-drawing.ts';
import { Axes, Graph } from './Graph.tsx';
import { EDGE, evenAxis } from './graph-frame.ts';

interface PumpTestGraphProps {
  curve: PumpCurve;
  /** Undefined where the rig has no rating. */
  ratedGpm: number | undefined;
  /** Other tests of the rig, drawn behind. */
  earlier?: readonly PumpTestEntry[];
}

const path = line<readonly [number, number]>();
const NONE: readonly PumpTestEntry[] = [];

/** A rig's own pump curve against what its rating asks for and what a plan takes without a test. */
export function PumpTestGraph({ curve, ratedGpm, earlier = NONE }: PumpTestGraphProps) {
  const units = useUnits();
  const share = curve.shareOfRating;
  const summary = curve.points
    ? `Pump curve through ${curve.readings.length} readings${share === null ? '' : `, ${Math.round(share * 100)} % of its rating`}.`
    : 'Pump curve. No usable reading yet.';
  return (
    <Graph
      summary={summary}
      caption={`Net pump pressure, ${units.of(1, 'pressure').unit}, against ${units.of(1, 'flow').unit}`}
    >
      {(widthPx, heightPx) => <Curve {...{ curve, ratedGpm, earlier, widthPx, heightPx }} />}
    </Graph>
  );
}

function Curve(props: Required<PumpTestGraphProps> & { widthPx: number; heightPx: number }) {
  const { curve, ratedGpm, earlier, widthPx, heightPx } = props;
  const units = useUnits();
  const fontsReady = useFontsReady();
  const figures = useMemo(() => {
    const usual = ratedGpm === undefined ? [] : capabilityFor({ ratedGpm }).points;
    const readings = [...curve.readings, ...earlier.flatMap(({ points }) => points)];
    const mostGpm =
      Math.max(500, ...usual.map(([gpm]) => gpm), ...readings.map(({ flowGpm }) => flowGpm)) * 1.05;
    const mostPsi =
      Math.max(200, ...usual.map(([, psi]) => psi), ...readings.map(({ netPsi }) => netPsi)) * 1.06;
    const base = heightPx - EDGE.bottom;
    const x = evenAxis(
      mostGpm,
      'flow',
      units.system,
      [EDGE.left, widthPx - EDGE.right],
      widthPx > 500 ? 7 : 4,
    );
    const y = evenAxis(mostPsi, 'pressure', units.system, [base, EDGE.top], 6);
    const placed = ([gpm, psi]: readonly [number, number]): readonly [number, number] => [
      x.at(gpm),
      y.at(psi),
    ];
    const points = (curve.points ?? []).map(placed);
    const last = points.at(-1);
    return {
      x,
      y,
      usual: usual.map(placed),
      points,
      wall: last ? ([last, [last[0], base]] as const) : [],
      stages: (ratedGpm === undefined ? [] : RATING_POINTS).map(({ share, netPsi }) => ({
        netPsi,
        at: placed([share * ratedGpm!, netPsi]),
      })),
      moved: curve.readings.flatMap(({ measured, flowGpm, netPsi }) =>
        Math.abs(measured.netPsi - netPsi) > 0.5
          ? [[placed([measured.flowGpm, measured.netPsi]), placed([flowGpm, netPsi])]]
          : [],
      ),
      dots: curve.readings.map(({ flowGpm, netPsi }) => placed([flowGpm, netPsi])),
      before: earlier.flatMap(({ points }) =>
        points.map(({ flowGpm, netPsi }) => placed([flowGpm, netPsi])),
      ),
    };
  }, [curve, ratedGpm, earlier, units.system, widthPx, heightPx]);

  const labels = useMemo(
    (): LabelSpec[] => [
      ...figures.stages.map(
        ({ netPsi, at }): LabelSpec => ({
          id: `stage:${netPsi}`,
          x: at[0],
          y: at[1],
          lines: [`rated at ${units.text(netPsi, 'pressure')}`],
          look: 'plain',
          priority: netPsi === 150 ? 7 : 5,
          sides: ['below left', 'left', 'below', 'above right', 'right'],
          gap: 9,
          reach: 50,
        }),
      ),
      ...figures.usual.slice(0, 1).map(
        ([x, y]): LabelSpec => ({
          id: 'usual',
          x,
          y,
          lines: ['from the rating alone'],
          look: 'soft',
          priority: 4,
          sides: ['right', 'above right', 'below right'],
          gap: 12,
          reach: 40,
        }),
      ),
    ],
    [figures, units],
  );
  const soft = useMemo(
    () =>
      [figures.points, figures.usual].flatMap((each) =>
        rectsAlong(
          each.map(([x, y]): [number, number] => [x, y]),
          5,
        ),
      ),
    [figures],
  );
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={figures.x} y={figures.y} />
      <path className="alone" d={path(figures.usual) ?? ''} />
      {figures.before.map(([x, y], at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the readings of earlier tests keep their order
        <circle key={at} className="dot-soft" cx={x} cy={y} r={3} />
      ))}
      {figures.stages.map(({ netPsi, at: [x, y] }) => (
        <path
          key={netPsi}
          className="stage-mark"
          d={`M${x - 6} ${y - 6}L${x + 6} ${y + 6}M${x + 6} ${y - 6}L${x - 6} ${y + 6}`}
        />
      ))}
      <path className="curve" d={path(figures.points) ?? ''} />
      <path className="wall" d={path(figures.wall) ?? ''} />
      {figures.moved.map(([from, to]) => (
        <g key={`${from![0]}:${from![1]}`}>
          <path className="leader" d={path([from!, to!]) ?? ''} />
          <circle className="dot-soft" cx={from![0]} cy={from![1]} r={3} />
        </g>
      ))}
      {figures.dots.map(([x, y], at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: readings keep their order
        <circle key={at} className="station" cx={x} cy={y} r={5} />
      ))}
      <LabelLayer
        labels={labels}
        obstacles={[]}
        soft={soft}
        bounds={{
          x: EDGE.left,
          y: 2,
          width: widthPx - EDGE.left,
          height: heightPx - EDGE.bottom - 4,
        }}
        textPx={14}
        fontsReady={fontsReady}
      />
    </>
  );
}
