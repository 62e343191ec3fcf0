import { describeLine, type Line, type Plan, splitPortRef } from '@plugside/fireground';
import { memo } from 'react';
import { useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';
import { pastPiece } from '../plan-store/edits/lay.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { ValveSwitch } from './ValveSwitch.tsx';

/** The supply's valves, for "as set now": which lines are open, which shut. */
export const Valves = memo(function Valves({ answered }: { answered: Answered }) {
  const plan = usePlan((state) => state.history.present);
  const past = pastPiece(plan, plan.scene);
  const supply = plan.lines.filter((line) => !past.has(splitPortRef(line.from).pieceId));
  if (supply.length === 0) return null;
  return (
    <section className="valves" aria-labelledby="valves">
      <h2 className="section-name" id="valves">
        Valves of the supply
      </h2>
      <ul>
        {supply.map((line) => (
          <SupplyValve key={line.id} plan={plan} line={line} answered={answered} />
        ))}
      </ul>
    </section>
  );
});

function SupplyValve({ plan, line, answered }: { plan: Plan; line: Line; answered: Answered }) {
  const units = useUnits();
  const state = answered.state.lines.find((one) => one.id === line.id);
  return (
    <li className="supply-valve">
      <span>
        {units.hose(line.hose)}, {describeLine(plan, line)}
        {state && (
          <span className="soft-text figures"> {units.text(Math.abs(state.flowGpm), 'flow')}</span>
        )}
      </span>
      <ValveSwitch line={line} name={describeLine(plan, line)} />
    </li>
  );
}
