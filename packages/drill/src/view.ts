import { nameOf, type PortRef } from '@plugside/fireground';
import { inEffect } from './fault.ts';
import { gaugeNoise } from './gauge-noise.ts';
import { asCoupled } from './guided-step.ts';
import { waterIn } from './hose-front.ts';
import { liftsMost } from './intake-judged.ts';
import type { LogEntry } from './log.ts';
import type { Role } from './role.ts';
import type { DrillScene } from './scene.ts';
import { reachOf, scenePorts } from './scene-ports.ts';
import { type DrillState, type HoseState, type PumpState, TICKS_PER_S } from './state.ts';
import { nextStep, stepStands } from './steps-standing.ts';
import { streamsSeen } from './streams-seen.ts';
import type {
  DrillTruth,
  DrillView,
  GaugeView,
  HoseEndView,
  PortView,
  PumpView,
} from './view-shape.ts';
import { vacuumInHg } from './words/compound-gauge.ts';

/** Whether one who watches is shown what the instructor made go wrong. */
interface FaultsShown {
  faultsShown?: boolean;
}

/**
 * What a role sees of a drill: gauges, valves, ports and hose ends within reach, and the radio. Gauges lag
 * and are a little restless, the same for everyone who reads them. Instructor and observer see all of it,
 * and the truth beside it; an observer what goes wrong only by what follows from it. A nozzle's crew sees
 * its stream: it has no gauge.
 * @param options `guided`: the role's next step comes with it; `faultsShown`: an observer sees the faults
 *   that have come into effect too
 */
export function viewFor(
  role: Role,
  scene: DrillScene,
  state: DrillState,
  options: { guided?: boolean } & FaultsShown = {},
): DrillView {
  const sees = role === 'instructor' || role === 'observer';
  const reach = reachOf(role, scene);
  const view: DrillView = {
    role,
    tick: state.tick,
    timeS: state.tick / TICKS_PER_S,
    paused: state.paused,
    speed: state.speed,
    title: scene.title,
    gauges: gaugesOf(scene, state, reach, sees),
    valves: scene.valves
      .map(({ id, kind, label, pieceId, turns }, at) => {
        const { opening, target } = state.valves[at]!;
        const shown = { id, kind, label, pieceId, opening, target };
        return turns === undefined ? shown : { ...shown, turns };
      })
      .filter(({ pieceId }) => reach.has(pieceId)),
    hoseEnds: hoseEndsOf(scene, state, reach),
    ports: portViewsOf(scene, state, reach),
    pumps: state.pumps
      .filter(({ rigId }) => reach.has(rigId))
      .map((pump) => pumpOf(scene, state, pump)),
    radio: state.radio.filter((entry) => sees || entry.to === undefined || entry.to === role),
  };
  if (!sees) {
    const streams = streamsSeen(scene, state, reach);
    if (streams.length > 0) view.streams = streams;
    const mains = state.hydrants.filter(
      ({ id, flowGpm, mainPsi }) =>
        reach.has(id) && flowGpm > 1 && mainPsi < scene.benchmarks.mainPsi,
    );
    if (mains.length > 0) view.mainsUnder = mains.map(({ id }) => id);
  }
  if (role === 'observer') view.truth = watchedTruth(scene, state, options.faultsShown === true);
  else if (sees) view.truth = truthOf(scene, state);
  else if (options.guided) {
    const own = scene.steps.filter((one) => one.role === role);
    if (own.length === 0) return view;
    view.guided = true;
    const next = nextStep(role, scene, state);
    if (next) view.next = asCoupled(next, scene, state);
    else if (own.every((one) => stepStands(scene, state, one))) view.done = true;
  }
  return view;
}

/**
 * Whether a role notices an entry of the log: what was done or refused to itself, what happens at a piece or
 * a hose end within its reach. Instructor and observer notice everything, but that an observer is told of
 * faults only where they are shown. The radio is in the view.
 */
export function notices(
  role: Role,
  scene: DrillScene,
  state: DrillState,
  entry: LogEntry,
  { faultsShown = false }: FaultsShown = {},
): boolean {
  const isFault =
    entry.kind === 'event'
      ? entry.event.kind === 'fault' || entry.event.kind === 'fault lifted'
      : entry.action.do === 'arm fault' || entry.action.do === 'lift fault';
  if (role === 'instructor') return true;
  if (role === 'observer') return !isFault || faultsShown;
  if (entry.kind !== 'event') return entry.role === role;
  if (isFault) return false;
  const { piece } = entry.event;
  const reach = reachOf(role, scene);
  if (reach.has(piece)) return true;
  const valve = scene.valves.find(({ id }) => id === piece);
  if (valve) return reach.has(valve.pieceId);
  const hose = state.hoses.find(({ id }) => id === piece);
  return hose !== undefined && (reach.has(hose.from.at) || reach.has(hose.to.at));
}

function gaugesOf(
  scene: DrillScene,
  state: DrillState,
  reach: ReadonlySet<string>,
  seesAll: boolean,
): GaugeView[] {
  const gauges: GaugeView[] = [];
  const read = (gauge: Omit<GaugeView, 'value'>, value: number) => {
    const noise = gaugeNoise(state.seed, state.tick, gauge.id) * scene.settings.gaugeNoiseShare;
    const shown = Math.round(value * (1 + noise) * 10) / 10;
    const vacuum = gauge.unit === 'psi' && shown < 0;
    const inHg = Math.round(vacuumInHg(shown) * 10) / 10;
    gauges.push({ ...gauge, value: shown, ...(vacuum && { vacuumInHg: inHg }) });
  };
  for (const pump of state.pumps) {
    if (!reach.has(pump.rigId)) continue;
    const id = pump.rigId;
    const name = scene.pumps.find(({ rigId }) => rigId === id)!.label;
    read(
      {
        id: `${id}.intake`,
        label: `${name} intake`,
        unit: 'psi',
        // A pump that lifts from tank or open water has a vacuum there, and nothing to keep.
        ...(!liftsMost(scene, state, pump) && { least: scene.benchmarks.intakePsi }),
      },
      pump.intakeGaugePsi,
    );
    read(
      { id: `${id}.discharge`, label: `${name} discharge`, unit: 'psi' },
      pump.dischargeGaugePsi,
    );
    read({ id: `${id}.flow`, label: `${name} flow`, unit: 'gpm' }, pump.flowGpm);
    for (const gated of gatedPorts(scene, state, id)) {
      const valve = scene.valves.find((one) => one.id === gated.port);
      const line = valve?.label.toLowerCase() ?? gated.port;
      read({ id: gated.id, label: `${name} ${line}`, unit: 'psi' }, gated.psi);
    }
    const tank = state.tanks.find(({ rigId }) => rigId === id);
    if (tank)
      gauges.push({
        id: `${id}.tank`,
        label: `${name} tank`,
        unit: 'gal',
        value: eighths(scene, tank),
      });
  }
  for (const nozzle of state.nozzles) {
    // Its crew has no gauge.
    if (!seesAll) continue;
    const name = scene.plan.nozzles.find(({ id }) => id === nozzle.id)!;
    const label = `${nameOf(name)} pressure`;
    read({ id: `${nozzle.id}.pressure`, label, unit: 'psi' }, nozzle.pressurePsi);
  }
  return gauges;
}

/** Discharges for hose that is gated, with what stands behind their valves [psi]: each has a gauge. */
function gatedPorts(
  scene: DrillScene,
  state: DrillState,
  rigId: string,
): { id: string; port: PortRef; psi: number }[] {
  const isHere = (port: PortRef | null) => port?.startsWith(`${rigId}.discharge`) === true;
  return scene.hoses.flatMap(({ gatedPsi, from }, at) => {
    if (gatedPsi === undefined || !isHere(from.plannedPort)) return [];
    const hose = state.hoses[at]!;
    const on = [hose.from, hose.to].find(({ port }) => isHere(port));
    // It keeps its name where the hose is on another discharge, or on none.
    return [{ id: from.plannedPort, port: on?.port ?? from.plannedPort, psi: on?.psi ?? 0 }];
  });
}

/** A tank's level as its lamps show it: by eighths [gal]. */
function eighths(scene: DrillScene, tank: { rigId: string; gal: number }): number {
  const { capacityGal } = scene.tanks.find(({ rigId }) => rigId === tank.rigId)!;
  return (Math.round((8 * tank.gal) / capacityGal) * capacityGal) / 8;
}

function hoseEndsOf(
  scene: DrillScene,
  state: DrillState,
  reach: ReadonlySet<string>,
): HoseEndView[] {
  return state.hoses.flatMap((hose, at) => {
    const { label, capacityGal } = scene.hoses[at]!;
    return (['from', 'to'] as const)
      .filter((end) => reach.has(hose[end].at))
      .map((end) => ({
        hose: hose.id,
        end,
        label,
        port: hose[end].port,
        at: hose[end].at,
        looks: looksOf(hose, waterIn(hose) / capacityGal),
      }));
  });
}

/** Under this a full hose gives under the boot [psi]; ours. */
const softPsi = 10;

function looksOf(hose: HoseState, share: number): HoseEndView['looks'] {
  if (hose.phase === 'burst') return 'burst';
  if (hose.phase === 'filling') return share < 0.02 ? 'flat' : 'filling';
  return Math.max(hose.from.psi, hose.to.psi) < softPsi ? 'soft' : 'hard';
}

function portViewsOf(scene: DrillScene, state: DrillState, reach: ReadonlySet<string>): PortView[] {
  const hoseOn = new Map<PortRef, string>();
  for (const { id, from, to } of state.hoses) {
    if (from.port !== null) hoseOn.set(from.port, id);
    if (to.port !== null) hoseOn.set(to.port, id);
  }
  return scenePorts(scene)
    .filter(({ pieceId }) => reach.has(pieceId))
    .map(({ port, label, sits, takesHose }) => {
      const hose = hoseOn.get(port) ?? null;
      return { port, label, hose: hose ?? sits, free: hose === null && takesHose };
    });
}

function pumpOf(scene: DrillScene, state: DrillState, pump: PumpState): PumpView {
  const piece = scene.pumps.find(({ rigId }) => rigId === pump.rigId)!;
  const tank = state.tanks.find(({ rigId }) => rigId === pump.rigId);
  const view: PumpView = {
    rigId: pump.rigId,
    label: piece.label,
    inGear: pump.inGear,
    setting:
      pump.mode === 'governed'
        ? { mode: 'governed', pdpPsi: pump.targetPdpPsi }
        : { mode: 'throttled', speedFraction: pump.targetSpeed },
    sounds: soundsOf(pump),
  };
  if (tank) {
    view.tankGal = eighths(scene, tank);
    view.tankCapacityGal = scene.tanks.find(({ rigId }) => rigId === pump.rigId)!.capacityGal;
  }
  return view;
}

function soundsOf({ condition, airGal }: PumpState): PumpView['sounds'] {
  if (condition === 'cavitating' || airGal > 2) return 'rattling';
  if (condition === 'lost prime') return 'no water';
  if (condition === 'out of gear' || condition === 'dead') return 'quiet';
  return 'pumping';
}

function truthOf(scene: DrillScene, state: DrillState): DrillTruth {
  const { hoses, valves, pumps, tanks, hydrants, assistValves, nozzles, faults, water } = state;
  return {
    // A copy: the drill changes its own in place.
    state: structuredClone({
      hoses,
      valves,
      pumps,
      tanks,
      hydrants,
      assistValves,
      nozzles,
      faults,
      water,
    }),
    hoses: hoses.map((hose, at) => ({
      id: hose.id,
      phase: hose.phase,
      fillShare: Math.min(1, waterIn(hose) / scene.hoses[at]!.capacityGal),
      flowGpm: hose.flowGpm,
    })),
    pumps: pumps.map(({ rigId, condition }) => ({ rigId, condition })),
  };
}

/**
 * The truth as it may stand on a wall: faults that wait for their moment never, those in effect only where
 * they are shown. Else a stuck clapper is shut, and a dead engine's pump stands still or lets water by:
 * what anybody beside them sees.
 */
function watchedTruth(scene: DrillScene, state: DrillState, faultsShown: boolean): DrillTruth {
  const truth = truthOf(scene, state);
  if (faultsShown) {
    truth.state.faults = truth.state.faults.filter((fault) => inEffect(state, fault));
    return truth;
  }
  truth.state.faults = [];
  for (const valve of truth.state.assistValves) {
    if (valve.clapper === 'stuck shut') valve.clapper = 'shut';
    if (valve.clapper === 'stuck open') valve.clapper = 'open';
    delete valve.stuck;
  }
  for (const pump of truth.state.pumps)
    if (pump.condition === 'dead') pump.condition = pump.flowGpm > 1 ? 'passing' : 'no flow';
  for (const pump of truth.pumps)
    pump.condition = truth.state.pumps.find(({ rigId }) => rigId === pump.rigId)!.condition;
  return truth;
}
