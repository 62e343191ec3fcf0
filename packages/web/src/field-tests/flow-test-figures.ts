import {
  exponentPaper,
  fromInside,
  HYDRANT_CLASSES,
  quantities,
  RATING_RESIDUAL_PSI,
  type TestedFlow,
  type UnitSystem,
} from '@plugside/fireground';
import { type Axis, EDGE, evenAxis } from './graph-frame.ts';

type Point = readonly [x: number, y: number];

export interface TestLine {
  test: TestedFlow;
  /** From static to the test: with the projection one straight line. */
  measured: readonly Point[];
  /** Through every point of that day; empty where there is one. */
  steps: readonly Point[];
  /** From there to the rated flow; empty where the test went as far. */
  projected: readonly Point[];
  dots: readonly Point[];
}

export interface FlowFigures {
  x: Axis;
  y: Axis;
  main: TestLine | null;
  others: readonly TestLine[];
  /** Rated flow on its line. */
  rated: Point | null;
  ratingY: number;
  /** Along the rating line: bounds of the classes and their letters. */
  classes: { name: string; from: number; to: number; bounded: boolean }[];
}

/** Right end of the paper before there is a test: all four classes show. */
const EMPTY_PAPER_GPM = 1800;

/** Everything that the paper shows, in px. Tests that give no curve are left out. */
export function flowFigures(
  tests: readonly TestedFlow[],
  main: TestedFlow | null,
  system: UnitSystem,
  widthPx: number,
  heightPx: number,
): FlowFigures {
  const usable = tests.filter(({ result }) => result.curve !== null);
  const leading = main?.result.curve ? main : null;
  const around = leading ? [leading] : usable;
  const flows = usable.map(({ result }) => result.flowGpm!);
  const mostGpm = Math.max(
    usable.length > 0 ? 100 : EMPTY_PAPER_GPM,
    ...around.map(({ result }) => Math.max(result.rating!.flowGpm, result.flowGpm!) * 1.12),
    ...flows.map((flow) => flow * 1.05),
  );
  const mostPsi = Math.max(50, ...tests.map(({ test }) => test.staticPsi)) * 1.1;
  const paper = exponentPaper(mostGpm, [EDGE.left, widthPx - EDGE.right]);
  const perGpm = fromInside(1, 'flow', quantities.flow.shown[system]);
  const x: Axis = {
    at: paper.x,
    ticks: paper.ticks(46, perGpm).map(({ flowGpm, shown }) => ({
      value: flowGpm,
      text: Math.round(shown).toLocaleString('en-US'),
    })),
  };
  const y = evenAxis(mostPsi, 'pressure', system, [heightPx - EDGE.bottom, EDGE.top], 6);
  const ratingPsi = leading?.result.rating?.residualPsi ?? RATING_RESIDUAL_PSI;

  const lineOf = (one: TestedFlow): TestLine => {
    const { staticPsi } = one.test;
    const sameDay = usable
      .filter(({ test }) => test.testedOn === one.test.testedOn)
      .filter(({ test }) => test.residualPsi >= one.test.residualPsi)
      .sort((a, b) => a.result.flowGpm! - b.result.flowGpm!);
    const dots = sameDay.map(
      ({ test, result }): Point => [x.at(result.flowGpm!), y.at(test.residualPsi)],
    );
    const still: Point = [x.at(0), y.at(staticPsi)];
    const { rating } = one.result;
    const further = rating!.residualPsi < one.test.residualPsi;
    const end: Point = [x.at(rating!.flowGpm), y.at(rating!.residualPsi)];
    return {
      test: one,
      measured: [still, dots.at(-1)!],
      steps: dots.length > 1 ? [still, ...dots] : [],
      projected: further ? [dots.at(-1)!, end] : [],
      dots,
    };
  };
  const byNewest = new Map(usable.map((one) => [one.test.testedOn, one]));
  const others = [...byNewest.values()].filter(
    ({ test }) => test.testedOn !== leading?.test.testedOn,
  );
  const bounds = [...HYDRANT_CLASSES].reverse();
  const classes = bounds.flatMap(({ name, leastGpm }, at) => {
    if (leastGpm >= mostGpm) return [];
    const next = bounds[at + 1]?.leastGpm ?? Number.POSITIVE_INFINITY;
    return [
      {
        name,
        from: x.at(leastGpm),
        to: x.at(Math.min(next, mostGpm)),
        bounded: next < mostGpm,
      },
    ];
  });
  return {
    x,
    y,
    main: leading ? lineOf(leading) : null,
    others: others.map(lineOf),
    rated: leading ? [x.at(leading.result.rating!.flowGpm), y.at(ratingPsi)] : null,
    ratingY: y.at(ratingPsi),
    classes,
  };
}
