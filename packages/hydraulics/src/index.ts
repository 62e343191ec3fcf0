/** Physics of water in mains, hose, pumps and nozzles; knows nothing of fire engines. */

// Formulas by topic
export * from './formulas/index.ts';
// Networks: build, solve, derivatives
export * from './network/index.ts';
