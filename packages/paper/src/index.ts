/** Documents that crews carry, as PDF: data in, pages out. */
export type * from './pump-chart/data.ts';
export { type PumpChartRequest, pumpChartFor } from './pump-chart/pump-chart-for.ts';
export { renderPumpChart } from './pump-chart/render.ts';
export type { Source } from './sheet/notes.ts';
export { type PaperOptions, type PaperSize, paperSizes } from './sheet/options.ts';
