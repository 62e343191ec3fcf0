import type { FlowTestResult } from '@plugside/fireground';
import { useUnits } from '../editing/use-units.ts';
import { ClassMark } from './ClassMark.tsx';
import { Findings } from './Findings.tsx';

/** What a flow test says, in numbers, with what to doubt. */
export function FlowTestNumbers({ result }: { result: FlowTestResult }) {
  const units = useUnits();
  const { rating, q20Gpm } = result;
  return (
    <div className="test-numbers">
      {rating && (
        <p className="test-answer">
          <span className="figure">{units.number(rating.flowGpm, 'flow')}</span>{' '}
          <span className="answer-unit">{units.of(1, 'flow').unit}</span>{' '}
          <span className="soft-text">at {units.text(rating.residualPsi, 'pressure')}</span>
        </p>
      )}
      <dl className="test-facts">
        {result.class && (
          <div>
            <dt>NFPA 291</dt>
            <dd>
              <ClassMark of={result.class} />
            </dd>
          </div>
        )}
        {result.flowGpm !== null && (
          <div>
            <dt>Flowed</dt>
            <dd>
              {units.text(result.flowGpm, 'flow')}
              {result.flowFrom === 'stated' && <span className="soft-text"> as stated</span>}
            </dd>
          </div>
        )}
        {rating && rating.residualPsi < 20 && q20Gpm !== null && (
          <div>
            <dt>At {units.text(20, 'pressure')}</dt>
            <dd>{units.text(q20Gpm, 'flow')}</dd>
          </div>
        )}
        {result.dropPercent !== null && (
          <div>
            <dt>Drop</dt>
            <dd>{result.dropPercent.toFixed(result.dropPercent < 10 ? 1 : 0)} % of static</dd>
          </div>
        )}
        {result.retestOn && (
          <div>
            <dt>Test again by</dt>
            <dd>{result.retestOn}</dd>
          </div>
        )}
      </dl>
      <Findings findings={result.notices} />
    </div>
  );
}
