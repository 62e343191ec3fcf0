// Fireground hydraulics by topic. Every function states its units, range and source.

export { QuantityError, type QuantityProblem } from '../quantity-error.ts';
export * from './additional-water.ts';
export * from './air-and-vapour.ts';
export * from './appliance-loss.ts';
export * from './draft.ts';
export * from './elevation.ts';
export * from './fixed-systems.ts';
export * from './hand-methods.ts';
export * from './hose-friction.ts';
export * from './hose-pressure.ts';
export * from './hose-volume.ts';
export * from './hydrant-class.ts';
export * from './hydrant-flow-test.ts';
export * from './nozzle-reaction.ts';
export * from './nozzles.ts';
export * from './pdp.ts';
export * from './pipe-friction.ts';
export * from './pitot.ts';
export * from './pump.ts';
export * from './relay.ts';
export * from './step-flow-test.ts';
export * from './velocity.ts';
export * from './water-hammer.ts';
