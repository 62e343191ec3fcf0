import {
  type BoostComparison,
  demandOf,
  fromInside,
  limitsFor,
  quantities,
  type SupplyCurve,
} from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { memo, useMemo, useRef } from 'react';
import { type Units, useUnits } from '../../editing/use-units.ts';
import type { Picture } from '../../plan-store/pictures.ts';
import { usePlan } from '../../plan-store/plan-store.ts';
import { LabelLayer, type LabelSpec } from '../scene/LabelLayer.tsx';
import { rectsAlong } from '../scene/label-placement.ts';
import { useFontsReady, useWidth } from '../use-drawing.ts';

/** By the curves' ids. */
const CURVE_LOOKS: Record<string, string> = {
  alone: 'alone',
  boosted: 'curve',
  'more suction': 'curve curve-more',
};

const HEIGHT_PX = 280;
const EDGE = { left: 36, right: 10, top: 16, bottom: 34 };

interface SupplyCurvesProps {
  curves: Picture<SupplyCurve[]>;
  comparison: Picture<BoostComparison>;
}

/** Pressure left at the attack intake against flow, for each way of supplying it. */
export const SupplyCurves = memo(function SupplyCurves({ curves, comparison }: SupplyCurvesProps) {
  const frame = useRef<HTMLDivElement>(null);
  const widthPx = useWidth(frame);
  const units = useUnits();
  return (
    <section className="curves" aria-labelledby="curves">
      <h2 className="section-name" id="curves">
        Pressure left at the attack intake, {units.of(1, 'pressure').unit} against{' '}
        {units.of(1, 'flow').unit}
      </h2>
      <div ref={frame}>
        {widthPx > 0 && curves.ok && <Curves curves={curves.found} widthPx={widthPx} />}
        {!curves.ok && <p className="soft-text">{curves.problem}</p>}
        {comparison.ok && (
          <p className="curves-sentence">{boostSentence(comparison.found, units)}</p>
        )}
      </div>
    </section>
  );
});

/** From which length of lay boosting pays, for what the scene needs. */
function boostSentence(found: BoostComparison, units: Units): string {
  const demand = units.text(found.demandGpm, 'flow');
  switch (found.boostPays) {
    case 'from length':
      return found.boostPaysFromFt === null
        ? ''
        : `Hydrant pressure alone brings ${demand} over ${units.text(found.boostPaysFromFt, 'length')} of this lay; longer than that, boost.`;
    case 'at any length':
      return `Hydrant pressure alone does not bring ${demand} even over a short lay: boost.`;
    case 'not for this demand':
      return found.demandGpm > 0
        ? `Hydrant pressure alone brings ${demand} over any lay tried.`
        : '';
    case 'demand out of reach':
      return `${demand} is out of reach here, boosted or not.`;
  }
}

function Curves({ curves, widthPx }: { curves: readonly SupplyCurve[]; widthPx: number }) {
  const units = useUnits();
  const plan = usePlan((state) => state.history.present);
  const fontsReady = useFontsReady();
  const demandGpm = demandOf(plan);
  const leastPsi = limitsFor(plan).hoseFedIntakePsi;
  const drawn = useMemo(() => {
    const pressureUnit = quantities.pressure.shown[units.system];
    const flowUnit = quantities.flow.shown[units.system];
    const points = curves.flatMap((curve) => curve.points);
    const mostGpm = Math.max(demandGpm * 1.15, 100, ...points.map((one) => one.flowGpm));
    const mostPsi = Math.max(50, ...points.map((one) => one.intakePsi)) * 1.08;
    const xShown = scaleLinear(
      [0, fromInside(mostGpm, 'flow', flowUnit)],
      [EDGE.left, widthPx - EDGE.right],
    );
    const yShown = scaleLinear(
      [0, fromInside(mostPsi, 'pressure', pressureUnit)],
      [HEIGHT_PX - EDGE.bottom, EDGE.top],
    );
    return {
      x: (gpm: number) => xShown(fromInside(gpm, 'flow', flowUnit)),
      y: (psi: number) => yShown(fromInside(psi, 'pressure', pressureUnit)),
      xTicks: xShown.ticks(widthPx > 420 ? 6 : 4),
      yTicks: yShown.ticks(5),
      xAt: xShown,
      yAt: yShown,
    };
  }, [curves, widthPx, units.system, demandGpm]);
  const { x, y } = drawn;
  const inView = (curve: SupplyCurve) => curve.points.filter((one) => one.intakePsi >= 0);
  const labels = useMemo(
    () =>
      curves.flatMap((curve, i): LabelSpec[] => {
        const points = curve.points.filter((one) => one.intakePsi >= 0);
        const at = points[Math.floor(points.length * (i === 0 ? 0.35 : 0.42))];
        if (!at) return [];
        const end = curve.points.reduce<{ flowGpm: number; intakePsi: number } | null>(
          (best, one) =>
            !best || Math.abs(one.flowGpm - curve.mostGpm) < Math.abs(best.flowGpm - curve.mostGpm)
              ? one
              : best,
          null,
        );
        return [
          {
            id: curve.id,
            x: x(at.flowGpm),
            y: y(at.intakePsi),
            lines: [curve.label],
            look: curve.id === 'alone' ? 'soft' : 'water',
            priority: 5,
            sides: ['above right', 'above', 'right', 'below left', 'below'],
            gap: 8,
            reach: 50,
          },
          ...(end && curve.mostGpm > 0
            ? [
                {
                  id: `${curve.id}:most`,
                  x: x(curve.mostGpm),
                  y: y(Math.max(end.intakePsi, 0)),
                  lines: [units.number(curve.mostGpm, 'flow')],
                  look: 'strong' as const,
                  priority: 7,
                  sides: ['above right', 'above', 'below left', 'above left', 'below'] as const,
                  gap: 8,
                  reach: 36,
                },
              ]
            : []),
        ];
      }),
    [curves, x, y, units],
  );
  const soft = useMemo(
    () =>
      curves.flatMap((curve) =>
        rectsAlong(
          curve.points.map((one): [number, number] => [x(one.flowGpm), y(one.intakePsi)]),
          5,
        ),
      ),
    [curves, x, y],
  );
  const base = HEIGHT_PX - EDGE.bottom;
  const summary = curves
    .map((curve) => `${curve.label}: ${units.text(curve.mostGpm, 'flow')} within every limit`)
    .join('. ');
  return (
    <svg
      width={widthPx}
      height={HEIGHT_PX}
      viewBox={`0 0 ${widthPx} ${HEIGHT_PX}`}
      role="img"
      aria-label={`Supply curves. ${summary}. The scene needs ${units.text(demandGpm, 'flow')}.`}
    >
      {drawn.yTicks.map((tick) => (
        <g key={tick}>
          <path className="rule" d={`M${EDGE.left} ${drawn.yAt(tick)}H${widthPx}`} />
          <text className="tick" x={EDGE.left - 6} y={drawn.yAt(tick)} dy="0.34em" textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
      {drawn.xTicks.map((tick) => (
        <text key={tick} className="tick" x={drawn.xAt(tick)} y={base + 20} textAnchor="middle">
          {tick.toLocaleString('en-US')}
        </text>
      ))}
      <rect
        fill="url(#keep-out)"
        x={EDGE.left}
        y={y(leastPsi)}
        width={widthPx - EDGE.left}
        height={base - y(leastPsi)}
      />
      <path className="limit-line" d={`M${EDGE.left} ${y(leastPsi)}H${widthPx}`} />
      <path className="axis" d={`M${EDGE.left} ${base}H${widthPx}`} />
      <path className="needed" d={`M${x(demandGpm)} ${EDGE.top}V${base}`} />
      <text
        className="needed-text"
        x={x(demandGpm) + (x(demandGpm) > widthPx - 110 ? -6 : 6)}
        y={EDGE.top + 6}
        textAnchor={x(demandGpm) > widthPx - 110 ? 'end' : 'start'}
      >
        needed {units.number(demandGpm, 'flow')}
      </text>
      {curves.map((curve) => (
        <path
          key={curve.id}
          className={CURVE_LOOKS[curve.id] ?? 'curve'}
          d={
            line<{ flowGpm: number; intakePsi: number }>()
              .x((one) => x(one.flowGpm))
              .y((one) => y(one.intakePsi))(inView(curve)) ?? ''
          }
        />
      ))}
      {curves.map((curve) => {
        const near = curve.points.reduce(
          (best, one) =>
            Math.abs(one.flowGpm - curve.mostGpm) < Math.abs(best.flowGpm - curve.mostGpm)
              ? one
              : best,
          curve.points[0] ?? { flowGpm: 0, intakePsi: 0 },
        );
        return curve.mostGpm > 0 ? (
          <circle
            key={curve.id}
            className="station"
            cx={x(curve.mostGpm)}
            cy={y(Math.max(near.intakePsi, 0))}
            r={4.5}
          />
        ) : null;
      })}
      <LabelLayer
        labels={labels}
        obstacles={[{ x: x(demandGpm) - 2, y: 0, width: 90, height: 28 }]}
        soft={soft}
        bounds={{ x: EDGE.left, y: 4, width: widthPx - EDGE.left, height: base - 6 }}
        textPx={14}
        fontsReady={fontsReady}
      />
    </svg>
  );
}
