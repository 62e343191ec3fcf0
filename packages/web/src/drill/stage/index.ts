/** One role's stage in a drill, wherever the drill runs. */
export { DrillStage, type DrillStageProps, type StageGuide } from './DrillStage.tsx';
export { addReadings, type GaugeHistory } from './gauge-history.ts';
