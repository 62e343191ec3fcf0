import { clock, type ShuttlePart, type TenderRound } from '@plugside/fireground';
import { useUnits } from '../editing/use-units.ts';
import { Graph } from '../field-tests/Graph.tsx';
import { Fact } from './DraftDetail.tsx';
import { LevelGraph } from './LevelGraph.tsx';

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
          <LevelGraph
            level={shuttle.level}
            tankGal={tankGal.value}
            moment={
              shuttle.runsDryAtMin === null ? null : { atMin: shuttle.runsDryAtMin, text: 'empty' }
            }
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
