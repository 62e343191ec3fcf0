import { clock, type ShuttlePart, type TenderRound } from '@plugside/fireground';
import { scaleLinear } from 'd3-scale';
import { useMemo } from 'react';
import { type Units, useUnits } from '../editing/use-units.ts';
import { Axes, Graph } from '../field-tests/Graph.tsx';
import { EDGE, evenAxis } from '../field-tests/graph-frame.ts';
import { Fact } from './DraftDetail.tsx';

/** A way's tender shuttle: every tender's round, and the portable tank over time. */
export function ShuttleDetail({ shuttle }: { shuttle: ShuttlePart }) {
  const units = useUnits();
  const { place, tenders, tankGal, pump, text } = shuttle;
  const volume = units.of(1, 'volume').unit;
  const flow = units.of(1, 'flow').unit;
  return (
    <section aria-labelledby="shuttle" className="shuttle-part">
      <h3 className="section-name" id="shuttle">
        Tender shuttle from {place.name}
      </h3>
      <p>{text}</p>
      <dl className="part-facts">
        <Fact name="Fill place">
          <b>{place.name}</b>,{' '}
          <span className="figures">{units.text(place.roadMi, 'distance')}</span> by road, fills at{' '}
          <span className="figures">{units.text(place.fillGpm, 'flow')}</span>
          {place.fillingRig && `; ${place.fillingRig.rigName} drafts and fills`}
        </Fact>
        {place.access && <Fact name="Access">{place.access}</Fact>}
        <Fact name="Kept up">
          <b className="figures">{units.text(shuttle.gpm, 'flow')}</b>, held by the{' '}
          {shuttle.limitedBy}
        </Fact>
        <Fact name="Drawn">
          <span className="figures">{units.text(shuttle.drawGpm, 'flow')}</span> from{' '}
          <span className="figures">{clock(shuttle.drawFromMin)}</span> min
        </Fact>
        <Fact name={`${pump.rigName} at the portable tank`}>
          {pump.pdpPsi !== null && (
            <b className="figures">{units.text(pump.pdpPsi, 'pressure')} </b>
          )}
          {pump.text}
        </Fact>
      </dl>
      <table className="way-table">
        <thead>
          <tr>
            <th scope="col">Tender</th>
            <th scope="col" className="number">
              Load, {volume}
            </th>
            <th scope="col" className="number">
              To fill, min
            </th>
            <th scope="col" className="number">
              Fills, min
            </th>
            <th scope="col" className="number">
              Back, min
            </th>
            <th scope="col" className="number">
              Dumps, min
            </th>
            <th scope="col" className="number">
              Round, min
            </th>
            <th scope="col" className="number">
              Alone, {flow}
            </th>
          </tr>
        </thead>
        <tbody>
          {tenders.map((tender) => (
            <TenderRow key={tender.rigId} tender={tender} volume={volume} flow={flow} />
          ))}
        </tbody>
      </table>
      <Graph
        summary={text}
        caption={`Water in the portable tank, ${volume}, against minutes from the call`}
      >
        {(widthPx, heightPx) => (
          <Level
            level={shuttle.level}
            tankGal={tankGal.value}
            dryAtMin={shuttle.runsDryAtMin}
            units={units}
            widthPx={widthPx}
            heightPx={heightPx}
          />
        )}
      </Graph>
    </section>
  );
}

interface TenderRowProps {
  tender: TenderRound;
  volume: string;
  flow: string;
}

function TenderRow({ tender, volume, flow }: TenderRowProps) {
  const units = useUnits();
  const legs: readonly (readonly [string, number])[] = [
    ['To fill, min', tender.outMin],
    ['Fills, min', tender.fillMin],
    ['Back, min', tender.backMin],
    ['Dumps, min', tender.dumpMin],
    ['Round, min', tender.roundTripMin],
  ];
  return (
    <tr>
      <th scope="row">
        {tender.rigName}
        <span className="fact"> first load dumped at {clock(tender.firstAtMin)}</span>
      </th>
      <td className="number" data-label={`Load, ${volume}`}>
        {units.number(tender.loadGal, 'volume')}
      </td>
      {legs.map(([label, minutes]) => (
        <td key={label} className="number" data-label={label}>
          {minutes.toFixed(1)}
        </td>
      ))}
      <td className="number" data-label={`Alone, ${flow}`}>
        {units.number(tender.gpm, 'flow')}
      </td>
    </tr>
  );
}

interface LevelProps {
  level: ShuttlePart['level'];
  tankGal: number;
  dryAtMin: number | null;
  units: Units;
  widthPx: number;
  heightPx: number;
}

function Level({ level, tankGal, dryAtMin, units, widthPx, heightPx }: LevelProps) {
  const base = heightPx - EDGE.bottom;
  const drawn = useMemo(() => {
    const endMin = Math.max(1, ...level.map(({ atMin }) => atMin));
    const scale = scaleLinear([0, endMin], [EDGE.left, widthPx - EDGE.right]);
    const y = evenAxis(tankGal * 1.1, 'volume', units.system, [base, EDGE.top], 4);
    const corners = level.map(({ atMin, gal }) => `${scale(atMin)} ${y.at(gal)}`);
    return {
      at: (minutes: number) => scale(minutes),
      x: {
        at: (minutes: number) => scale(minutes),
        ticks: scale.ticks(6).map((value) => ({ value, text: String(value) })),
      },
      y,
      line: `M${corners.join('L')}`,
      area: `M${scale(level[0]?.atMin ?? 0)} ${base}L${corners.join('L')}L${scale(level.at(-1)?.atMin ?? 0)} ${base}Z`,
    };
  }, [level, tankGal, units.system, widthPx, base]);
  return (
    <>
      <Axes widthPx={widthPx} heightPx={heightPx} x={drawn.x} y={drawn.y} />
      <path className="tank-area" d={drawn.area} />
      <path className="curve" d={drawn.line} />
      {dryAtMin !== null && (
        <>
          <path className="here-line" d={`M${drawn.at(dryAtMin)} ${EDGE.top}V${base}`} />
          <text
            className="needed-text"
            x={drawn.at(dryAtMin) - 6}
            y={EDGE.top + 8}
            textAnchor="end"
          >
            empty
          </text>
        </>
      )}
    </>
  );
}
