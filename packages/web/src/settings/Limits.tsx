import type { LimitCheck, Quantity } from '@plugside/fireground';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { QuantityField } from '../editing/QuantityField.tsx';
import { LIMIT_PRESSURE } from '../editing/ranges.ts';
import { useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';
import { setLimit } from '../plan-store/edits/settings.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { limitKey } from './limit-keys.ts';
import { limitBar } from './limit-scale.ts';

const QUANTITIES: Record<LimitCheck['unit'], Quantity> = {
  psi: 'pressure',
  gpm: 'flow',
  'ft/s': 'velocity',
  inHg: 'vacuum',
};

const SHOWN_AT_FIRST = 6;

/** Every limit with the room left, the tightest first. */
export function Limits({ answered }: { answered: Answered }) {
  const [all, setAll] = useState(false);
  const ranked = [...answered.limits].sort(
    (a, b) => Number(b.binds) - Number(a.binds) || a.marginFraction - b.marginFraction,
  );
  const shown = all ? ranked : ranked.slice(0, SHOWN_AT_FIRST);
  return (
    <section className="limits" aria-labelledby="limits">
      <h2 className="section-name" id="limits">
        Limits, tightest first
      </h2>
      <ul>
        {shown.map((check) => (
          <Limit key={check.id} check={check} answered={answered} />
        ))}
      </ul>
      {ranked.length > SHOWN_AT_FIRST && (
        <Button className="quiet-button" onPress={() => setAll(!all)}>
          {all ? 'Fewer' : `All ${ranked.length} limits`}
        </Button>
      )}
    </section>
  );
}

function Limit({ check, answered }: { check: LimitCheck; answered: Answered }) {
  const units = useUnits();
  const change = usePlan((state) => state.change);
  const quantity = QUANTITIES[check.unit];
  const bar = limitBar(check);
  const key = limitKey(check, answered.plan);
  const value = units.of(check.value, quantity);
  const tight = check.passed || check.binds;
  const word = check.passed ? 'passed' : check.binds ? 'the limit' : null;
  const per = (share: number) => `${(share * 100).toFixed(2)}%`;
  return (
    <li className={tight ? 'limit-row limit-row-tight' : 'limit-row'}>
      <div className="limit-head">
        <span className="limit-name">
          {check.passed && <span aria-hidden="true">▲ </span>}
          {check.label}
        </span>
        <span className="limit-numbers figures">
          <b>{value.number}</b>
          <span className="limit-sense">{check.sense === 'min' ? 'at least' : 'at most'}</span>
          {key && quantity === 'pressure' ? (
            <QuantityField
              label={`Limit: ${check.label}`}
              value={check.limit}
              kind="pressure"
              {...LIMIT_PRESSURE}
              onChange={(limit, step) =>
                change('Limit', (plan) => setLimit(plan, key, limit), step)
              }
            />
          ) : (
            <span>{units.text(check.limit, quantity)}</span>
          )}
        </span>
      </div>
      <div className="limit-bar" aria-hidden="true">
        <span
          className="limit-out"
          style={{ left: per(bar.outFrom), width: per(bar.outTo - bar.outFrom) }}
        />
        <span
          className="limit-room"
          style={{ left: per(bar.roomFrom), width: per(bar.roomTo - bar.roomFrom) }}
        />
        <span className="limit-value" style={{ left: per(bar.valueAt) }} />
      </div>
      <p className="limit-foot">
        <span>
          {word && <span className="caution-word">{word}; </span>}
          {check.margin >= 0
            ? `${units.text(check.margin, quantity)} of room`
            : `${units.text(-check.margin, quantity)} too ${check.sense === 'min' ? 'low' : 'high'}`}
        </span>
        <span className="origin" title={check.origin.text}>
          {check.origin.kind}: {check.origin.text}
        </span>
      </p>
    </li>
  );
}
