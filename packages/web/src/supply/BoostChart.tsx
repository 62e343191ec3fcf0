import {
  boostOfWay,
  type HydrantAtHand,
  type Situation,
  type SupplyWay,
  type WhenToBoost,
} from '@plugside/fireground';
import { line } from 'd3-shape';
import { useMemo } from 'react';
import { type Units, useUnits } from '../editing/use-units.ts';
import { Axes, Graph } from '../field-tests/Graph.tsx';
import { EDGE, evenAxis } from '../field-tests/graph-frame.ts';

interface BoostChartProps {
  way: SupplyWay;
  situation: Situation;
}

/** When a second engine at the way's hydrant pays: water against the lay's length. */
export function BoostChart({ way, situation }: BoostChartProps) {
  const units = useUnits();
  const found = useMemo(() => answerFor(way, situation, units), [way, situation, units]);
  if (!found) return null;
  const { at, when } = found;
  const name = at.hydrant.name ?? at.hydrant.id;
  const layFt = when.layFt ?? at.lengthFt;
  return (
    <section aria-labelledby="when-to-boost" className="boost-part">
      <h3 className="section-name" id="when-to-boost">
        When to boost from {name}
      </h3>
      <p className="boost-rule">{when.rule}</p>
      <div className="boost-graph">
        <Graph
          summary={`${when.rule} At ${units.text(layFt, 'length')}, the lay of this way.`}
          caption={`Water, ${units.of(1, 'flow').unit}, against the lay's length, ${units.of(1, 'length').unit}`}
        >
          {(widthPx, heightPx) => (
            <Curves layFt={layFt} when={when} units={units} widthPx={widthPx} heightPx={heightPx} />
          )}
        </Graph>
        <ul className="boost-key">
          <li>
            <span className="key-line key-boosted" aria-hidden="true" /> boosted at the hydrant
          </li>
          <li>
            <span className="key-line key-alone" aria-hidden="true" /> hydrant pressure alone
            {when.throughValve && ', through the assist valve; a plain lay loses less'}
          </li>
          <li>
            <span className="key-line key-needed" aria-hidden="true" /> needed
          </li>
        </ul>
      </div>
    </section>
  );
}

function answerFor(
  way: SupplyWay,
  situation: Situation,
  units: Units,
): { at: HydrantAtHand; when: WhenToBoost } | null {
  const when = boostOfWay(way, situation, { units: units.system });
  const at = situation.hydrants.find(
    ({ hydrant }) => (hydrant.name ?? hydrant.id) === when?.sourceName,
  );
  return when && at ? { at, when } : null;
}

interface CurvesProps {
  /** Hose laid [ft]. */
  layFt: number;
  when: WhenToBoost;
  units: Units;
  widthPx: number;
  heightPx: number;
}

function Curves({ layFt, when, units, widthPx, heightPx }: CurvesProps) {
  const { demandGpm, points } = when;
  const base = heightPx - EDGE.bottom;
  const drawn = useMemo(() => {
    const mostGpm = Math.max(demandGpm, ...points.map((one) => one.boostedGpm)) * 1.08;
    const mostFt = Math.max(layFt, points.at(-1)?.lengthFt ?? 0);
    const right = widthPx - EDGE.right;
    const x = evenAxis(mostFt, 'length', units.system, [EDGE.left, right], widthPx > 500 ? 8 : 4);
    const y = evenAxis(mostGpm, 'flow', units.system, [base, EDGE.top], 5);
    const path = line<(typeof points)[number]>().x((one) => x.at(one.lengthFt));
    return {
      x,
      y,
      alone: path.y((one) => y.at(one.unassistedGpm))(points) ?? '',
      boosted: path.y((one) => y.at(one.boostedGpm))(points) ?? '',
    };
  }, [layFt, demandGpm, points, units.system, widthPx, base]);
  const demandY = drawn.y.at(demandGpm);
  const hereX = drawn.x.at(layFt);
  const leftOf = hereX > widthPx - 150;
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={drawn.x} y={drawn.y} />
      <path className="demand-line" d={`M${EDGE.left} ${demandY}H${widthPx - EDGE.right}`} />
      <path className="here-line" d={`M${hereX} ${EDGE.top}V${base}`} />
      <text
        className="needed-text"
        x={hereX + (leftOf ? -6 : 6)}
        y={base - 8}
        textAnchor={leftOf ? 'end' : 'start'}
      >
        this lay {units.text(layFt, 'length')}
      </text>
      <path className="alone" d={drawn.alone} />
      <path className="curve" d={drawn.boosted} />
    </>
  );
}
