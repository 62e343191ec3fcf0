import { describeLine, type Notice, nameOf, pieceOf } from '@plugside/fireground';
import { memo, useState } from 'react';
import { Button } from 'react-aria-components';
import { useUnits } from '../editing/use-units.ts';
import type { Answered } from '../plan-store/ask.ts';

/** Settled words that end every list of cautions. */
export const DEFERRAL =
  "Training and planning aid. Your department's procedures, the water utility and the makers' data decide.";

const SHOWN_AT_FIRST = 5;

function unique(notices: readonly Notice[]): Notice[] {
  const seen = new Set<string>();
  return notices.filter((one) => !seen.has(one.text) && seen.add(one.text));
}

/** What to be careful with, told by a shape and words. */
export const Cautions = memo(function Cautions({ answered }: { answered: Answered }) {
  const notices = unique([...answered.notices, ...answered.shutOff.notices]);
  const cautions = notices.filter((one) => one.level === 'caution');
  const facts = notices.filter((one) => one.level === 'fact');
  const [all, setAll] = useState(false);
  const shown = all ? cautions : cautions.slice(0, SHOWN_AT_FIRST);
  return (
    <section className="cautions" aria-labelledby="cautions">
      <h2 className="section-name" id="cautions">
        Cautions
      </h2>
      <ul>
        {shown.map((one) => (
          <li key={one.text} className="caution">
            <span className="caution-shape" aria-hidden="true" />
            <span>{one.text}</span>
          </li>
        ))}
        {cautions.length > SHOWN_AT_FIRST && (
          <li>
            <Button className="quiet-button" onPress={() => setAll(!all)}>
              {all ? 'Only the first cautions' : `All ${cautions.length} cautions`}
            </Button>
          </li>
        )}
        {facts.map((one) => (
          <li key={one.text} className="fact">
            <span>{one.text}</span>
          </li>
        ))}
      </ul>
      <ShutOffTable answered={answered} />
      <p className="deferral">{DEFERRAL}</p>
    </section>
  );
});

/** Share of its limit from which a line's shut-off pressure is worth a row. */
const WORTH_TELLING = 0.6;

function ShutOffTable({ answered }: { answered: Answered }) {
  const units = useUnits();
  const { shutOff, plan } = answered;
  const lines = shutOff.lines.filter(
    (one) =>
      one.passed ||
      (one.shutPsi > one.flowingPsi + 1 && one.shutPsi > one.limitPsi * WORTH_TELLING),
  );
  const rows = [
    ...lines.map((one) => ({ ...one, name: lineName(answered, one.id) })),
    ...shutOff.intakes.map((one) => {
      const piece = pieceOf(plan, one.id);
      return { ...one, name: `Intake of ${piece ? nameOf(piece) : one.id}` };
    }),
  ];
  if (rows.length === 0) return null;
  return (
    <table className="shut-off">
      <caption>When every nozzle shuts, {units.of(1, 'pressure').unit}</caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">flowing</th>
          <th scope="col">shut</th>
          <th scope="col">at most</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.id}:${row.name}`} className={row.passed ? 'passed' : undefined}>
            <th scope="row">{row.name}</th>
            <td>{units.number(row.flowingPsi, 'pressure')}</td>
            <td>
              {row.passed && <span aria-hidden="true">▲ </span>}
              {units.number(row.shutPsi, 'pressure')}
              {row.passed && <span className="hidden-text"> passes its limit</span>}
            </td>
            <td>{units.number(row.limitPsi, 'pressure')}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function lineName(answered: Answered, id: string): string {
  const line = answered.plan.lines.find((one) => one.id === id);
  return line ? describeLine(answered.plan, line) : id;
}
