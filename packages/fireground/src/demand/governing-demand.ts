import type { Notice } from '../questions/answers.ts';
import { caution, type DemandAnswer, type DemandMethod, fact } from './answer.ts';

/** The answer that a plan goes by. */
export interface GoverningDemand {
  /** Null where nothing is answered, or the department's own choice is not. */
  answer: DemandAnswer | null;
  neededGpm: number | null;
  by: 'department' | 'greatest';
  /** Least and greatest of all that are answered [gpm]; null where none is. */
  rangeGpm: { least: number; greatest: number } | null;
  notices: Notice[];
}

/**
 * Which answer governs. The department's choice, where it has one; else the greatest of those
 * answered, since the methods were made for different ends (an attack, a town's mains, a code) and
 * a plan for too little water costs more than one for too much. A chosen method that has no answer
 * is not replaced by another: a number from a rule nobody chose would pass for the department's.
 * @param answers from `demandByMethods`, with `demandFromLines` beside them if wanted
 * @param choice the method that the department goes by
 * @returns the answer, its flow [gpm], the spread of all answers [gpm]; the first of equals
 * Source: ours.
 */
export function governingDemand(
  answers: readonly DemandAnswer[],
  choice?: DemandMethod,
): GoverningDemand {
  const told = answers.filter(hasFlow);
  const flows = told.map(({ neededGpm }) => neededGpm);
  const rangeGpm =
    told.length > 0 ? { least: Math.min(...flows), greatest: Math.max(...flows) } : null;
  if (choice !== undefined) {
    const answer = told.find(({ method }) => method === choice) ?? null;
    const notices: Notice[] = [];
    if (!answer) {
      const why = answers.find(({ method }) => method === choice)?.unanswered?.text;
      notices.push(
        caution(
          `The department goes by ${choice}, which has no answer here.${why ? ` ${why}` : ''}`,
        ),
      );
    } else if (rangeGpm && rangeGpm.greatest > answer.neededGpm) {
      notices.push(fact('Another method asks for more than the one the department goes by.'));
    }
    return { answer, neededGpm: answer?.neededGpm ?? null, by: 'department', rangeGpm, notices };
  }
  const answer = told.find(({ neededGpm }) => neededGpm === rangeGpm?.greatest) ?? null;
  return {
    answer,
    neededGpm: answer?.neededGpm ?? null,
    by: 'greatest',
    rangeGpm,
    notices: answer ? [] : [caution('No method has what it needs yet.')],
  };
}

const hasFlow = (answer: DemandAnswer): answer is DemandAnswer & { neededGpm: number } =>
  answer.neededGpm !== null;
