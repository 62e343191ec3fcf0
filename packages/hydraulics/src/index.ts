/** Physics of water in mains, hose, pumps and nozzles; knows nothing of fire engines. */
export * from './formulas/index.ts';
export * from './network/index.ts';
