import { type Choice, clock, type SupplyWay } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import { useMemo } from 'react';
import { type Units, useUnits } from '../editing/use-units.ts';
import { Axes, Graph } from '../field-tests/Graph.tsx';
import { EDGE, evenAxis } from '../field-tests/graph-frame.ts';
import { stacked } from './stacked.ts';

interface TradeOffProps {
  choice: Choice;
  pickedId: string | null;
  onPick(id: string): void;
}

const DOT_PX = 11;

/** Water against the time when all of it is there: each way a numbered dot, the demand a line. */
export function TradeOff({ choice, pickedId, onPick }: TradeOffProps) {
  const units = useUnits();
  return (
    <Graph
      summary={summaryOf(choice, units)}
      caption={`Water brought, ${units.of(1, 'flow').unit}, against the minute when all of it is there`}
    >
      {(widthPx, heightPx) => (
        <Dots
          choice={choice}
          pickedId={pickedId}
          onPick={onPick}
          units={units}
          widthPx={widthPx}
          heightPx={heightPx}
        />
      )}
    </Graph>
  );
}

function Dots(props: TradeOffProps & { units: Units; widthPx: number; heightPx: number }) {
  const { choice, pickedId, onPick, units, widthPx, heightPx } = props;
  const { ways, demandGpm } = choice;
  const base = heightPx - EDGE.bottom;
  const drawn = useMemo(() => {
    const mostGpm = Math.max(demandGpm, ...ways.map((way) => way.mostGpm)) * 1.08;
    const lastMin = Math.max(5, ...ways.map((way) => way.time.fullAtMin)) * 1.06;
    const y = evenAxis(mostGpm, 'flow', units.system, [base, EDGE.top], 5);
    const scale = scaleLinear([0, lastMin], [EDGE.left, widthPx - EDGE.right]);
    const x = {
      at: (minutes: number) => scale(minutes),
      ticks: scale.ticks(6).map((value) => ({ value, text: String(value) })),
    };
    const dots = ways.map((way) => ({ x: x.at(way.time.fullAtMin), y: y.at(way.mostGpm) }));
    const numbers = stacked(dots, DOT_PX * 2 + 1, {
      top: EDGE.top + DOT_PX,
      bottom: base - DOT_PX,
    });
    return { x, y, dots, numbers };
  }, [ways, demandGpm, units.system, widthPx, base]);
  const demandY = drawn.y.at(demandGpm);
  // The best on top, the picked one above all.
  const order = [...ways.keys()]
    .reverse()
    .sort((a, b) => Number(ways[a]!.id === pickedId) - Number(ways[b]!.id === pickedId));
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={drawn.x} y={drawn.y} />
      <path className="demand-line" d={`M${EDGE.left} ${demandY}H${widthPx - EDGE.right}`} />
      <text className="needed-text" x={widthPx - EDGE.right} y={demandY - 6} textAnchor="end">
        needed {units.text(demandGpm, 'flow')}
      </text>
      {order.map((index) => {
        const way = ways[index]!;
        const dot = drawn.dots[index]!;
        const number = drawn.numbers[index]!;
        return (
          // The table's buttons do the same by key: the dot is for the hand and the eye.
          // biome-ignore lint/a11y/noStaticElementInteractions: see above
          <g
            key={way.id}
            className={dotClass(way, pickedId)}
            transform={`translate(${number.x} ${number.y})`}
            onClick={() => onPick(way.id)}
          >
            {number.y !== dot.y && (
              <>
                <path className="dot-leader" d={`M0 0V${dot.y - number.y}`} />
                <circle className="dot-place" cy={dot.y - number.y} r={3} />
              </>
            )}
            <circle className="dot-target" r={22} />
            <circle className="dot" r={DOT_PX} />
            <text textAnchor="middle" dy="0.35em">
              {index + 1}
            </text>
          </g>
        );
      })}
    </>
  );
}

function dotClass(way: SupplyWay, pickedId: string | null): string {
  const kind = way.meetsDemand ? 'way-dot' : 'way-dot way-dot-short';
  return way.id === pickedId ? `${kind} way-dot-picked` : kind;
}

function summaryOf({ ways, demandGpm }: Choice, units: Units): string {
  const enough = ways.filter(({ meetsDemand }) => meetsDemand).length;
  const [first] = ways;
  const best = first
    ? ` The first brings ${units.text(first.mostGpm, 'flow')} all of it at ${clock(first.time.fullAtMin)} minutes.`
    : '';
  return `${ways.length} ways; ${enough} bring the ${units.text(demandGpm, 'flow')} needed.${best}`;
}
