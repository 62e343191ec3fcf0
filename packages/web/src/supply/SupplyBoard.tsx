import { type Adjustments, adjusted, asTheyCome, deferral, rankingOf } from '@plugside/fireground';
import { useMemo, useState } from 'react';
import type { SituationAnswer } from '../api/situation.ts';
import { addressOf } from '../district/selection.ts';
import { useUnits } from '../editing/use-units.ts';
import { Findings } from '../field-tests/Findings.tsx';
import { PlaceLink } from '../places/PlaceLink.tsx';
import { ComingRigs } from './ComingRigs.tsx';
import { DemandPart } from './DemandPart.tsx';
import { Refused } from './Refused.tsx';
import { TradeOff } from './TradeOff.tsx';
import { useChoice, useIsLong, useSupplyService } from './use-supply.ts';
import { WayDetail } from './WayDetail.tsx';
import { WayTable } from './WayTable.tsx';
import { WorkingStrip } from './WorkingStrip.tsx';

interface SupplyBoardProps {
  answer: SituationAnswer;
  /** Told what the building needs where its record does not say [gpm]. */
  onNeeds(demandGpm: number): void;
}

/** One building: what it needs, who comes, the ways, and the one picked. */
export function SupplyBoard({ answer, onNeeds }: SupplyBoardProps) {
  const { building, situation, notices } = answer;
  const [changes, setChanges] = useState<Adjustments>(asTheyCome);
  const change = (next: Adjustments) => {
    setChanges(next);
    if (!situation && next.demandGpm !== null) onNeeds(next.demandGpm);
  };
  const asksForFlow = !situation && (changes.demandGpm ?? building.neededGpm) === undefined;
  const [demandMethod, setDemandMethod] = useState<string | null>(null);
  return (
    <>
      <nav aria-label="Back" className="trail">
        <ul>
          <li>
            <PlaceLink href="/supply">‹ Another building</PlaceLink>
          </li>
          <li>
            <PlaceLink href={addressOf({ building: building.id })}>On the map ›</PlaceLink>
          </li>
        </ul>
      </nav>
      <h1 className="supply-title">{building.name}</h1>
      {building.address && <p className="soft-text">{building.address}</p>}
      <div className="supply-given">
        <DemandPart
          building={building}
          changes={changes}
          onChange={change}
          chosen={demandMethod}
          onChosen={setDemandMethod}
        >
          {situation && <ComingRigs situation={situation} changes={changes} onChange={change} />}
        </DemandPart>
      </div>
      {situation ? (
        <Ways
          answer={{ ...answer, situation }}
          changes={changes}
          demandMethod={demandMethod}
          onChange={change}
        />
      ) : asksForFlow ? (
        <p className="nothing">
          The ways to supply it are worked out for a flow: enter what it needs, or go by one of the
          methods above.
        </p>
      ) : (
        <Findings findings={notices} />
      )}
      <p className="deferral">{deferral}</p>
    </>
  );
}

interface WaysProps {
  answer: SituationAnswer & { situation: NonNullable<SituationAnswer['situation']> };
  changes: Adjustments;
  demandMethod: string | null;
  onChange(changes: Adjustments): void;
}

function Ways({ answer, changes, demandMethod, onChange }: WaysProps) {
  const units = useUnits();
  const service = useSupplyService();
  const situation = useMemo(() => adjusted(answer.situation, changes), [answer, changes]);
  const ranking = useMemo(() => rankingOf(changes), [changes]);
  const choosing = useChoice(service, situation, ranking);
  const { value: choice, working, problem, stopped } = choosing;
  const long = useIsLong(working);
  const old = long || stopped;
  const [pickedId, setPickedId] = useState<string | null>(null);
  const [first] = choice?.ways ?? [];
  const picked = choice?.ways.find(({ id }) => id === pickedId) ?? first;
  if (problem) {
    return (
      <p role="alert" className="caution">
        <span className="caution-shape" aria-hidden="true" />
        <span>The ways could not be worked out. {problem}</span>
      </p>
    );
  }
  const strip = (
    <WorkingStrip
      choosing={choosing}
      shown={old}
      demandGpm={situation.demandGpm}
      shownGpm={choice?.demandGpm ?? null}
    />
  );
  if (!choice) {
    return (
      <>
        {stopped ? (
          <p className="nothing">No ways are worked out yet.</p>
        ) : (
          <p className="nothing" role="status">
            Working out the ways…
          </p>
        )}
        {strip}
      </>
    );
  }
  return (
    <section
      className="ways"
      aria-labelledby="ways"
      aria-busy={working}
      data-old={old || undefined}
    >
      <h2 className="section-name" id="ways">
        {old
          ? `Ways before the change, for ${units.text(choice.demandGpm, 'flow')}`
          : 'Ways to supply it'}
      </h2>
      {strip}
      <p className="why" role="status">
        {first?.meetsDemand && <b>{first.title}. </b>}
        {choice.why}
      </p>
      {choice.ways.length > 0 && (
        <>
          <div className="ways-both">
            <WayTable
              choice={choice}
              pickedId={picked?.id ?? null}
              onPick={setPickedId}
              changes={changes}
              onChange={onChange}
            />
            <TradeOff choice={choice} pickedId={picked?.id ?? null} onPick={setPickedId} />
          </div>
          {picked && (
            <WayDetail
              way={picked}
              demandGpm={choice.demandGpm}
              answer={answer}
              changes={changes}
              demandMethod={demandMethod}
              situation={situation}
              service={service}
            />
          )}
        </>
      )}
      <Refused refused={choice.refused} />
      <Findings findings={answer.notices} />
    </section>
  );
}
