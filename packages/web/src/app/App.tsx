import { demandOf, profileOf } from '@plugside/fireground';
import { useDeferredValue, useMemo, useRef } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { SupplyCurves } from '../lay/curves/SupplyCurves.tsx';
import { LayView } from '../lay/LayView.tsx';
import { StationTable } from '../lay/stations/StationTable.tsx';
import { ValveCloseUp } from '../lay/valve/ValveCloseUp.tsx';
import { type Answered, ask } from '../plan-store/ask.ts';

import { aloneOf, bandOf, comparisonOf, curvesOf, improvementsOf } from '../plan-store/pictures.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { useView } from '../plan-store/view.ts';
import { AttackLines } from '../settings/AttackLines.tsx';
import { Cautions, DEFERRAL } from '../settings/Cautions.tsx';
import { Improvements } from '../settings/Improvements.tsx';
import { Limits } from '../settings/Limits.tsx';
import { SetAndSay } from '../settings/SetAndSay.tsx';
import { Valves } from '../settings/Valves.tsx';
import { Answer } from './Answer.tsx';
import { answerWords } from './answer-words.ts';
import { DrawingGuard } from './DrawingGuard.tsx';
import { Header } from './Header.tsx';
import { Message } from './Message.tsx';
import { QuestionSwitch } from './QuestionSwitch.tsx';
import { useShortcuts } from './use-shortcuts.ts';
import { useTheme } from './use-theme.ts';

/** One page about one plan. */
export function App() {
  useTheme();
  useShortcuts();
  const plan = usePlan((state) => state.history.present);
  const question = useView((view) => view.question);
  const units = useUnits();

  const asked = useMemo(() => ask(plan, question, units.system), [plan, question, units.system]);
  const lastGood = useRef<Answered | null>(null);
  if (asked.ok) lastGood.current = asked.answered;
  const answered = asked.ok ? asked.answered : lastGood.current;

  // The lists beside the drawings may come a frame after them.
  const listed = useDeferredValue(answered);
  const alone = useMemo(() => aloneOf(plan), [plan]);
  const aloneAnswer = alone.ok ? alone.found : null;

  // The further pictures may lag a drag by a frame or two; the answer never does.
  const settled = useDeferredValue(plan);
  const settledQuestion = useDeferredValue(question);
  const comparison = useMemo(() => comparisonOf(settled), [settled]);
  const curves = useMemo(() => curvesOf(settled), [settled]);
  const better = useMemo(() => improvementsOf(settled), [settled]);
  const band = useMemo(
    () => bandOf(settled, settledQuestion, units.system),
    [settled, settledQuestion, units.system],
  );
  const unassisted = useMemo(() => {
    if (!aloneAnswer || aloneAnswer.flowGpm <= 0) return null;
    const { plan: set, state, flowGpm } = aloneAnswer;
    return { profile: profileOf(set, state), flowGpm };
  }, [aloneAnswer]);

  const gain =
    aloneAnswer && answered?.answer.question === 'most water'
      ? answered.answer.flowGpm - aloneAnswer.flowGpm
      : null;
  const best = better.ok && settled === plan ? (better.found[0] ?? null) : null;
  const words = answered ? answerWords(answered, gain, best, units) : null;
  return (
    <div className="page">
      <Header />
      <main>
        <Message />
        <div className="asked">
          <QuestionSwitch />
          <Answer
            words={words}
            problem={asked.ok ? null : asked.problem}
            demandGpm={question === 'set' ? demandOf(plan) : null}
          />
        </div>
        {answered && listed ? (
          <>
            <div className={asked.ok ? 'board' : 'board stale'}>
              <SetAndSay answered={listed} />
              <section className="lay-section" aria-label="The lay">
                <DrawingGuard what="The lay" resetOn={answered}>
                  <LayView
                    answered={answered}
                    unassisted={unassisted}
                    band={band.ok ? band.found : null}
                  />
                </DrawingGuard>
              </section>
              <div className="side">
                <Limits answered={listed} />
                <Cautions answered={listed} />
              </div>
              <div className="further">
                <div className="further-column">
                  <DrawingGuard what="The valve" resetOn={answered}>
                    <ValveCloseUp answered={listed} />
                  </DrawingGuard>
                  {question === 'now' && <Valves answered={listed} />}
                  <Improvements found={better} />
                </div>
                <div className="further-column">
                  <DrawingGuard what="The curves" resetOn={curves}>
                    <SupplyCurves curves={curves} comparison={comparison} />
                  </DrawingGuard>
                  <AttackLines answered={listed} />
                </div>
              </div>
            </div>
            <StationTable answered={listed} />
          </>
        ) : (
          <p className="nothing">
            There is no drawing yet, because this plan cannot be answered. Undo the last change, or
            start another plan from the Plan menu.
          </p>
        )}
      </main>
      <footer className="footer">{DEFERRAL}</footer>
    </div>
  );
}
