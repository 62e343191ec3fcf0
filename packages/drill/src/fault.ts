/** What an instructor can make go wrong. */
interface FaultBase {
  /** Unique in a drill: up to 40 letters, digits, dashes. */
  id: string;
  /** Takes effect at this tick; left out: at once. */
  atTick?: number;
}

export type Fault = FaultBase &
  (
    | {
        kind: 'hydrant weak';
        hydrant: string /** Share of its tested flow that is left [0.1 … 1]. */;
        share: number;
      }
    | { kind: 'clapper stuck'; valve: string }
    | { kind: 'hose burst'; hose: string }
    | {
        kind: 'hose kinked';
        hose: string /** Times its friction coefficient [1 … 100]. */;
        factor: number;
      }
    | { kind: 'pump dies'; rig: string }
  );

export type FaultKind = Fault['kind'];
