import {
  nameOf,
  type PumpSetting,
  pieceOf,
  type RigOrder,
  type RigState,
  splitPortRef,
} from '@plugside/fireground';
import { memo } from 'react';
import { Button } from 'react-aria-components';
import { Choice } from '../editing/Choice.tsx';
import { QuantityField } from '../editing/QuantityField.tsx';
import { PDP, SPEED_PERCENT } from '../editing/ranges.ts';
import { type Units, useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';
import { takeSettings } from '../plan-store/edits/settings.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { useView } from '../plan-store/view.ts';
import { useSetPump } from './use-set-pdp.ts';

/** One order per operator: what to set, what to expect, what to say. */
export const SetAndSay = memo(function SetAndSay({ answered }: { answered: Answered }) {
  const change = usePlan((state) => state.change);
  const setQuestion = useView((state) => state.setQuestion);
  return (
    <section className="set-and-say" aria-labelledby="set-and-say">
      <h2 className="section-name" id="set-and-say">
        Set and say
      </h2>
      {answered.orders.map((order) => (
        <Operator key={order.id} order={order} answered={answered} />
      ))}
      {answered.question !== 'now' && (
        <Button
          className="quiet-button"
          onPress={() => {
            change('Take these settings', (plan) => takeSettings(plan, answered.plan));
            setQuestion('now');
          }}
        >
          Set them so, and see what happens
        </Button>
      )}
    </section>
  );
});

const MODES = [
  { value: 'governed', text: 'governor' },
  { value: 'throttled', text: 'throttle' },
  { value: 'idle', text: 'not pumping' },
] as const;

function Operator({ order, answered }: { order: RigOrder; answered: Answered }) {
  const units = useUnits();
  const setPump = useSetPump(answered);
  const state = answered.state.rigs.find((one) => one.id === order.id);
  const piece = pieceOf(answered.plan, order.id);
  if (!state || !piece) return null;
  const name = nameOf(piece);
  const { setting } = order;
  const pressure = units.of(state.pdpPsi, 'pressure');
  const setMode = (mode: PumpSetting['mode']) => {
    if (mode === 'idle') setPump(order.id, { mode });
    else if (mode === 'throttled') setPump(order.id, { mode, speedFraction: 0.8 });
    else setPump(order.id, { mode, pdpPsi: Math.max(Math.round(state.pdpPsi), 50) });
  };
  return (
    <article className="operator" aria-label={name}>
      <div className="operator-head">
        <div>
          <h3>{name}</h3>
          <p className="operator-role">
            {state.drafting ? 'at the water' : PLACE[state.role]},{' '}
            <Choice
              label={`How ${name} is set`}
              value={setting.mode}
              options={MODES}
              onChange={setMode}
            />
          </p>
        </div>
        <p className="operator-pdp">
          {setting.mode === 'governed' ? (
            <QuantityField
              label={`Discharge pressure to set, ${name}`}
              value={setting.pdpPsi}
              kind="pressure"
              size="figure"
              {...PDP}
              onChange={(pdpPsi, key) => setPump(order.id, { mode: 'governed', pdpPsi }, key)}
            />
          ) : setting.mode === 'throttled' ? (
            <QuantityField
              label={`Speed, per cent of full, ${name}`}
              value={Math.round(setting.speedFraction * 100)}
              kind="count"
              size="figure"
              {...SPEED_PERCENT}
              onChange={(percent, key) =>
                setPump(order.id, { mode: 'throttled', speedFraction: percent / 100 }, key)
              }
            />
          ) : (
            <span className="figure figures">{pressure.number}</span>
          )}
          <span className="unit">
            {setting.mode === 'throttled'
              ? '% speed'
              : setting.mode === 'idle'
                ? `${pressure.unit} out`
                : 'out'}
          </span>
        </p>
      </div>
      <p className="operator-expect figures">
        <Expect state={state} />
        {setting.mode === 'governed' && Math.abs(state.pdpPsi - setting.pdpPsi) > 0.5 && (
          <>
            {' '}
            It gives {units.text(state.pdpPsi, 'pressure')}: {STATES[state.state]}.
          </>
        )}
      </p>
      {order.gate.length > 0 && (
        <p className="operator-gate figures">Gate down: {gateWords(order, answered, units)}.</p>
      )}
      {order.radio !== '' && <p className="radio">“{order.radio}”</p>}
    </article>
  );
}

const PLACE = { booster: 'at the hydrant', relay: 'in the relay', attack: 'at the fire' } as const;

const STATES: Record<RigState['state'], string> = {
  holding: 'holding',
  'at capability': 'no more to give',
  passing: 'the intake is already above the setting',
  'not pumping': 'not pumping',
  'protecting intake': 'protecting its intake',
  'no flow': 'no flow',
};

/** Lines to one monitor are gated alike and told once. */
function gateWords(order: RigOrder, answered: Answered, units: Units): string {
  const lines = order.gate.map(
    (gate) => `${nameFor(answered, gate.line)} by ${units.text(gate.lossPsi, 'pressure')}`,
  );
  return [...new Set(lines)]
    .map((text) => (lines.filter((one) => one === text).length > 1 ? `${text} each` : text))
    .join(', ');
}

/** A line by what it ends at. */
function nameFor(answered: Answered, lineId: string): string {
  const line = answered.plan.lines.find((one) => one.id === lineId);
  const piece = line && pieceOf(answered.plan, splitPortRef(line.to).pieceId);
  return piece ? nameOf(piece) : lineId;
}

function Expect({ state }: { state: RigState }) {
  const units = useUnits();
  const share = Math.round(state.capabilityFraction * 100);
  return (
    <>
      {units.number(state.intakePsi, 'pressure')} in, {units.number(state.netPsi, 'pressure')} net,{' '}
      {units.text(state.flowGpm, 'flow')}
      {state.netPsi > 0.5 && (
        <>
          ,{' '}
          <span className={share >= 97 ? 'caution-word' : undefined}>
            {share} % of its capability
          </span>
        </>
      )}
      .
      {state.beyondRating && (
        <span className="caution-word"> Beyond its rating: prove it by test.</span>
      )}
    </>
  );
}
