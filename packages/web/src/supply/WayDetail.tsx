import {
  type Adjustments,
  clock,
  laidTexts,
  type Situation,
  type SupplyWay,
  writePlan,
} from '@plugside/fireground';
import type { SituationAnswer } from '../api/situation.ts';
import { useUnits } from '../editing/use-units.ts';
import { MadePaper } from '../paper/MadePaper.tsx';
import { PlanActions } from '../places/PlanActions.tsx';
import { BoostChart } from './BoostChart.tsx';
import { DraftDetail } from './DraftDetail.tsx';
import { MishapTable } from './MishapTable.tsx';
import { ShuttleDetail } from './ShuttleDetail.tsx';
import { StepChart } from './StepChart.tsx';
import type { SupplyService } from './supply-service.ts';
import { TankChart } from './TankChart.tsx';

interface WayDetailProps {
  way: SupplyWay;
  changes: Adjustments;
  /** Where the demand comes from, where it is not the record's. */
  demandMethod: string | null;
  demandGpm: number;
  answer: SituationAnswer;
  situation: Situation;
  service: SupplyService | null;
}

/** One way in full: who does what and when, what to set and say, and what becomes of it. */
export function WayDetail(props: WayDetailProps) {
  const { way, demandGpm, answer, situation, service, changes, demandMethod } = props;
  const units = useUnits();
  const { title, plan, duties, orders, notices, bindingText, time } = way;
  const figures = `${units.text(way.mostGpm, 'flow')}, first water at ${clock(time.waterAtMin)} min, all of it at ${clock(time.fullAtMin)}`;
  const waterPlan = (
    <MadePaper
      document="building-plan"
      from={{ ...printedFrom(answer, changes, demandMethod), way: way.id }}
      ready="Open the water plan"
    >
      Print the water plan
    </MadePaper>
  );
  return (
    <article className="way-detail" aria-label={title}>
      <h2 className="panel-title">{title}</h2>
      <p className="figures">
        {figures}. {bindingText}
      </p>
      <div className="way-detail-parts">
        <section aria-labelledby="duties">
          <h3 className="section-name" id="duties">
            Who does what
          </h3>
          <ul className="duties">
            {[...duties, ...(way.standBy ?? [])].map(({ rigId, rigName, duty }) => (
              <li key={`${rigId}:${duty}`}>
                <b>{rigName}</b> {duty}
                <span className="soft-text">{arrivalWords(situation, rigId)}</span>
              </li>
            ))}
          </ul>
          <ul className="way-laid">
            {laidTexts(way.parts ?? [], units.system).map((text) => (
              <li key={text} className="fact">
                {text}
              </li>
            ))}
          </ul>
          {orders.length > 0 && (
            <>
              <h3 className="section-name">Set and say</h3>
              <ul className="way-orders">
                {orders.map((order) => (
                  <li key={order.id}>
                    <b>{nameIn(way, situation, order.id)}</b>{' '}
                    {isAtFire(way, order.id) ? (
                      // The way ends at the intakes of the engines at the fire.
                      <span className="soft-text">pumps as its lines need</span>
                    ) : (
                      <span className="figures way-pdp">
                        {units.text(order.pdpPsi, 'pressure')}
                      </span>
                    )}
                    <span className="way-radio">{order.radio}</span>
                    {order.gate.map(({ line, lossPsi, atGpm }) => (
                      <span key={line} className="fact">
                        Gate {line} to lose {units.text(lossPsi, 'pressure')} at{' '}
                        {units.text(atGpm, 'flow')}.
                      </span>
                    ))}
                  </li>
                ))}
              </ul>
            </>
          )}
        </section>
        <section aria-labelledby="steps">
          <h3 className="section-name" id="steps">
            Time to water, minutes from the call
          </h3>
          <StepChart time={time} />
        </section>
      </div>
      {way.drafts?.map((part) => (
        <DraftDetail key={part.sourceId} part={part} />
      ))}
      {way.shuttle && <ShuttleDetail shuttle={way.shuttle} />}
      {(plan || way.shuttle) && <MishapTable way={way} demandGpm={demandGpm} service={service} />}
      <div className="way-detail-parts">
        <TankChart way={way} situation={situation} />
        <BoostChart way={way} situation={situation} />
      </div>
      {notices.length > 0 && (
        <section aria-labelledby="way-cautions">
          <h3 className="section-name" id="way-cautions">
            Cautions
          </h3>
          <ul>
            {notices.map(({ level, text }) => (
              <li key={text} className={level === 'fact' ? 'fact' : 'caution'}>
                {level !== 'fact' && <span className="caution-shape" aria-hidden="true" />}
                <span>{text}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {plan ? (
        <PlanActions plan={plan} refers={refersTo(way, answer)}>
          {waterPlan}
          <MadePaper
            document="drill-sheet"
            from={{ plan: writePlan(plan), place: answer.building.name, duties }}
            ready="Open the drill sheet"
          >
            Print a drill sheet
          </MadePaper>
        </PlanActions>
      ) : (
        <div className="lay-actions">
          <div className="lay-buttons">{waterPlan}</div>
        </div>
      )}
    </article>
  );
}

/** The same situation and ranking, for the server to choose from again. */
function printedFrom(
  { building }: SituationAnswer,
  { demandGpm, away, arrivesMin, marginShare, fireLinePdpPsi, first }: Adjustments,
  demandMethod: string | null,
) {
  return {
    buildingId: building.id,
    ...(demandGpm !== null && { demandGpm }),
    ...(demandGpm !== null && { demandMethod: demandMethod ?? 'entered while choosing' }),
    away,
    arrivesMin,
    ...(marginShare !== undefined && { marginShare }),
    ...(fireLinePdpPsi !== undefined && { fireLinePdpPsi }),
    first,
  };
}

function arrivalWords({ rigs }: Situation, rigId: string): string {
  const coming = rigs.find(({ rig }) => rig.id === rigId);
  return coming ? ` · arrives ${clock(coming.arrivesMin)}` : '';
}

/** The plan's own name of a rig in it. */
/** Of the engines at the fire a way's plan has one. */
function nameIn({ plan }: SupplyWay, { rigs }: Situation, id: string): string {
  const drawn = plan?.rigs.find((rig) => rig.id === id)?.name;
  return drawn ?? rigs.find(({ rig }) => rig.id === id)?.rig.name ?? id;
}

function isAtFire({ plan }: SupplyWay, id: string): boolean {
  return plan !== null && (id === plan.scene || !plan.rigs.some((rig) => rig.id === id));
}

function refersTo(way: SupplyWay, { building, recordIds, paths }: SituationAnswer) {
  const records = (ids: readonly string[]) =>
    ids.map((id) => recordIds[id]).filter((id) => id !== undefined);
  const [source] = way.sources;
  const path = source ? paths[source] : undefined;
  return {
    buildingId: building.id,
    hydrantIds: records(way.sources.filter((id) => id.startsWith('H'))),
    rigIds: [...new Set(records(way.duties.map(({ rigId }) => rigId)))],
    ...(path && {
      path: path.map(([longitude, latitude]): [number, number] => [longitude, latitude]),
    }),
  };
}
