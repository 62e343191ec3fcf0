import { type HoseFit, type HoseReading, shownC } from '@plugside/fireground';
import { line } from 'd3-shape';
import { useMemo } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { LabelLayer, type LabelSpec } from '../lay/scene/LabelLayer.tsx';
import { rectsAlong } from '../lay/scene/label-placement.ts';
import { useFontsReady } from '../lay/use-drawing.ts';
import { Axes, Graph } from './Graph.tsx';
import { type Axis, EDGE, evenAxis } from './graph-frame.ts';

interface HoseTestGraphProps {
  fit: HoseFit;
  readings: readonly HoseReading[];
}

const path = line<readonly [number, number]>();

/** Loss per 100 ft against flow squared: the coefficient law is a straight line through the corner. */
export function HoseTestGraph({ fit, readings }: HoseTestGraphProps) {
  const units = useUnits();
  const summary =
    fit.coefficient === null
      ? 'Hose test. No coefficient can be told yet.'
      : `Loss against flow: C ${shownC(fit.coefficient)} through ${readings.length} readings${fit.book ? `; the book has ${shownC(fit.book.coefficient)}` : ''}.`;
  return (
    <Graph
      summary={summary}
      caption={`Loss in ${units.text(100, 'length')}, ${units.of(1, 'pressure').unit}, against ${units.of(1, 'flow').unit} squared`}
    >
      {(widthPx, heightPx) => (
        <Curve fit={fit} readings={readings} widthPx={widthPx} heightPx={heightPx} />
      )}
    </Graph>
  );
}

function Curve(props: HoseTestGraphProps & { widthPx: number; heightPx: number }) {
  const { fit, readings, widthPx, heightPx } = props;
  const units = useUnits();
  const fontsReady = useFontsReady();
  const figures = useMemo(() => {
    const lossPer100 = (one: HoseReading) => (one.lossPsi / one.lengthFt) * 100;
    const mostGpm = Math.max(200, ...readings.map(({ flowGpm }) => flowGpm)) * 1.06;
    const slopes = [fit.high ?? fit.coefficient, fit.book?.coefficient].filter(
      (each) => each !== undefined && each !== null,
    );
    const turn = (mostGpm / 100) ** 2;
    const mostPsi = Math.max(1, ...readings.map(lossPer100), ...slopes.map((c) => c * turn)) * 1.05;
    const base = heightPx - EDGE.bottom;
    const right = widthPx - EDGE.right;
    const flow = evenAxis(mostGpm, 'flow', units.system, [0, 1], 6);
    const at = (gpm: number) => EDGE.left + (right - EDGE.left) * (gpm / mostGpm) ** 2;
    const x: Pick<Axis, 'at' | 'ticks'> = {
      at,
      ticks: spread(flow.ticks, at),
    };
    const y = evenAxis(mostPsi, 'pressure', units.system, [base, EDGE.top], 5);
    const ray = (c: number): [number, number][] => [
      [EDGE.left, base],
      [right, y.at(c * turn)],
    ];
    return {
      x,
      y,
      fitted: fit.coefficient === null ? [] : ray(fit.coefficient),
      book: fit.book ? ray(fit.book.coefficient) : [],
      band:
        fit.low !== null && fit.high !== null
          ? [...ray(Math.max(0, fit.low)), ...ray(fit.high).reverse()]
          : [],
      dots: readings.map((one): [number, number] => [at(one.flowGpm), y.at(lossPer100(one))]),
    };
  }, [fit, readings, units.system, widthPx, heightPx]);
  const labels = useMemo(() => {
    const along = ([from, to]: [number, number][], share: number): [number, number] => [
      from![0] + (to![0] - from![0]) * share,
      from![1] + (to![1] - from![1]) * share,
    ];
    const found: LabelSpec[] = [];
    if (fit.coefficient !== null) {
      const [x, y] = along(figures.fitted, 0.62);
      found.push({
        id: 'fit',
        x,
        y,
        lines: [`measured C ${shownC(fit.coefficient)}`],
        look: 'water',
        priority: 8,
        sides: ['below right', 'above left', 'below', 'above'],
        gap: 10,
        reach: 60,
      });
    }
    if (fit.book) {
      const [x, y] = along(figures.book, 0.5);
      found.push({
        id: 'book',
        x,
        y,
        lines: [`book C ${shownC(fit.book.coefficient)}`],
        look: 'soft',
        priority: 6,
        sides: ['above left', 'below right', 'above', 'below'],
        gap: 10,
        reach: 60,
      });
    }
    return found;
  }, [figures, fit]);
  const soft = useMemo(
    () => [figures.fitted, figures.book].flatMap((each) => rectsAlong(each, 5)),
    [figures],
  );
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={figures.x} y={figures.y} paper />
      <path className="under" d={path(figures.band) ?? ''} />
      <path className="alone" d={path(figures.book) ?? ''} />
      <path className="curve" d={path(figures.fitted) ?? ''} />
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

/** Marks with room between them: on squared paper small flows crowd together. */
function spread<T extends { value: number }>(
  ticks: readonly T[],
  at: (gpm: number) => number,
): T[] {
  let next = Number.POSITIVE_INFINITY;
  const kept: T[] = [];
  for (const tick of [...ticks].reverse()) {
    const place = at(tick.value);
    if (next - place < 44 && tick.value > 0) continue;
    if (tick.value === 0 && next - place < 24) continue;
    kept.unshift(tick);
    next = place;
  }
  return kept;
}
