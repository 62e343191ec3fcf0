import {
  type FlowTestResult,
  flowTestHistory,
  flowTestResult,
  type HistoryEntry,
} from '@plugside/fireground';
import { useMemo } from 'react';
import { dayAheadWords } from './day-ahead.ts';
import { FlowTestGraph } from './FlowTestGraph.tsx';
import { FlowTestNumbers } from './FlowTestNumbers.tsx';
import { MAIN_PRESSURE, STATED_FLOW } from './field-ranges.ts';
import {
  type FlowTestDraft,
  type FlowTestFields,
  flowTestDraft,
  flowTestFields,
  judged,
} from './flow-test-draft.ts';
import { MeasureField } from './MeasureField.tsx';
import { OutletRows } from './OutletRows.tsx';
import { newOutlet } from './outlet-draft.ts';
import { DayOfTest, TestScreen, WhoAndNote } from './TestScreen.tsx';
import { type KeptTyping, useTestDraft } from './use-test-draft.ts';

interface FlowTestFormProps {
  hydrantId: string;
  hydrantName: string;
  /** A record to edit; left out: a new test. */
  initial?: Partial<FlowTestFields>;
  /** The hydrant's other tests, drawn behind this one. */
  earlier?: readonly HistoryEntry[];
  /** ISO date. */
  today: string;
  onSave(fields: FlowTestFields): void | Promise<void>;
  onCancel?: () => void;
  /** Where typing is kept until it is saved. */
  kept?: KeptTyping;
}

const NONE: readonly HistoryEntry[] = [];

/** A flow that is not yet written down is no fault of the test. */
function withoutHurry(draft: FlowTestDraft, result: FlowTestResult): FlowTestResult {
  const begun =
    draft.statedFlowGpm !== undefined ||
    draft.outlets.some(
      ({ value }) => (value.by === 'meter' ? value.flowGpm : value.pitotPsi) !== undefined,
    );
  if (begun) return result;
  return { ...result, notices: result.notices.filter(({ code }) => code !== 'no-flow') };
}

/** A hydrant flow test as it is written down, with its curve drawn while the numbers come in. */
export function FlowTestForm(props: FlowTestFormProps) {
  const { hydrantId, hydrantName, initial, earlier = NONE, today, onSave, onCancel, kept } = props;
  const [draft, change, unread] = useTestDraft(kept, () => flowTestDraft(initial, today), {
    ...newOutlet().value,
    outletIn: undefined,
  });
  const test = useMemo(() => judged(draft), [draft]);
  const drawn = useMemo(() => {
    const main = test ? { test, result: flowTestResult(test, { today }) } : null;
    const { tests } = flowTestHistory(earlier);
    return { main, tests: main ? [...tests, main] : tests };
  }, [test, earlier, today]);
  const fields = flowTestFields(draft, hydrantId, initial);
  const ahead = dayAheadWords(draft.testedOn, today);
  const missing =
    ahead ??
    (fields !== null
      ? null
      : test
        ? 'Residual stands above static. Check whether the two are swapped.'
        : 'Enter the date, static and residual first.');
  return (
    <TestScreen
      spoken={`Flow test of ${hydrantName}`}
      title={`Flow test, ${hydrantName}`}
      unread={unread}
      missing={missing}
      onSave={() => (fields ? onSave(fields) : undefined)}
      onCancel={onCancel}
      found={
        <>
          <FlowTestGraph tests={drawn.tests} main={drawn.main} />
          {drawn.main && <FlowTestNumbers result={withoutHurry(draft, drawn.main.result)} />}
          {!drawn.main?.result.curve && (
            <p className="soft-text">Static, residual and what flowed draw the curve.</p>
          )}
        </>
      }
    >
      <div className="test-fields">
        <DayOfTest
          day={draft.testedOn}
          onChange={(testedOn) => change({ testedOn })}
          problem={ahead}
        />
        <MeasureField
          {...MAIN_PRESSURE}
          label="Static"
          kind="pressure"
          at="staticPsi"
          value={draft.staticPsi}
          onChange={(staticPsi) => change({ staticPsi })}
          hint="nothing flowing"
        />
        <MeasureField
          {...MAIN_PRESSURE}
          label="Residual"
          kind="pressure"
          at="residualPsi"
          value={draft.residualPsi}
          onChange={(residualPsi) => change({ residualPsi })}
          hint={`at ${hydrantName}, all flowing`}
        />
      </div>
      <OutletRows
        rows={draft.outlets}
        flows={drawn.main?.result.outlets ?? []}
        onChange={(outlets) => change({ outlets })}
      />
      <div className="test-fields">
        <MeasureField
          {...STATED_FLOW}
          label="Total as stated"
          kind="flow"
          at="statedFlowGpm"
          value={draft.statedFlowGpm}
          onChange={(statedFlowGpm) => change({ statedFlowGpm })}
          hint="leave empty where the readings tell it"
        />
        <WhoAndNote by={draft.by} note={draft.note} onChange={change} />
      </div>
    </TestScreen>
  );
}
