import { type Choice, clock, type SupplyWay } from '@plugside/fireground';
import { type MouseEvent, useMemo } from 'react';
import { type Units, useUnits } from '../editing/use-units.ts';
import { Axes, Graph } from '../field-tests/Graph.tsx';
import { EDGE } from '../field-tests/graph-frame.ts';
import { tradeOffPicture } from './trade-off-picture.ts';
import { BESIDE_PX, MARK_PX, type Place } from './trade-off-places.ts';

interface TradeOffProps {
  choice: Choice;
  pickedId: string | null;
  onPick(id: string): void;
}

/** How far from a mark or its number a finger may be [px]. */
const REACH_PX = 30;

/** Water against the time when all of it is there: each way a mark with its number, the demand a line. */
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
  const words = `needed ${units.text(demandGpm, 'flow')}`;
  const drawn = useMemo(
    () => tradeOffPicture({ ways, demandGpm }, { widthPx, heightPx }, units.system, words),
    [ways, demandGpm, widthPx, heightPx, units.system, words],
  );
  const { marks, numbers, demandY } = drawn;
  // The best on top, the picked one above all.
  const order = [...ways.keys()]
    .reverse()
    .sort((a, b) => Number(ways[a]!.id === pickedId) - Number(ways[b]!.id === pickedId));
  const pick = (event: MouseEvent<SVGGElement>) => {
    const corner = event.currentTarget.ownerSVGElement!.getBoundingClientRect();
    const at = { x: event.clientX - corner.left, y: event.clientY - corner.top };
    const away = (one: Place) => Math.hypot(one.x - at.x, one.y - at.y);
    const aways = ways.map((_, index) => Math.min(away(marks[index]!), away(numbers[index]!)));
    const least = Math.min(...aways);
    if (least <= REACH_PX) onPick(ways[aways.indexOf(least)]!.id);
  };
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={drawn.x} y={drawn.y} />
      <path className="demand-line" d={`M${EDGE.left} ${demandY}H${widthPx - EDGE.right}`} />
      <text
        className="needed-text"
        x={drawn.words.x}
        y={drawn.words.y}
        dy="0.35em"
        textAnchor="middle"
      >
        {words}
      </text>
      {/* The table's buttons do the same by key: the marks are for the hand and the eye. */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: see above */}
      <g className="way-marks" onClick={pick}>
        <rect className="way-field" width={widthPx} height={heightPx} />
        {order.map((index) => (
          <Leader
            key={ways[index]!.id}
            mark={marks[index]!}
            number={numbers[index]!}
            className={markClass(ways[index]!, pickedId)}
          />
        ))}
        {order.map((index) => (
          <g key={ways[index]!.id} className={markClass(ways[index]!, pickedId)}>
            <circle className="dot" cx={marks[index]!.x} cy={marks[index]!.y} r={MARK_PX - 0.75} />
            <text x={numbers[index]!.x} y={numbers[index]!.y} textAnchor="middle" dy="0.35em">
              {index + 1}
            </text>
          </g>
        ))}
      </g>
    </>
  );
}

/** From a mark to its number, where it is not right beside it. */
function Leader(props: { mark: Place; number: Place; className: string }) {
  const { mark, number, className } = props;
  const away = Math.hypot(number.x - mark.x, number.y - mark.y);
  if (away <= BESIDE_PX) return null;
  return (
    <path
      className={`${className} dot-leader`}
      d={`M${mark.x} ${mark.y}L${number.x} ${number.y}`}
    />
  );
}

function markClass(way: SupplyWay, pickedId: string | null): string {
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
