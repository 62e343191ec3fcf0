/** How far each reading may be written, in inside units, as the records' schemas have it. */
import type { EntryRange } from '../editing/quantity-entry.ts';

export const MAIN_PRESSURE: EntryRange = { min: 0, max: 500 };
export const PITOT: EntryRange = { min: 0, max: 300 };
export const OUTLET: EntryRange = { min: 0.5, max: 12 };
export const OUTLET_FLOW: EntryRange = { min: 0, max: 50_000 };
export const STATED_FLOW: EntryRange = { min: 0, max: 100_000 };
export const PUMP_FLOW: EntryRange = { min: 0, max: 20_000 };
export const NET_PRESSURE: EntryRange = { min: 0, max: 1000 };
export const SPEED: EntryRange = { min: 0, max: 10_000 };
export const HOSE_FLOW: EntryRange = { min: 1, max: 20_000 };
export const HOSE_LOSS: EntryRange = { min: 0, max: 500 };
export const TEST_LENGTH: EntryRange = { min: 1, max: 20_000 };
export const PANEL_FLOW: EntryRange = { min: 1, max: 20_000 };
