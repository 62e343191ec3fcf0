import { type FlowTrend, flowTestHistory, type HistoryEntry } from '@plugside/fireground';
import { useMemo } from 'react';
import { type Units, useUnits } from '../editing/use-units.ts';
import { exactPressure } from './exact-pressure.ts';
import { Findings } from './Findings.tsx';
import { FlowTestGraph } from './FlowTestGraph.tsx';
import { FlowTestNumbers } from './FlowTestNumbers.tsx';

interface FlowTestHistoryProps {
  tests: readonly HistoryEntry[];
  /** The hydrant's `planTestId`. */
  chosenId?: string;
  /** ISO date. */
  today: string;
}

/** All tests of a hydrant: the curve that plans use, the earlier ones behind it, and the trend. */
export function FlowTestHistory({ tests, chosenId, today }: FlowTestHistoryProps) {
  const units = useUnits();
  const history = useMemo(
    () => flowTestHistory(tests, { chosenId, today }),
    [tests, chosenId, today],
  );
  const { used, trend } = history;
  return (
    <section className="test-history" aria-label="Flow tests over the years">
      <FlowTestGraph tests={history.tests} main={used} />
      {used && (
        <p className="soft-text">
          Plans use the test of {used.test.testedOn},{' '}
          {history.usedBecause === 'chosen' ? 'as chosen' : 'the newest'}.
        </p>
      )}
      {used && <FlowTestNumbers result={used.result} />}
      <table className="test-table">
        <caption className="hidden-text">Tests, oldest first</caption>
        <thead>
          <tr>
            <th scope="col">Tested on</th>
            <th scope="col">Static</th>
            <th scope="col">Residual</th>
            <th scope="col">Flowed</th>
            <th scope="col">At {units.text(20, 'pressure')}</th>
          </tr>
        </thead>
        <tbody>
          {history.tests.map(({ test, result }, at) => (
            <tr
              key={test.id ?? `${test.testedOn}:${at}`}
              className={used?.test === test ? 'test-used' : undefined}
            >
              <th scope="row">{test.testedOn}</th>
              <td>{units.text(test.staticPsi, 'pressure')}</td>
              <td>{units.text(test.residualPsi, 'pressure')}</td>
              <td>{result.flowGpm === null ? '—' : units.text(result.flowGpm, 'flow')}</td>
              <td>{result.q20Gpm === null ? '—' : units.text(result.q20Gpm, 'flow')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {trend && (
        <p>
          Over the years: {trendWords(trend, units)}, static{' '}
          {Math.abs(trend.staticPsiPerYear) < 0.5
            ? 'steady'
            : `${trend.staticPsiPerYear < 0 ? 'down' : 'up'} ${exactPressure(Math.abs(trend.staticPsiPerYear), units)} a year`}
          .{trend.leftOut > 0 && ' Tests that dropped the pressure under 10 % are left out of it.'}
        </p>
      )}
      <Findings findings={history.notices} />
    </section>
  );
}

/** The change of the flow at 20 psi, and whether the gauges could have told it. */
function trendWords(trend: FlowTrend, units: Units): string {
  const { q20GpmPerYear, q20ErrorGpmPerYear, withinReadingError } = trend;
  const at = `at ${units.text(20, 'pressure')}`;
  const give = `give or take ${units.text(q20ErrorGpmPerYear, 'flow')} where each pressure may be read ${units.text(1, 'pressure')} off`;
  if (withinReadingError) return `no change ${at} that the readings could tell (${give})`;
  const way = q20GpmPerYear < 0 ? 'down' : 'up';
  return `${way} ${units.text(Math.abs(q20GpmPerYear), 'flow')} a year ${at}, ${give}`;
}
