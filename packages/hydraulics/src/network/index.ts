export type { Derivatives, Parameter } from './derivatives.ts';
export { buildNetwork, type LinkState, type Network, type SolveOptions } from './network.ts';
export { type BestResidual, NetworkError, type NetworkErrorCode } from './network-error.ts';
export type { Residual } from './residual.ts';
export type {
  AutomaticNozzleLink,
  HoseLink,
  LinkSpec,
  LossLink,
  NetworkSpec,
  NodeSpec,
  NozzleLink,
  PumpLink,
  ReliefLink,
  SupplyCurveLink,
} from './spec.ts';
