/** Physics of water in mains, hose, pumps and nozzles; knows nothing of fire engines. */

// Formulas by topic
export * from './formulas/index.ts';
// Worked values from outside, and how an answer is held to them
export {
  type Basis,
  misses,
  type PublishedRow,
  titled,
} from './formulas/published/published-row.ts';
export type { Source } from './formulas/published/sources.ts';
// Networks: build, solve, derivatives
export * from './network/index.ts';
// Checks of what goes in, in the words that every refusal has
export * from './quantity-check.ts';
