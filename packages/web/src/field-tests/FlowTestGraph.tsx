import type { TestedFlow } from '@plugside/fireground';
import { line } from 'd3-shape';
import { useId, useMemo } from 'react';
import { type Units, useUnits } from '../editing/use-units.ts';
import { LabelLayer, type LabelSpec } from '../lay/scene/LabelLayer.tsx';
import { rectsAlong } from '../lay/scene/label-placement.ts';
import { useFontsReady } from '../lay/use-drawing.ts';
import { flowFigures, type TestLine } from './flow-test-figures.ts';
import { Axes, Graph } from './Graph.tsx';
import { EDGE } from './graph-frame.ts';

interface FlowTestGraphProps {
  /** A hydrant's tests, oldest first. */
  tests: readonly TestedFlow[];
  /** The one in the foreground: what plans use, or what is being entered. */
  main: TestedFlow | null;
}

const path = line<readonly [number, number]>();

/** Flow tests on N1.85 paper: each supply curve a straight line from static through its test. */
export function FlowTestGraph({ tests, main }: FlowTestGraphProps) {
  const units = useUnits();
  const { pressure, flow } = {
    pressure: units.of(1, 'pressure').unit,
    flow: units.of(1, 'flow').unit,
  };
  return (
    <Graph
      summary={summaryOf(main, units)}
      caption={`Pressure left in the main, ${pressure}, against ${flow} to the power 1.85`}
    >
      {(widthPx, heightPx) => (
        <Paper tests={tests} main={main} widthPx={widthPx} heightPx={heightPx} />
      )}
    </Graph>
  );
}

function summaryOf(main: TestedFlow | null, units: Units): string {
  const rating = main?.result.rating;
  if (!main || !rating) return 'Flow test paper. No usable test yet.';
  const { staticPsi, residualPsi } = main.test;
  return `Supply curve. Static ${units.text(staticPsi, 'pressure')}; ${units.text(residualPsi, 'pressure')} left at ${units.text(main.result.flowGpm!, 'flow')}; ${units.text(rating.flowGpm, 'flow')} at ${units.text(rating.residualPsi, 'pressure')}.`;
}

function Paper(props: FlowTestGraphProps & { widthPx: number; heightPx: number }) {
  const { tests, main, widthPx, heightPx } = props;
  const units = useUnits();
  const fontsReady = useFontsReady();
  const hatch = useId();
  const clip = useId();
  const figures = useMemo(
    () => flowFigures(tests, main, units.system, widthPx, heightPx),
    [tests, main, units.system, widthPx, heightPx],
  );
  const labels = useMemo(() => labelsOf(figures, units), [figures, units]);
  const soft = useMemo(
    () => [figures.main, ...figures.others].flatMap((one) => (one ? rectsOf(one) : [])),
    [figures],
  );
  const obstacles = useMemo(
    () => [
      { x: EDGE.left, y: figures.ratingY - 2, width: widthPx - EDGE.left, height: 4 },
      ...figures.classes.map(({ from, to }) => ({
        x: (from + to) / 2 - 10,
        y: figures.ratingY,
        width: 20,
        height: 20,
      })),
    ],
    [figures, widthPx],
  );
  const base = heightPx - EDGE.bottom;
  const right = widthPx - EDGE.right;
  const { ratingY } = figures;
  return (
    <>
      <defs>
        <pattern id={hatch} width="7" height="7" patternUnits="userSpaceOnUse">
          <path className="hatch" d="M-1 8L8 -1" />
        </pattern>
        <clipPath id={clip}>
          <rect x={EDGE.left} y={0} width={right - EDGE.left} height={heightPx} />
        </clipPath>
      </defs>
      <Axes widthPx={widthPx} heightPx={heightPx} x={figures.x} y={figures.y} paper />
      <rect
        fill={`url(#${hatch})`}
        x={EDGE.left}
        y={ratingY}
        width={right - EDGE.left}
        height={Math.max(0, base - ratingY)}
      />
      <path className="limit-line" d={`M${EDGE.left} ${ratingY}H${right}`} />
      <g>
        {figures.classes.map(({ name, from, to, bounded }) => (
          <g key={name}>
            {bounded && <path className="class-bound" d={`M${to} ${ratingY - 5}V${ratingY + 5}`} />}
            {to - from > 26 && (
              <text className="class-letter" x={(from + to) / 2} y={ratingY + 15}>
                {name}
              </text>
            )}
          </g>
        ))}
      </g>
      <g clipPath={`url(#${clip})`}>
        {figures.others.map((one) => (
          <path
            key={one.test.test.testedOn}
            className="alone"
            d={path([...one.measured, ...one.projected.slice(1)]) ?? ''}
          />
        ))}
        {figures.main && (
          <>
            <path className="step-line" d={path(figures.main.steps) ?? ''} />
            <path className="curve" d={path(figures.main.measured) ?? ''} />
            <path className="curve curve-more" d={path(figures.main.projected) ?? ''} />
          </>
        )}
      </g>
      {figures.others.flatMap((one) =>
        one.dots.map(([x, y]) => (
          <circle key={`${x}:${y}`} className="dot-soft" cx={x} cy={y} r={3} />
        )),
      )}
      {figures.main?.dots.map(([x, y]) => (
        <circle key={`${x}:${y}`} className="station" cx={x} cy={y} r={5} />
      ))}
      {figures.rated && (
        <path
          className="rated-mark"
          d={`M${figures.rated[0]} ${figures.rated[1] - 7}V${figures.rated[1] + 7}M${figures.rated[0] - 7} ${figures.rated[1]}h14`}
        />
      )}
      <LabelLayer
        labels={labels}
        obstacles={obstacles}
        soft={soft}
        bounds={{ x: EDGE.left, y: 2, width: widthPx - EDGE.left, height: base - 4 }}
        textPx={14}
        fontsReady={fontsReady}
      />
    </>
  );
}

const rectsOf = (one: TestLine) =>
  rectsAlong(
    [...one.measured, ...one.projected].map(([x, y]): [number, number] => [x, y]),
    5,
  );

function labelsOf(figures: ReturnType<typeof flowFigures>, units: Units): LabelSpec[] {
  const { main, rated } = figures;
  const labels: LabelSpec[] = figures.others.flatMap((one) => {
    const at = one.dots.at(-1);
    if (!at) return [];
    return [
      {
        id: one.test.test.testedOn,
        x: at[0],
        y: at[1],
        lines: [one.test.test.testedOn.slice(0, 4)],
        look: 'soft' as const,
        priority: 2,
        sides: ['above right', 'right', 'above', 'below left', 'left'] as const,
        gap: 5,
        reach: 20,
      },
    ];
  });
  if (!main || !rated) return labels;
  const { test, result } = main.test;
  const dot = main.dots.at(-1)!;
  labels.push(
    {
      id: 'static',
      x: main.measured[0]![0],
      y: main.measured[0]![1],
      lines: [`static ${units.text(test.staticPsi, 'pressure')}`],
      look: 'strong',
      priority: 6,
      sides: ['below right', 'above right', 'right'],
      gap: 8,
      reach: 20,
    },
    {
      id: 'test',
      x: dot[0],
      y: dot[1],
      lines: [
        `${units.text(test.residualPsi, 'pressure')} left`,
        `at ${units.text(result.flowGpm!, 'flow')}`,
      ],
      look: 'plain',
      priority: 7,
      sides: ['above right', 'right', 'above', 'below left', 'left'],
      gap: 9,
      reach: 60,
    },
    {
      id: 'rated',
      x: rated[0],
      y: rated[1],
      lines: [
        units.text(result.rating!.flowGpm, 'flow'),
        `at ${units.text(result.rating!.residualPsi, 'pressure')}`,
      ],
      look: 'water',
      priority: 9,
      sides: ['above left', 'above', 'above right', 'left'],
      gap: 9,
      reach: 60,
    },
  );
  return labels;
}
