import { type HoseFit, shownC } from '@plugside/fireground';
import { useUnits } from '../editing/use-units.ts';
import { exactPressure } from './exact-pressure.ts';
import { Findings } from './Findings.tsx';

/** A hose's measured coefficient against the book's, with what each reading misses of it. */
export function HoseTestNumbers({ fit }: { fit: HoseFit }) {
  const units = useUnits();
  const { coefficient, low, high, book, againstBook } = fit;
  return (
    <div className="test-numbers">
      {coefficient !== null && (
        <p className="test-answer">
          <span className="answer-unit">C</span>{' '}
          <span className="figure">{shownC(coefficient)}</span>{' '}
          {low !== null && high !== null && (
            <span className="soft-text">
              {shownC(Math.max(0, low))} to {shownC(high)} at 95 %
            </span>
          )}
        </p>
      )}
      {book && (
        <p>
          The book has {shownC(book.coefficient)}
          {againstBook !== null && (
            <>
              : this hose loses{' '}
              <strong>
                {Math.abs(Math.round(againstBook * 100))} % {againstBook < 0 ? 'less' : 'more'}
              </strong>
              {fit.bookFits === true && ', within what the readings can tell'}
            </>
          )}
          . <span className="soft-text">{book.origin.text}</span>
        </p>
      )}
      {fit.residuals.length > 0 && (
        <table className="test-table">
          <caption className="hidden-text">Readings against the fit</caption>
          <thead>
            <tr>
              <th scope="col">Flow</th>
              <th scope="col">Measured</th>
              <th scope="col">By the fit</th>
              <th scope="col">Off by</th>
            </tr>
          </thead>
          <tbody>
            {fit.residuals.map((row, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: readings keep their order
              <tr key={at}>
                <th scope="row">{units.text(row.flowGpm, 'flow')}</th>
                <td>{exactPressure(row.lossPsi, units)}</td>
                <td>{exactPressure(row.fittedPsi, units)}</td>
                <td>{exactPressure(row.residualPsi, units)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Findings findings={fit.notices} />
    </div>
  );
}
