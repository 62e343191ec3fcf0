import { deferral, limitSentence, nameOf, pieceOf, sectionsText } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { useDeferredValue, useMemo } from 'react';
import { Button } from 'react-aria-components';
import type { HydrantSupply } from '../../api/district.ts';
import { Choice } from '../../editing/Choice.tsx';
import { type Units, useUnits } from '../../editing/use-units.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { PlanActions } from '../../places/PlanActions.tsx';
import { newPath } from '../../records/address.ts';
import type { District } from '../district.ts';
import { riseWords, todayIso } from '../words.ts';
import { LayNotices } from './LayNotices.tsx';
import { LayWay } from './LayWay.tsx';
import { useLayDraft } from './lay-store.ts';
import { planned } from './planned.ts';
import { type PlanningRecords, pickedRig, rigsByNearness } from './planning-records.ts';
import { useGround } from './use-ground.ts';
import type { FoundRoute } from './use-route.ts';
import { wayNotices } from './way-notices.ts';

interface LayPanelProps {
  district: District;
  building: Stored<'buildings'>;
  hydrant: Stored<'hydrants'>;
  supply: HydrantSupply;
  records: PlanningRecords;
  found: FoundRoute;
}

const NO_BOOSTER = 'none';
/** What is missing that a flow test gives. */
const TEST_NEEDED: ReadonlySet<string> = new Set(['no-flow-test', 'test-not-usable']);
/** What makes the hydrant's test a weak ground for "enough". */
const TEST_DOUBTS: ReadonlySet<string> = new Set(['small-drop', 'old-test', 'pitot-range']);

/** The lay from a hydrant to a building: its way, its rigs, and what it brings. */
export function LayPanel(props: LayPanelProps) {
  const { district, building, hydrant, supply, records, found } = props;
  const units = useUnits();
  const draft = useLayDraft((state) => state.history.present);
  const change = useLayDraft((state) => state.change);
  const rigs = useMemo(
    () => rigsByNearness(records, district.stations, building),
    [records, district, building],
  );
  const attack = rigs.find(({ id }) => id === draft.attackId) ?? rigs[0];
  const others = rigs.filter(({ id }) => id !== attack?.id);
  const booster = others.find(({ id }) => id === draft.boosterId);
  const { route } = found;

  const elevationAt = useGround(records.hasTerrain, route, hydrant, building);

  const solved = useMemo(() => {
    if (!attack) return null;
    const request = {
      building,
      hydrant,
      test: supply.test ?? undefined,
      tests: supply.datedAhead.map((testedOn) => ({ testedOn })),
      attack: pickedRig(attack, records),
      ...(booster && { booster: pickedRig(booster, records) }),
      route,
      ...(elevationAt && { elevationAt }),
      department: records.department,
      invented: district.summary.invented,
      today: todayIso(),
    };
    return planned(request, units.system);
  }, [
    attack,
    booster,
    building,
    hydrant,
    supply,
    records,
    route,
    elevationAt,
    district,
    units.system,
  ]);

  // What another engine would bring may lag a drag; the answer never does.
  const settledRoute = useDeferredValue(route);
  const [nextDue] = others;
  const suggested = useMemo(() => {
    if (!attack || booster || !nextDue) return null;
    const request = {
      building,
      hydrant,
      test: supply.test ?? undefined,
      attack: pickedRig(attack, records),
      booster: pickedRig(nextDue, records),
      route: settledRoute,
      department: records.department,
    };
    return planned(request, units.system).answered;
  }, [attack, booster, nextDue, building, hydrant, supply, records, settledRoute, units.system]);

  if (!attack || !solved) {
    return (
      <section className="panel-part">
        <p className="caution">
          <span className="caution-shape" aria-hidden="true" />
          <span>No engine is in service on record. Enter one to plan with.</span>
        </p>
      </section>
    );
  }

  const { answered, boost, hose } = solved;
  const missing = solved.notices.filter(({ level }) => level === 'error');
  const doubtful = solved.notices.some(({ code }) => TEST_DOUBTS.has(code));
  const most = answered?.answer.question === 'most water' ? answered.answer : null;
  const throughValve = solved.plan?.appliances.some(({ kind }) => kind === 'assist-valve')
    ? ' through the assist valve'
    : '';
  const needed = building.neededGpm;
  const spare = most && needed !== undefined ? most.flowGpm - needed : null;
  const more =
    suggested?.answer.question === 'most water' && most
      ? suggested.answer.flowGpm - most.flowGpm
      : 0;
  return (
    <section className="panel-part lay-panel" aria-label="The lay">
      <h2 className="panel-title">
        {hydrant.name} to {building.name}
      </h2>
      <dl className="lay-numbers figures">
        <div>
          <dt>Street</dt>
          <dd>{units.text(route.lengthFt, 'length')}</dd>
        </div>
        <div>
          <dt>Rise</dt>
          <dd>{riseWords(solved.riseFt, units)}</dd>
        </div>
        <div>
          <dt>Hose laid{hose.sections ? `, ${sectionsText(hose.sections, units.system)}` : ''}</dt>
          <dd>
            {hose.count > 1 ? `${hose.count} × ` : ''}
            {units.text(hose.laidFt, 'length')} of {units.hose(hose.hose)}
          </dd>
        </div>
      </dl>
      <div className="lay-answer" role="status">
        {hydrant.status === 'out of service' && (
          <p className="tone-warning">
            <b>{hydrant.name} is out of service</b>
            {hydrant.statusReason ? `: ${hydrant.statusReason}` : ''}. What follows holds once it is
            back.
          </p>
        )}
        {missing.map(({ code, text }) => (
          <p key={code} className="tone-warning">
            {text}{' '}
            {TEST_NEEDED.has(code) && (
              <PlaceLink
                className="text-link"
                href={newPath('flow-tests', { hydrantId: hydrant.id })}
              >
                Add a flow test
              </PlaceLink>
            )}
          </p>
        ))}
        {most && (
          <>
            <p className="figures">
              <span className="lay-figure">{units.number(most.flowGpm, 'flow')}</span>{' '}
              <span className="answer-unit">{units.of(most.flowGpm, 'flow').unit}</span>{' '}
              <span className="soft-text">to the building</span>
            </p>
            {spare !== null && needed !== undefined && (
              <p className={spare < 0 || doubtful ? 'tone-warning' : 'tone-water'}>
                {spareWords(spare, needed, doubtful, units)}
              </p>
            )}
            <p>
              {most.noneReason ??
                limitSentence(answered?.plan ?? solved.plan!, most.binding, units.system)}
            </p>
          </>
        )}
        {solved.problem && (
          <p className="tone-warning">This plan cannot be answered. {solved.problem}</p>
        )}
      </div>

      <h3 className="section-name">Rigs</h3>
      <ul className="lay-rigs">
        <li>
          <span>At the building</span>
          <Choice
            label="Rig at the building"
            value={attack.id}
            options={rigs.map(({ id, name }) => ({ value: id, text: name }))}
            onChange={(id) =>
              change('Rig at the building', {
                attackId: id,
                ...(id === draft.boosterId && { boosterId: null }),
              })
            }
          />
          <Pressure answered={answered} at="attack" />
        </li>
        <li>
          <span>At the hydrant</span>
          <Choice
            label="Rig at the hydrant"
            value={booster?.id ?? NO_BOOSTER}
            options={[
              { value: NO_BOOSTER, text: 'none: hydrant pressure' },
              ...others.map(({ id, name }) => ({ value: id, text: name })),
            ]}
            onChange={(id) =>
              change('Rig at the hydrant', { boosterId: id === NO_BOOSTER ? null : id })
            }
          />
          <Pressure answered={answered} at="booster" />
        </li>
      </ul>
      {booster && boost?.boosted && (
        <p className="soft-text">
          {boost.gainGpm > 0.5
            ? `${booster.name} adds ${units.text(boost.gainGpm, 'flow')}; hydrant pressure alone${throughValve} brings ${units.text(boost.unassisted.flowGpm, 'flow')}.`
            : `${booster.name} adds nothing here: hydrant pressure alone${throughValve} brings ${units.text(boost.unassisted.flowGpm, 'flow')}.`}
        </p>
      )}
      {nextDue && more > 0.5 && (
        <p className="lay-more">
          <span>
            {nextDue.name} at the hydrant would add {units.text(more, 'flow')}.
          </span>
          <Button
            className="plain-button"
            onPress={() => change(`${nextDue.name} at the hydrant`, { boosterId: nextDue.id })}
          >
            Put it there
          </Button>
        </p>
      )}
      <LayWay district={district} route={route} hydrant={hydrant} building={building} />
      <LayNotices
        way={wayNotices(route, units)}
        planning={[...solved.notices, ...records.notices].filter(({ level }) => level !== 'error')}
        answered={answered}
      />
      {solved.plan && (
        <PlanActions
          plan={answered?.plan ?? solved.plan}
          refers={{
            buildingId: building.id,
            hydrantIds: [hydrant.id],
            rigIds: [attack.id, ...(booster ? [booster.id] : [])],
            path: route.path.map(([longitude, latitude]) => [longitude, latitude]),
          }}
        />
      )}
      <p className="deferral">{deferral}</p>
    </section>
  );
}

/** What the rig's pump is set to. */
function Pressure({
  answered,
  at,
}: {
  answered: ReturnType<typeof planned>['answered'];
  at: 'attack' | 'booster';
}) {
  const units = useUnits();
  const rig = answered?.plan.rigs.find((one) => one.role === at);
  const order = rig && answered?.orders.find(({ id }) => id === rig.id);
  if (!order || !answered) return null;
  const piece = pieceOf(answered.plan, order.id);
  return (
    <span className="lay-pdp figures">
      <span className="hidden-text">{piece ? nameOf(piece) : ''} pumps at </span>
      {units.text(order.pdpPsi, 'pressure')}
    </span>
  );
}

/** Against the need; no plain "enough" on a test that is old or dropped too little. */
function spareWords(spareGpm: number, neededGpm: number, doubtful: boolean, units: Units): string {
  const needed = units.text(neededGpm, 'flow');
  if (spareGpm < 0) return `${units.text(-spareGpm, 'flow')} short of the ${needed} needed.`;
  const over = `${units.text(spareGpm, 'flow')} over the ${needed} needed`;
  return doubtful ? `By a doubtful test: ${over}. See the cautions.` : `Enough: ${over}.`;
}
