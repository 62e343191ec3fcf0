import { demandOf, profileOf } from '@plugside/fireground';
import { useDeferredValue, useMemo, useRef } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { SupplyCurves } from '../lay/curves/SupplyCurves.tsx';
import { LayView } from '../lay/LayView.tsx';
import { StationTable } from '../lay/stations/StationTable.tsx';
import { ValveCloseUp } from '../lay/valve/ValveCloseUp.tsx';
import { type Answered, ask } from '../plan-store/ask.ts';

import { bandOf, comparisonOf, curvesOf, improvementsOf } from '../plan-store/pictures.ts';
import { usePlan } from '../plan-store/plan-store.ts';
import { useView } from '../plan-store/view.ts';
import { AttackLines } from '../settings/AttackLines.tsx';
import { Cautions, DEFERRAL } from '../settings/Cautions.tsx';
import { Improvements } from '../settings/Improvements.tsx';
import { Limits } from '../settings/Limits.tsx';
import { SetAndSay } from '../settings/SetAndSay.tsx';
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
    if (!comparison.ok || !comparison.found.boosted) return null;
    const { plan: alone, state, flowGpm } = comparison.found.unassisted;
    return flowGpm > 0 ? { profile: profileOf(alone, state), flowGpm } : null;
  }, [comparison]);

  const gain =
    comparison.ok && comparison.found.boosted && settled.hydrants.length > 0
      ? comparison.found.gainGpm
      : null;
  const best = better.ok ? (better.found[0] ?? null) : null;
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
        {answered ? (
          <>
            <div className="board">
              <SetAndSay answered={answered} />
              <section className="lay-section" aria-label="The lay">
                <DrawingGuard what="The lay" resetOn={answered}>
                  <LayView
                    answered={answered}
                    unassisted={unassisted}
                    band={band.ok ? band.found : null}
                    stale={!asked.ok}
                  />
                </DrawingGuard>
              </section>
              <div className="side">
                <Limits answered={answered} />
                <Cautions answered={answered} />
              </div>
              <div className="further">
                <DrawingGuard what="The valve" resetOn={answered}>
                  <ValveCloseUp answered={answered} />
                </DrawingGuard>
                <DrawingGuard what="The curves" resetOn={curves}>
                  <SupplyCurves curves={curves} />
                </DrawingGuard>
                <AttackLines answered={answered} />
                <Improvements found={better} />
              </div>
            </div>
            <StationTable answered={answered} />
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
