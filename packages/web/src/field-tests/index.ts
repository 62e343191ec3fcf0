/** Screens for field tests: each takes plain data and hands back a record's fields to save. */
import './field-tests.css';

export { ClassMark } from './ClassMark.tsx';
export { aheadFindings } from './day-ahead.ts';
export { Findings } from './Findings.tsx';
export { FlowTestForm } from './FlowTestForm.tsx';
export { FlowTestGraph } from './FlowTestGraph.tsx';
export { FlowTestHistory } from './FlowTestHistory.tsx';
export { FlowTestNumbers } from './FlowTestNumbers.tsx';
export type { FlowTestFields } from './flow-test-draft.ts';
export { type HoseTestFields, HoseTestForm } from './HoseTestForm.tsx';
export { HoseTestGraph } from './HoseTestGraph.tsx';
export { HoseTestNumbers } from './HoseTestNumbers.tsx';
export { type PumpTestFields, PumpTestForm } from './PumpTestForm.tsx';
export { PumpTestGraph } from './PumpTestGraph.tsx';
export { PumpTestNumbers } from './PumpTestNumbers.tsx';
export { QuickEstimate } from './QuickEstimate.tsx';
export { QuickEstimatePlace } from './QuickEstimatePlace.tsx';
export type { KeptTyping } from './use-test-draft.ts';
