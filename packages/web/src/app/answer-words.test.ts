import { boostedAtHydrant } from '@plugside/fireground';
import { describe, expect, it } from 'vitest';
import { unitsIn } from '../editing/use-units.ts';
import { type Answered, ask } from '../plan-store/ask.ts';
import type { Question } from '../plan-store/view.ts';
import { answerWords } from './answer-words.ts';

const us = unitsIn('us');
const plan = boostedAtHydrant({
  hydrant: { staticPsi: 62, residualPsi: 44, testGpm: 1060 },
  lay: { lengthFt: 900, riseFt: 35 },
  booster: { sideLines: [{ hose: '3' }, { hose: '5' }] },
  attackLines: [{}],
});

function answered(question: Question, of = plan): Answered {
  const asked = ask(of, question, 'us');
  if (!asked.ok) throw new Error(asked.problem);
  return asked.answered;
}

const said = (words: ReturnType<typeof answerWords>) => words.parts.map((one) => one.text).join('');

describe('the answer in words', () => {
  it('names the gain, the limit and the next step', () => {
    const words = answerWords(
      answered('most'),
      889,
      { change: 'a second 5 in line beside the lay', gainGpm: 280 },
      us,
    );
    expect(words.number).toBe('1,395');
    expect(said(words)).toBe(
      '+889 over hydrant pressure alone. The supply hose (185 psi) is the limit. A second 5 in line beside the lay would add 280.',
    );
  });

  it('claims no gain where there is nothing to compare', () => {
    expect(said(answerWords(answered('most'), null, null, us))).not.toContain('alone');
  });

  it('says what each pump is set to, or how much is missing', () => {
    expect(said(answerWords(answered('set'), null, null, us))).toMatch(
      /^Yes\. .*Booster at \d+ psi/,
    );
    const short = answerWords(answered('set', { ...plan, demandGpm: 2500 }), null, null, us);
    expect(said(short)).toMatch(/^Not this way: 1,10\d gpm short\./);
  });

  it('tells a passed limit once, however many lines pass it', () => {
    const high = {
      ...plan,
      rigs: plan.rigs.map((rig) =>
        rig.id === 'B1' ? { ...rig, setting: { mode: 'governed' as const, pdpPsi: 215 } } : rig,
      ),
    };
    const text = said(answerWords(answered('now', high), null, null, us));
    expect(text.match(/the supply hose/g)).toHaveLength(1);
  });

  it('gives words, not a crash, for a plan that cannot be answered', () => {
    const asked = ask(
      { ...plan, nozzles: [], lines: plan.lines.filter((l) => l.id !== 'attack1') },
      'set',
      'us',
    );
    expect(asked.ok).toBe(false);
    if (!asked.ok) expect(asked.problem).toMatch(/demand/i);
  });
});
