/** Documents that crews carry, as PDF: data in, pages out. */
export { type BuildingPlanRequest, buildingPlanFor } from './building-plan/building-plan-for.ts';
export type * from './building-plan/data.ts';
export { renderBuildingPlan } from './building-plan/render.ts';
export type * from './drill-report/data.ts';
export { type DrillReportRequest, drillReportFor } from './drill-report/drill-report-for.ts';
export { renderDrillReport } from './drill-report/render.ts';
export type * from './drill-sheet/data.ts';
export { type DrillSheetRequest, drillSheetFor } from './drill-sheet/drill-sheet-for.ts';
export { renderDrillSheet } from './drill-sheet/render.ts';
export { type CardsRequest, hydrantCardsFrom } from './from-records/cards.ts';
export {
  cardRigs,
  type DepartmentRecords,
  pickedRig,
  type RecordReader,
  readDepartment,
} from './from-records/department.ts';
export type * from './hydrant-card/data.ts';
export { type HydrantCardRequest, hydrantCardFor } from './hydrant-card/hydrant-card-for.ts';
export { renderHydrantCard } from './hydrant-card/render.ts';
export { type CardsOptions, renderHydrantCards } from './hydrant-card/render-cards.ts';
export type * from './pump-chart/data.ts';
export { type PumpChartRequest, pumpChartFor } from './pump-chart/pump-chart-for.ts';
export { renderPumpChart } from './pump-chart/render.ts';
export type { Source } from './sheet/notes.ts';
export { type PaperOptions, type PaperSize, paperSizes } from './sheet/options.ts';
export { writePdf } from './write-pdf.ts';
