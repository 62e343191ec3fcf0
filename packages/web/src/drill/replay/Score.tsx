import {
  amountWords,
  type DrillScene,
  isJudged,
  type Judgement,
  judgedName,
  momentWords,
  pressureWords,
  TICKS_PER_S,
} from '@plugside/drill';
import { Button } from 'react-aria-components';
import { useUnits } from '../../editing/use-units.ts';
import { clockText, inUnits } from '../words.ts';

/** Moments shown of a criterion. */
const MOST_MOMENTS = 6;

interface ScoreProps {
  scene: DrillScene;
  judgements: readonly Judgement[];
  onMoment(tick: number): void;
}

/** Each criterion with what came of it, its benchmark, and the moments to look at again. */
export function Score({ scene, judgements, onMoment }: ScoreProps) {
  const judged = judgements.filter(isJudged);
  const met = judged.filter((one) => one.met).length;
  return (
    <section className="score" aria-labelledby="score-name">
      <h2 id="score-name" className="score-title">
        {met} of {judged.length} benchmarks met
      </h2>
      <ul className="score-list">
        {judgements.map((one) => (
          <Criterion key={one.key} scene={scene} judgement={one} onMoment={onMoment} />
        ))}
      </ul>
    </section>
  );
}

interface CriterionProps {
  scene: DrillScene;
  judgement: Judgement;
  onMoment(tick: number): void;
}

function Criterion({ scene, judgement, onMoment }: CriterionProps) {
  const units = useUnits();
  const { label, benchmark, benchmarkFrom, met, moments, worst, notJudged } = judgement;
  const { duringFaultsS, overruled, pieces = [] } = judgement;
  const stands = !isJudged(judgement) ? 'not judged' : met ? 'met' : 'missed';
  return (
    <li className="criterion" data-stands={stands}>
      <span className="criterion-mark" aria-hidden="true" />
      <div className="criterion-words">
        <p className="criterion-label">{inUnits(label, units)}</p>
        <p className="soft-text">
          {notJudged !== undefined
            ? `Not judged. ${notJudged}`
            : benchmark === undefined
              ? 'Not judged: the department has set no benchmark.'
              : `At most ${amountWords(benchmark, judgement.unit)}, ${benchmarkFrom === 'department' ? 'your department’s' : 'ours'}.`}
          {worst &&
            ` Worst ${worst.unit === 'psi' ? pressureWords(worst.value, units) : units.text(worst.value, 'flow')}, ${judgedName(scene, worst.piece)}.`}
          {pieces.length > 0 &&
            ` ${pieces.map(({ piece, s }) => `${judgedName(scene, piece)} ${amountWords(s, 's')}`).join(', ')}.`}
          {duringFaultsS !== undefined &&
            ` ${amountWords(duringFaultsS, 's')} of it during what was made to go wrong.`}
          {overruled &&
            ` The instructor’s own judgement (counted: ${overruled.counted ? 'met' : 'missed'}): ${inUnits(overruled.reason, units)}`}
        </p>
        {moments.length > 0 && (
          <ul className="moments">
            {moments.slice(0, MOST_MOMENTS).map(({ fromTick, piece, note, during }) => (
              <li key={`${fromTick} ${piece} ${note}`}>
                <Button className="plain-button" onPress={() => onMoment(fromTick)}>
                  <b className="figures">{clockText(fromTick / TICKS_PER_S)}</b>{' '}
                  {momentWords(scene, judgement, piece, note, units)}
                  {during !== undefined && (
                    <span className="soft-text"> during: {inUnits(during, units)}</span>
                  )}
                </Button>
              </li>
            ))}
            {moments.length > MOST_MOMENTS && (
              <li className="soft-text">and {moments.length - MOST_MOMENTS} more</li>
            )}
          </ul>
        )}
      </div>
      <p className="criterion-value figures">
        <b>
          {judgement.value === undefined ? 'never' : amountWords(judgement.value, judgement.unit)}
        </b>
        <span className={stands === 'missed' ? 'tone-warning' : 'soft-text'}>{stands}</span>
      </p>
    </li>
  );
}
