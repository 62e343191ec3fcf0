/** A hydrant's supply curve on exponent paper, where it is a straight line. */
import { exponentPaper, fromInside } from '@plugside/fireground';
import { availableFlowGpm } from '@plugside/hydraulics';
import type { Sheet } from '../sheet/sheet.ts';
import { put } from '../sheet/text.ts';
import type { CardTest } from './data.ts';

const AXIS = { size: 8.5, tone: 'soft' } as const;
const LEFT = 26;
const FOOT = 24;

/** Draws the curve into a rectangle of the page [pt]. */
export function supplyCurve(
  sheet: Sheet,
  test: CardTest,
  mainResidualPsi: number,
  frame: { x: number; y: number; width: number; height: number },
): void {
  const { ink, figures } = sheet;
  const { units } = figures;
  const x0 = frame.x + LEFT;
  const x1 = frame.x + frame.width - 8;
  const y0 = frame.y + frame.height - FOOT;
  const y1 = frame.y + 14;
  const endGpm = availableFlowGpm(test, 0);
  const paper = exponentPaper(endGpm * 1.02, [x0, x1]);
  const pressureUnit = figures.unit('pressure');
  const flowUnit = figures.unit('flow');
  const perGpm = fromInside(1, 'flow', flowUnit);
  const topPsi = test.staticPsi * 1.12;
  const y = (psi: number) => y0 - ((y0 - y1) * psi) / topPsi;

  const shownTop = fromInside(topPsi, 'pressure', pressureUnit);
  const step = units === 'us' ? (shownTop > 110 ? 40 : 20) : shownTop > 8 ? 2 : 1;
  for (let shown = 0; shown <= shownTop; shown += step) {
    const at = y0 - ((y0 - y1) * shown) / shownTop;
    ink.line([x0, at], [x1, at], { widthPt: 0.35, tone: 'hairline' });
    put(ink, `${shown}`, x0 - 4, at + 3, AXIS, 'right');
  }
  for (const { flowGpm, shown } of paper.ticks(30, perGpm)) {
    const at = paper.x(flowGpm);
    ink.line([at, y0], [at, y1], { widthPt: 0.35, tone: 'hairline' });
    put(ink, shown.toLocaleString('en-US'), at, y0 + 10, AXIS, 'center');
  }
  put(ink, pressureUnit, frame.x, frame.y + 8, AXIS);
  put(
    ink,
    `flow, ${flowUnit}; scale bent so that the curve is straight`,
    x1,
    y0 + 20,
    AXIS,
    'right',
  );
  ink.path(
    [
      [x0, y1],
      [x0, y0],
      [x1, y0],
    ],
    { widthPt: 0.8, tone: 'ink' },
  );

  const least = y(mainResidualPsi);
  ink.line([x0, least], [x1, least], { widthPt: 0.9, tone: 'ink', dash: [4, 2.5] });
  put(ink, 'least in the main', x0 + 5, least + 9, AXIS);
  const atLeast = mainResidualPsi < test.staticPsi ? availableFlowGpm(test, mainResidualPsi) : 0;
  ink.line([x0, y(test.staticPsi)], [paper.x(atLeast), least], { widthPt: 2, tone: 'water' });
  ink.line([paper.x(atLeast), least], [paper.x(endGpm), y0], {
    widthPt: 1,
    tone: 'water',
    dash: [1.5, 2.5],
  });
  const tested = [paper.x(test.testGpm), y(test.residualPsi)] as const;
  ink.circle([x0, y(test.staticPsi)], 2.6, { fill: 'paper', widthPt: 1.3, tone: 'ink' });
  ink.circle(tested, 2.6, { fill: 'paper', widthPt: 1.3, tone: 'ink' });
}
