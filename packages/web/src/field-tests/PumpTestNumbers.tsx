import type { PumpCurve } from '@plugside/fireground';
import { useUnits } from '../editing/use-units.ts';
import { Findings } from './Findings.tsx';

const percent = (share: number | null) => (share === null ? '—' : `${Math.round(share * 100)} %`);

/** A pump's curve against its rating, in numbers, and its wear over the years. */
export function PumpTestNumbers({ curve }: { curve: PumpCurve }) {
  const units = useUnits();
  return (
    <div className="test-numbers">
      {curve.shareOfRating !== null && (
        <p className="test-answer">
          <span className="figure">{Math.round(curve.shareOfRating * 100)}</span>{' '}
          <span className="answer-unit">%</span>{' '}
          <span className="soft-text">of its rating, at its weakest point</span>
        </p>
      )}
      {curve.points && curve.rating.length > 0 && (
        <table className="test-table">
          <caption className="hidden-text">Against the rating</caption>
          <thead>
            <tr>
              <th scope="col">Net</th>
              <th scope="col">Rated</th>
              <th scope="col">Gives</th>
              <th scope="col">Share</th>
            </tr>
          </thead>
          <tbody>
            {curve.rating.map((row) => (
              <tr key={row.netPsi}>
                <th scope="row">{units.text(row.netPsi, 'pressure')}</th>
                <td>{units.text(row.requiredGpm, 'flow')}</td>
                <td>{row.gotGpm === null ? 'not tested' : units.text(row.gotGpm, 'flow')}</td>
                <td>{percent(row.share)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {curve.trend.length > 1 && (
        <table className="test-table">
          <caption>Over the years</caption>
          <thead>
            <tr>
              <th scope="col">Tested on</th>
              <th scope="col">Of rating</th>
              <th scope="col">Net at rated flow</th>
              <th scope="col">Pressure at like speed</th>
            </tr>
          </thead>
          <tbody>
            {curve.trend.map((row) => (
              <tr key={`${row.testedOn}:${row.shareOfRating}:${row.headShareOfFirst}`}>
                <th scope="row">{row.testedOn}</th>
                <td>{percent(row.shareOfRating)}</td>
                <td>
                  {row.netAtRatedPsi === null
                    ? 'not reached'
                    : units.text(row.netAtRatedPsi, 'pressure')}
                </td>
                <td>
                  {row.headShareOfFirst === null ? 'none before' : percent(row.headShareOfFirst)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Findings findings={curve.notices} />
    </div>
  );
}
