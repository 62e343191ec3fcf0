import { type Judgement, pressureWords } from '@plugside/drill';
import { useUnits } from '../../editing/use-units.ts';
import { inUnits } from '../words.ts';

/** What a drill was judged on: each criterion with what came of it and what it may be. */
export function JudgementList({ judgements }: { judgements: readonly Judgement[] }) {
  const units = useUnits();
  return (
    <table className="judgements">
      <thead>
        <tr>
          <th scope="col">Judged</th>
          <th scope="col">Came to</th>
          <th scope="col">May be</th>
          <th scope="col">Result</th>
        </tr>
      </thead>
      <tbody>
        {judgements.map((one) => (
          <tr key={one.key} data-met={one.met}>
            <th scope="row">{inUnits(one.label, units)}</th>
            <td className="figures">{valueText(one, one.value)}</td>
            <td className="figures">
              {one.benchmark === undefined || one.notJudged !== undefined
                ? 'not judged'
                : valueText(one, one.benchmark)}
            </td>
            <td>
              {one.notJudged !== undefined ? (
                <span className="soft-text">{one.notJudged}</span>
              ) : one.benchmark === undefined ? (
                <span className="soft-text">shown only</span>
              ) : one.met ? (
                <span className="tone-water">met</span>
              ) : (
                <span className="caution-word">
                  <span className="caution-shape" aria-hidden="true" /> not met
                </span>
              )}
              {one.worst && (
                <span className="soft-text">
                  {' '}
                  worst{' '}
                  {one.worst.unit === 'psi'
                    ? pressureWords(one.worst.value, units)
                    : units.text(one.worst.value, 'flow')}
                </span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function valueText({ unit }: Judgement, value: number | undefined): string {
  if (value === undefined) return 'never';
  return unit === 's' ? `${value.toFixed(value < 10 ? 1 : 0)} s` : String(value);
}
