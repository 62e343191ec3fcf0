import type { LimitCheck, Quantity } from '@plugside/fireground';
import { QuantityField } from '../editing/QuantityField.tsx';
import { LIMIT_VALUE } from '../editing/ranges.ts';
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

/** Under this, what is left is nothing worth a number [psi, gpm, ft/s]. */
const NO_ROOM = 0.05;

/** One limit: what it is, where it stands between free and forbidden, and where it comes from. */
export function LimitRow({ check, answered }: { check: LimitCheck; answered: Answered }) {
  const units = useUnits();
  const change = usePlan((state) => state.change);
  const quantity = QUANTITIES[check.unit];
  const key = limitKey(check, answered.plan);
  const own = key !== null && answered.plan.department.limits?.[key] !== undefined;
  const gone = Math.abs(check.margin) < NO_ROOM;
  const room = gone
    ? 'no room left'
    : check.margin > 0
      ? `${units.text(check.margin, quantity)} of room`
      : `${units.text(-check.margin, quantity)} too ${check.sense === 'min' ? 'low' : 'high'}`;
  return (
    <li className={check.passed || check.binds ? 'limit-row limit-row-tight' : 'limit-row'}>
      <p className="limit-name">
        {check.passed && (
          <>
            <span className="caution-shape" aria-hidden="true" />
            <span className="caution-word">Passed: </span>
          </>
        )}
        {check.binds && !check.passed && <span className="caution-word">The limit: </span>}
        {check.label}
      </p>
      <Bar check={check} />
      <div className="limit-numbers figures">
        <b>{units.number(check.value, quantity)}</b>
        <span className="limit-sense">{check.sense === 'min' ? 'at least' : 'at most'}</span>
        {key ? (
          <QuantityField
            label={`Limit: ${check.label}`}
            value={check.limit}
            kind={quantity}
            {...LIMIT_VALUE}
            onChange={(limit, step) => change('Limit', (plan) => setLimit(plan, key, limit), step)}
          />
        ) : (
          <span>
            {units.number(check.limit, quantity)}{' '}
            <span className="unit">{units.of(1, quantity).unit}</span>
          </span>
        )}
        <span className="limit-room-word">{room}</span>
        <details className="origin">
          <summary>{check.origin.kind}</summary>
          <p>
            {check.origin.text}
            {check.origin.date && `, ${check.origin.date}`}.
            {own && key && (
              <button
                type="button"
                className="text-button"
                onClick={() => change('Limit', (plan) => setLimit(plan, key, null))}
              >
                Back to the usual value
              </button>
            )}
          </p>
        </details>
      </div>
    </li>
  );
}

function Bar({ check }: { check: LimitCheck }) {
  const bar = limitBar(check);
  const part = (from: number, to: number) => ({
    left: `${(from * 100).toFixed(2)}%`,
    width: `${((to - from) * 100).toFixed(2)}%`,
  });
  return (
    <div className="limit-bar" aria-hidden="true">
      <span className="limit-out" style={part(bar.outFrom, bar.outTo)} />
      <span className="limit-room" style={part(bar.roomFrom, bar.roomTo)} />
      <span className="limit-value" style={{ left: `${(bar.valueAt * 100).toFixed(2)}%` }} />
    </div>
  );
}
