/**
 * A water-supply plan as the rest of Plugside sees it: read, checked, every number in
 * the inside units (gpm, psi gauge, ft, in, gal). Written forms (YAML, JSON, units beside
 * the number) are read into this by `readPlan` and written from it by `writePlan`.
 *
 * A port is named `piece.port`, for instance `H-114.steamer`, `V1.supply`, `E7.intake1`.
 */

/** `piece.port`. A nozzle has one port, `inlet`. */
export type PortRef = string;

/** Where a value comes from; shown beside the value everywhere. */
export interface Origin {
  kind:
    | 'measured'
    | 'maker'
    | 'standard'
    | 'department'
    | 'common practice'
    | 'default'
    | 'estimated';
  /** One line: which test, which standard, which book. */
  text: string;
  /** ISO date of a measurement. */
  date?: string;
}

/** "x psi at y gpm"; grows as the square of flow. */
export interface Loss {
  lossPsi: number;
  atGpm: number;
}

export interface Hydrant {
  id: string;
  name?: string;
  elevationFt: number;
  /** Flow test: pressures of the main at the outlet's height. */
  staticPsi: number;
  residualPsi: number;
  testGpm: number;
  testedOn?: string;
  /**
   * The main that feeds it, in the department's own words: hydrants of one main draw on each other.
   * Two names alone do not part two mains. Left out: not known.
   */
  main?: string;
  /** What that main hangs on, in the same words: the main or the source that feeds it. Left out: not known. */
  mainFedFrom?: string;
  /** Ports `steamer`, `side1` … `sideN`. */
  sideOutlets: number;
  /** Main to steamer outlet. */
  steamerLoss: Loss;
  /** Main to one side outlet with its gate valve. */
  sideLoss: Loss;
}

/** A flow test with several hydrants flowing together: what their main gives them all. */
export interface GroupTest {
  /** Ids of the hydrants that flowed, two or more. */
  hydrants: readonly string[];
  /** Of the hydrant gauged [ft]; left out: not known. */
  elevationFt?: number;
  staticPsi: number;
  residualPsi: number;
  /** Of all of them together. */
  testGpm: number;
  testedOn?: string;
}

/** Open water or a portable tank to draft from. Port `water`. */
export interface DraftSource {
  id: string;
  name?: string;
  /** Height of the water's surface [ft]. */
  waterElevationFt: number;
  /** Height above sea level [ft], for the air's pressure. */
  altitudeFt: number;
  waterTempF: number;
  /** Strainer and foot valve. */
  strainerLoss: Loss;
}

export type PumpSetting =
  /** Governor holds this discharge pressure. */
  | { mode: 'governed'; pdpPsi: number }
  /** Throttle fixed: fraction of full speed, 0.3 to 1.1. */
  | { mode: 'throttled'; speedFraction: number }
  /** Passing water, not pumping. */
  | { mode: 'idle' };

export type RigRole = 'booster' | 'relay' | 'attack';

/** An apparatus with a pump. Ports `intake1` … and `discharge1` …. */
export interface Rig {
  id: string;
  name?: string;
  role: RigRole;
  elevationFt: number;
  /** Rated capacity [gpm] at 150 psi net. */
  ratedGpm: number;
  /** Own pump test: net pressure [psi] against flow [gpm], flow rising from 0. Left out: the default for the rating. */
  capability?: readonly (readonly [flowGpm: number, netPsi: number])[];
  setting: PumpSetting;
  /** Governor gives up pressure rather than pull the intake below this [psi]. Left out: off. */
  protectIntakePsi?: number;
  intakes: number;
  discharges: number;
  /** Each intake's valve and piping; left out: none added. */
  intakeLoss?: Loss;
  /** Through the pump when it is not pumping. */
  passLoss: Loss;
  tankGal?: number;
  /** Tank-to-pump valve. */
  tankValve?: 'open' | 'shut';
  /** Intake relief opens to waste above this [psi]; left out: none. */
  intakeReliefPsi?: number;
}

interface ApplianceBase {
  id: string;
  name?: string;
  elevationFt: number;
}

/** Four-way hydrant assist valve on a steamer outlet. Ports `supply`, `pump-suction`, `pump-discharge`. */
export interface AssistValve extends ApplianceBase {
  kind: 'assist-valve';
  /** The hydrant outlet that it sits on, for instance `H-114.steamer`. */
  on: PortRef;
  /** `hydrant`: pump suction port shut. `boost`: handle has opened it. */
  handle: 'hydrant' | 'boost';
  /** Hydrant to supply through the clapper. */
  clapperLoss: Loss;
  suctionLoss: Loss;
  dischargeLoss: Loss;
  /** The clapper stuck shut (a fault to study). */
  clapperStuck?: 'shut';
}

/** One inlet, two gated outlets. Ports `inlet`, `outlet1`, `outlet2`. */
export interface Wye extends ApplianceBase {
  kind: 'wye';
  loss: Loss;
}

/** Inlets with clappers into one outlet. Ports `inlet1` …, `outlet`. */
export interface Siamese extends ApplianceBase {
  kind: 'siamese';
  inlets: number;
  loss: Loss;
}

/** Ports `inlet1`, `inlet2`, `outlet1` …. */
export interface Manifold extends ApplianceBase {
  kind: 'manifold';
  inlets: number;
  outlets: number;
  loss: Loss;
}

/** Master stream device. Ports `inlet1` …, `tip` (the nozzle's line end sits here: a nozzle with `on`). */
export interface Monitor extends ApplianceBase {
  kind: 'monitor';
  inlets: number;
  loss: Loss;
}

/** Fire department connection of a standpipe. Ports `inlet1` … and `outlet1` … at `outletElevationFt`. */
export interface Standpipe extends ApplianceBase {
  kind: 'standpipe';
  inlets: number;
  outlets: number;
  outletElevationFt: number;
  /** The whole system, connection to outlet. */
  loss: Loss;
}

/** Fire department connection of a sprinkler system: an opening that takes `demandGpm` at `basePsi` at the connection. Ports `inlet1` …. */
export interface SprinklerConnection extends ApplianceBase {
  kind: 'sprinkler';
  inlets: number;
  demandGpm: number;
  basePsi: number;
}

export type Appliance =
  | AssistValve
  | Wye
  | Siamese
  | Manifold
  | Monitor
  | Standpipe
  | SprinklerConnection;

/** Catalogue sizes, by name. `3` has 2½ couplings; `3-3` has 3 in couplings. */
export type HoseSize =
  | '3/4'
  | '1'
  | '1-1/4'
  | '1-1/2'
  | '1-3/4'
  | '2'
  | '2-1/2'
  | '3'
  | '3-3'
  | '3-1/2'
  | '4'
  | '4-1/2'
  | '5'
  | '6';

/** Hose from one port to another. */
export interface Line {
  id: string;
  name?: string;
  from: PortRef;
  to: PortRef;
  hose: HoseSize;
  /** Each line [ft]. */
  lengthFt: number;
  /** Like lines side by side, 1 to 6. */
  count: number;
  /** Friction coefficient; left out: the department's for this size, else the catalogue's. */
  coefficient?: number;
  coefficientOrigin?: Origin;
  /** Valve at its upstream end. `gated`: held to a loss. */
  valve: 'open' | 'shut' | { gated: Loss };
  /** Lets water pass from `from` to `to` only. */
  check?: boolean;
  /** Heights between the ends, in order: distance along the line [ft] and elevation [ft]. */
  terrain?: readonly { alongFt: number; elevationFt: number }[];
  /** Greatest pressure for this hose [psi], from its own marking; left out: the limit for its size. */
  limitPsi?: number;
}

interface NozzleBase {
  id: string;
  name?: string;
  elevationFt: number;
  /** Sits on an appliance's port (a monitor's `tip`) instead of a hose's end. */
  on?: PortRef;
  /** The bale, or the valve behind the tip. */
  open: boolean;
  /** Hand line or master stream; sets defaults and the reaction caution. */
  use: 'hand line' | 'master stream';
}

export type Nozzle = NozzleBase &
  (
    | { kind: 'smooth-bore'; tipIn: number; ratedPsi: number }
    | { kind: 'fog'; ratedGpm: number; ratedPsi: number }
    | { kind: 'selectable'; settingsGpm: readonly number[]; selectedGpm: number; ratedPsi: number }
    | { kind: 'automatic'; ratedPsi: number; leastGpm: number; greatestGpm: number }
  );

/** A department's own values: they replace the catalogue's. */
export interface DepartmentValues {
  /** Friction coefficients by size, with where each comes from. */
  coefficients?: Partial<Record<HoseSize, { coefficient: number; origin: Origin }>>;
  limits?: Partial<LimitValues>;
  /** Why the limits differ. */
  limitsOrigin?: Origin;
}

/** The limits' values [psi], [ft/s]. Defaults in `catalogue/limits`. */
export interface LimitValues {
  mainResidualPsi: number;
  /** Intake of a booster at the hydrant. */
  boosterIntakePsi: number;
  /** Intake of any other pump fed by hose. */
  hoseFedIntakePsi: number;
  /** 3½ in hose and larger. */
  supplyHosePsi: number;
  /** Hose under 3½ in. */
  attackHosePsi: number;
  /** Least pressure in hose on a hill between its ends. */
  hilltopPsi: number;
  /** Greatest intake pressure before the shut-off caution [psi]. */
  greatestIntakePsi: number;
  /** Nozzle pressure band, fraction of rated: least and greatest. */
  nozzleLeastFraction: number;
  nozzleGreatestFraction: number;
  /** Velocity in hose worth a caution [ft/s]. */
  hoseVelocityFtS: number;
  /** Greatest vacuum at a drafting intake [inHg]. */
  draftVacuumInHg: number;
  /** Least discharge pressure that a pump is set to: charts print no less [psi]. */
  leastDischargePsi: number;
}

/** An engine at the scene that takes a part of the water. */
export interface SceneEngine {
  name: string;
  /** The most that its pump puts out there, and no more than its lines bring [gpm]. */
  mostGpm: number;
  /** Ids of the plan's lines that end at it, though drawn to the scene's rig; left out: not told. */
  lines?: readonly string[];
}

export interface Plan {
  title: string;
  note?: string;
  /** True for data made up for practice: shown as such. */
  invented: boolean;
  /** The rig at the scene: what reaches its intake is the answer. */
  scene: string;
  /** What the scene needs [gpm]; left out: what its open nozzles take at their rated pressure. */
  demandGpm?: number;
  /** Engines that the water goes through at the scene, drawn as the one: what they take together is a limit. Left out: not counted. */
  sceneEngines?: readonly SceneEngine[];
  hydrants: readonly Hydrant[];
  /** Tests of several of the hydrants together; left out: none. */
  groupTests?: readonly GroupTest[];
  drafts: readonly DraftSource[];
  rigs: readonly Rig[];
  appliances: readonly Appliance[];
  lines: readonly Line[];
  nozzles: readonly Nozzle[];
  department: DepartmentValues;
}
