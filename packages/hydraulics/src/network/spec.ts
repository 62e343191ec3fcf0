/**
 * What the network solver takes: nodes (points with a pressure and an elevation)
 * joined by links (things with a flow and a pressure change).
 *
 * Units: gpm (US), psi gauge, ft. Elevation counts 0.434 psi/ft.
 */

/** A point in the network. */
export interface NodeSpec {
  /** Unique name. */
  id: string;
  /** Height of the point [ft]; 0 where left out. */
  elevationFt?: number;
  /** Holds the node at this gauge pressure [psi]: a source or an open end. */
  fixedPsi?: number;
  /** Flow taken out here [gpm]; negative feeds water in. 0 where left out. */
  demandGpm?: number;
}

interface LinkBase {
  /** Unique name. */
  id: string;
  /** Node that positive flow leaves. */
  from: string;
  /** A shut link carries nothing. */
  shut?: boolean;
}

interface TwoEnded extends LinkBase {
  /** Node that positive flow enters. */
  to: string;
  /** Passes water from `from` to `to` only. */
  check?: boolean;
}

/** A main behind its outlet: `P(Q) = static − (static − residual)·(Q/Qtest)^(1/0.54)`, as a loss from a node fixed at the static pressure. */
export interface SupplyCurveLink extends TwoEnded {
  kind: 'supplyCurve';
  /** [psi] > residualPsi. */
  staticPsi: number;
  /** [psi], may be below 20. */
  residualPsi: number;
  /** Flow of the test [gpm] > 0. */
  testGpm: number;
}

/** Hose by the coefficient law `C·(Q/100)²·(L/100)`. */
export interface HoseLink extends TwoEnded {
  kind: 'hose';
  /** Friction coefficient C ≥ 0 [psi per 100 ft at 100 gpm]. */
  coefficient: number;
  /** Length of each line [ft] ≥ 0. */
  lengthFt: number;
  /** Like lines side by side; 1 where left out. */
  lines?: number;
}

/** Anything with a loss that grows as the square of flow: "x psi at y gpm". */
export interface LossLink extends TwoEnded {
  kind: 'loss';
  /** Loss [psi] ≥ 0 at `atGpm`. */
  lossPsi: number;
  /** Flow [gpm] > 0 at which the loss is `lossPsi`. */
  atGpm: number;
}

/**
 * A pump. Its discharge pressure is
 * `max(intake − pass loss, min(set, intake + capability(flow)))`, flow never backwards;
 * with `protectIntakePsi` it gives up discharge pressure rather than pull its intake below that floor.
 */
export interface PumpLink extends LinkBase {
  kind: 'pump';
  /** Discharge node. */
  to: string;
  /**
   * Net pressure [psi] it can add against flow [gpm], from flow 0, flow strictly rising,
   * net pressure never rising, at full speed. Straight lines between; a wall at the last flow.
   */
  capability: readonly (readonly [flowGpm: number, netPsi: number])[];
  /** Governed: the discharge pressure it holds [psi]. Left out: throttled, it follows its curve. */
  pdpPsi?: number;
  /** Speed as a fraction of full [0..1.2]; affinity laws scale the capability. 1 where left out. */
  speedFraction?: number;
  /** Not pumping: passes water through with the pass loss. */
  idle?: boolean;
  /** Floor for its intake [psi]; left out: no protection. */
  protectIntakePsi?: number;
  /** Loss when it passes water it does not pump; none where left out. */
  passLoss?: { lossPsi: number; atGpm: number };
}

/** An opening to the air: `Q = K·√P`, P at the opening's elevation. */
export interface NozzleLink extends LinkBase {
  kind: 'nozzle';
  /** [gpm/√psi] > 0. */
  k: number;
  /** [ft]; that of its node where left out. */
  elevationFt?: number;
}

/** Holds its rated pressure between its least and its greatest flow, and is a fixed opening at either end. */
export interface AutomaticNozzleLink extends LinkBase {
  kind: 'automaticNozzle';
  /** [psi] > 0. */
  ratedPsi: number;
  /** [gpm] > 0. */
  leastGpm: number;
  /** [gpm] > leastGpm. */
  greatestGpm: number;
  elevationFt?: number;
}

/** Shut below its setting, open to waste above it: `P = setting + loss(Q)`. */
export interface ReliefLink extends LinkBase {
  kind: 'relief';
  /** Opening pressure [psi]. */
  settingPsi: number;
  /** Rise above the setting [psi] ≥ 0 when it wastes `atGpm`. */
  risePsi: number;
  atGpm: number;
  elevationFt?: number;
}

export type LinkSpec =
  | SupplyCurveLink
  | HoseLink
  | LossLink
  | PumpLink
  | NozzleLink
  | AutomaticNozzleLink
  | ReliefLink;

export interface NetworkSpec {
  nodes: readonly NodeSpec[];
  links: readonly LinkSpec[];
}
