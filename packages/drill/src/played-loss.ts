/** What the computer does when a supply fails, and when more is asked of it than the script has. */
import { splitPortRef } from '@plugside/fireground';
import type { DrillAction } from './action.ts';
import { mostPsi } from './asked-pressure.ts';
import { engineIsDead } from './fault.ts';
import { liftsMost } from './intake-judged.ts';
import { openingOnto } from './line-gates.ts';
import { goesByPlan, plannedPsi } from './played-relay.ts';
import type { RadioEntry, RadioPresetKey } from './radio.ts';
import type { PlayedRole } from './role.ts';
import type { DrillScene } from './scene.ts';
import { postOf } from './scene-posts.ts';
import { deadTankGal } from './solve-flows.ts';
import { type DrillState, type HoseState, type PumpState, TICKS_PER_S } from './state.ts';
import { nextStep } from './steps-standing.ts';
import { leastOpening } from './valve-loss.ts';

/** An intake under this has lost its supply: the tank is opened [psi]. Ours. */
export const LOST_UNDER_PSI = 5;
/** An intake back over this goes off the tank again [psi]; 20 is what is kept, and 5 more for it to hold. */
const BACK_OVER_PSI = 25;
/** What an operator wants an intake to stand at who asks for more [psi]. */
const WANTED_PSI = 25;
/** More is asked for again after so long, and its answer waited for so long [s]. Ours. */
const ASKED_AGAIN_S = 30;
const ANSWER_WAITED_S = 3;
/** A pump that runs dry is left in gear so long [s]. Ours. */
const DRY_S = 10;
/** A line that was shed stays off so long, and until the intake stands over this [s], [psi]. Ours. */
const SHED_FOR_S = 120;
const SHED_UNTIL_PSI = 40;
/** Seconds for a tank valve, an intake, a line. Ours. */
const TANK_S = 1;
const INTAKE_S = 3;
const LINE_S = 5;
/** A line whose air is squeezed this far is charged [psi]; ours. */
const CHARGED_PSI = 30;
/** Least share of its rating that a nozzle has water at. */
const WATER_SHARE = 0.3;

const since = (state: DrillState, entry: RadioEntry) => (state.tick - entry.tick) / TICKS_PER_S;
const valveOf = (state: DrillState, id: string) => state.valves.find((one) => one.id === id);
const isOpen = (state: DrillState, id: string) => (valveOf(state, id)?.target ?? 0) >= leastOpening;
const say = (preset: RadioPresetKey, psi?: number): DrillAction => ({
  do: 'radio',
  message: psi === undefined ? { preset } : { preset, psi },
});

function lastSaid(
  state: DrillState,
  role: PlayedRole,
  presets: readonly RadioPresetKey[],
): RadioEntry | undefined {
  return state.radio.findLast(
    ({ from, preset }) => from === role && preset !== undefined && presets.includes(preset),
  );
}

/** What is said of a line that is taken off, and which it was, by what was said. */
const shedText = (discharge: string) => `Short of water: I shut discharge ${discharge}.`;
const shedIn = ({ text }: RadioEntry) =>
  /^Short of water: I shut discharge (\d+)\.$/.exec(text)?.[1];

/** Whether an operator has taken a line off for want of water, and the water is not back. */
export function shedStands(state: DrillState, role: PlayedRole, pump: PumpState): boolean {
  const shed = state.radio.findLast((one) => one.from === role && shedIn(one) !== undefined);
  return shed !== undefined && (since(state, shed) < SHED_FOR_S || pump.intakePsi < SHED_UNTIL_PSI);
}

/** Rules for a loss of supply, an intake under 20 psi, a request and an extra line, in that order. */
export function playsLoss(role: PlayedRole, scene: DrillScene, state: DrillState): DrillAction[] {
  const first =
    shutsBurst(role, scene, state) ??
    followsShed(role, scene, state) ??
    losesWater(role, scene, state) ??
    answers(role, scene, state) ??
    pumpRules(role, scene, state) ??
    opensCalled(role, scene, state);
  return first ?? [];
}

function pumpRules(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] | undefined {
  for (const pump of state.pumps) {
    if (!postOf(scene, role).includes(pump.rigId)) continue;
    if (engineIsDead(state, pump.rigId)) continue;
    const gear = sparesDry(scene, state, pump);
    if (gear) return [gear];
    if (!pump.inGear) continue;
    const action =
      losesSupply(role, state, pump) ??
      tellsClapper(role, scene, state) ??
      tellsNoMore(role, scene, state, pump) ??
      backOnSupply(role, state, pump) ??
      keepsIntake(role, scene, state, pump) ??
      restoresShed(role, scene, state, pump);
    if (action) return [action];
  }
  return undefined;
}

/** A pump that runs dry is taken out of gear, and put in again once it has water. */
function sparesDry(
  scene: DrillScene,
  state: DrillState,
  { rigId, inGear, primed, dryTicks = 0 }: PumpState,
): DrillAction | undefined {
  if (inGear && dryTicks >= DRY_S * TICKS_PER_S)
    return { do: 'pump in gear', rig: rigId, inGear: false };
  if (inGear || !primed || !wasInGear(scene, state, rigId)) return undefined;
  const tank = state.tanks.find((one) => one.rigId === rigId);
  const onTank = isOpen(state, `${rigId}.tankToPump`) && (tank?.gal ?? 0) > deadTankGal;
  const isFed = feeds(state, rigId).some(
    ({ hose, psi }) => hose.phase === 'full' && psi >= LOST_UNDER_PSI,
  );
  return onTank || isFed ? { do: 'pump in gear', rig: rigId, inGear: true } : undefined;
}

/** Whether the start or a done step had a pump in gear. */
function wasInGear({ pumps, steps }: DrillScene, state: DrillState, rigId: string): boolean {
  return (
    pumps.some((one) => one.rigId === rigId && one.inGear) ||
    steps.some(
      ({ id, how }) =>
        state.tally.stepTicks.some(({ step }) => step === id) &&
        how.some((action) => action.do === 'pump in gear' && action.rig === rigId && action.inGear),
    )
  );
}

/** Hose on the intakes of a pump that stand open. */
function feeds(state: DrillState, rigId: string): { port: string; hose: HoseState; psi: number }[] {
  return state.hoses.flatMap((hose) =>
    [hose.from, hose.to].flatMap(({ port, psi }) =>
      port?.startsWith(`${rigId}.intake`) && isOpen(state, port) ? [{ port, hose, psi }] : [],
    ),
  );
}

/** Tank to pump; then the intake of a hose that is burst or dry is shut; then it is said. */
function losesSupply(
  role: PlayedRole,
  state: DrillState,
  pump: PumpState,
): DrillAction | undefined {
  const { rigId } = pump;
  const fed = feeds(state, rigId);
  const broken = fed.find(({ hose }) => hose.phase !== 'full');
  const good = fed.some(({ hose, psi }) => hose.phase === 'full' && psi >= LOST_UNDER_PSI);
  const isDry = fed.length > 0 && !good && pump.intakePsi < LOST_UNDER_PSI;
  if (!broken && !isDry) return tellsLoss(role, state, pump);
  const tank = state.tanks.find((one) => one.rigId === rigId);
  const tankValve = `${rigId}.tankToPump`;
  const hasTank = tank !== undefined && tank.gal > deadTankGal;
  if (!good && hasTank && !isOpen(state, tankValve))
    return { do: 'set valve', valve: tankValve, opening: 1, overS: TANK_S };
  if (broken && hasWater(pump, hasTank))
    return { do: 'set valve', valve: broken.port, opening: 0, overS: INTAKE_S };
  return tellsLoss(role, state, pump);
}

/** A burst hose is shut off once the pump has other water, or has none to lose. */
function hasWater(pump: PumpState, hasTank: boolean): boolean {
  return hasTank || pump.intakePsi < LOST_UNDER_PSI || pump.condition === 'lost prime';
}

/** Says once for each loss that the supply has gone. */
function tellsLoss(
  role: PlayedRole,
  state: DrillState,
  { rigId, intakePsi }: PumpState,
): DrillAction | undefined {
  const isFed = feeds(state, rigId).some(({ psi }) => psi >= LOST_UNDER_PSI);
  const isCoupled = state.hoses.some(({ phase, from, to }) =>
    [from.port, to.port].some((port) => port?.startsWith(`${rigId}.intake`) && phase === 'burst'),
  );
  const isDry = feeds(state, rigId).length > 0 && intakePsi < LOST_UNDER_PSI;
  if (isFed || (!isCoupled && !isDry)) return undefined;
  const told = lastSaid(state, role, ['going to tank', 'loss of water', 'on hydrant']);
  if (told && told.preset !== 'on hydrant' && since(state, told) < SHED_FOR_S) return undefined;
  const tank = state.tanks.find((one) => one.rigId === rigId);
  const onTank = isOpen(state, `${rigId}.tankToPump`) && (tank?.gal ?? 0) > deadTankGal;
  return say(onTank ? 'going to tank' : 'loss of water');
}

/** What is said of an assist valve whose clapper lets boosted water run back to the hydrant. */
const CLAPPER_TEXT = 'The valve’s clapper does not shut: water runs back, and I hold what I can.';
/** Water that runs back from this on is seen [gpm]. Ours. */
const RUNS_BACK_GPM = 20;

/** Says once for a while that the clapper at hand does not shut: raising the pump only sends water round. */
function tellsClapper(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction | undefined {
  const post = postOf(scene, role);
  const gapes = state.assistValves.some(
    ({ id, clapperGpm }) => clapperGpm < -RUNS_BACK_GPM && post.includes(id),
  );
  if (!gapes) return undefined;
  const told = state.radio.findLast(({ from, text }) => from === role && text === CLAPPER_TEXT);
  if (told && since(state, told) < SHED_FOR_S) return undefined;
  return { do: 'radio', message: { text: CLAPPER_TEXT } };
}

/** An operator between source and scene whose own intake falls says once for a while that there is no more. */
function tellsNoMore(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
  pump: PumpState,
): DrillAction | undefined {
  if (pump.rigId === scene.plan.scene || pump.flowGpm < 10) return undefined;
  if (pump.intakePsi >= scene.benchmarks.intakePsi || liftsMost(scene, state, pump))
    return undefined;
  if (canAsk(scene, state, role)) return undefined;
  const told = lastSaid(state, role, ['no more']);
  return told && since(state, told) < SHED_FOR_S ? undefined : say('no more');
}

/** Off the tank once the supply is back, where it was opened for its loss. */
function backOnSupply(
  role: PlayedRole,
  state: DrillState,
  { rigId, intakePsi }: PumpState,
): DrillAction | undefined {
  const told = lastSaid(state, role, ['going to tank', 'on tank', 'on hydrant']);
  if (told?.preset !== 'going to tank' || intakePsi < BACK_OVER_PSI) return undefined;
  const tankValve = `${rigId}.tankToPump`;
  if (isOpen(state, tankValve))
    return { do: 'set valve', valve: tankValve, opening: 0, overS: TANK_S };
  return say('on hydrant');
}

/** Whether someone else's pump stands between the source and this one, and can be asked for more. */
function canAsk(scene: DrillScene, state: DrillState, role: PlayedRole): boolean {
  return state.pumps.some(
    ({ rigId, inGear }) =>
      inGear && rigId !== scene.plan.scene && !postOf(scene, role).includes(rigId),
  );
}

/** An intake under what should be kept: asks for more, else takes off the last line once its pump was eased. */
function keepsIntake(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
  pump: PumpState,
): DrillAction | undefined {
  const least = scene.benchmarks.intakePsi;
  if (pump.flowGpm < 10 || pump.intakePsi >= least || liftsMost(scene, state, pump))
    return undefined;
  const asked = lastSaid(state, role, ['more needed']);
  const isDue = !asked || since(state, asked) >= ASKED_AGAIN_S;
  if (isDue && canAsk(scene, state, role)) {
    const psi = Math.max(5, 5 * Math.ceil((WANTED_PSI - pump.intakePsi) / 5));
    return say('more needed', Math.min(100, psi));
  }
  const psi = easedTo(scene, role, pump);
  if (pump.targetPdpPsi > psi) return undefined;
  const lines = openLines(scene, state, pump.rigId);
  const last = lines.at(-1);
  if (lines.length < 2 || last === undefined) return undefined;
  // One after another: what the first brings shows once it is shut.
  if (isMoving(scene, state, pump.rigId)) return undefined;
  const text = shedText(/\d+$/.exec(last)?.[0] ?? '');
  const told = state.radio.findLast((one) => one.from === role && one.text === text);
  if (!told || since(state, told) >= SHED_FOR_S) return { do: 'radio', message: { text } };
  return { do: 'set valve', valve: last, opening: 0, overS: LINE_S };
}

function isMoving(scene: DrillScene, state: DrillState, rigId: string): boolean {
  return scene.valves.some(({ kind, pieceId }, at) => {
    const { opening, target } = state.valves[at]!;
    return kind === 'discharge' && pieceId === rigId && opening !== target;
  });
}

/** Lines that were taken off come on again, one after another, once there is water. */
function restoresShed(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
  pump: PumpState,
): DrillAction | undefined {
  const { rigId } = pump;
  const sheds = state.radio.filter((one) => one.from === role && shedIn(one) !== undefined);
  if (sheds.length === 0 || shedStands(state, role, pump) || isMoving(scene, state, rigId))
    return undefined;
  for (const one of sheds) {
    const valve = valveOf(state, `${rigId}.discharge${shedIn(one)}`);
    if (valve?.target !== 0) continue;
    const hose = state.hoses.find(({ from, to }) => [from.port, to.port].includes(valve.id));
    const opening = openingOnto(scene, hose?.id, valve.id, pump.targetPdpPsi);
    return { do: 'set valve', valve: valve.id, opening, overS: LINE_S };
  }
  return undefined;
}

/** A crew shuts the nozzle of a line that was taken off, and opens it again when its water is back. */
function followsShed(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] | undefined {
  for (const nozzle of scene.plan.nozzles) {
    if (!postOf(scene, role).includes(nozzle.id)) continue;
    const hose = state.hoses.find(({ to }) => to.port === `${nozzle.id}.inlet`);
    const bale = valveOf(state, `${nozzle.id}.bale`);
    const number = /\.discharge(\d+)$/.exec(hose?.from.port ?? '')?.[1];
    const shed = state.radio.findLast((one) => shedIn(one) === number);
    if (!hose || !bale || number === undefined || !shed) continue;
    if (bale.target > 0 && hose.to.psi < LOST_UNDER_PSI)
      return [{ do: 'set valve', valve: bale.id, opening: 0, overS: 1 }];
    if (bale.target === 0 && hose.phase === 'full' && hose.from.psi > BACK_OVER_PSI)
      return [{ do: 'set valve', valve: bale.id, opening: 1, overS: 3 }];
  }
  return undefined;
}

/** How far a pump is eased while it has a line that could be taken off: to 80 % of what it should give [psi]. */
const EASED_SHARE = 0.8;
const EASED_TO_PSI = 50;

/** Down to what a pump that starves is eased [psi]. */
export function easedTo(scene: DrillScene, role: PlayedRole, { rigId }: PumpState): number {
  if (goesByPlan(role, scene)) return EASED_TO_PSI;
  const planned = plannedPsi(scene, rigId) ?? EASED_TO_PSI;
  return Math.max(EASED_TO_PSI, EASED_SHARE * planned);
}

/** Whether an answer to a call for more is still waited for. */
export function waitsForMore(state: DrillState, role: PlayedRole): boolean {
  const asked = lastSaid(state, role, ['more needed']);
  return asked !== undefined && since(state, asked) < ANSWER_WAITED_S;
}

/** Discharges that stand open on a nozzle's line, in their order. */
export function openLines(scene: DrillScene, state: DrillState, rigId: string): string[] {
  const nozzles = new Set(scene.plan.nozzles.map(({ id }) => id));
  return scene.valves
    .filter(({ kind, pieceId }) => kind === 'discharge' && pieceId === rigId)
    .map(({ id }) => id)
    .filter(
      (id) =>
        isOpen(state, id) &&
        state.hoses.some(
          ({ from, to }) =>
            from.port === id && to.port !== null && nozzles.has(splitPortRef(to.port).pieceId),
        ),
    );
}

/** Shuts what feeds a burst hose at hand, slowly, and says so. */
function shutsBurst(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] | undefined {
  const post = postOf(scene, role);
  const burst = state.hoses.find(
    ({ phase, from }) => phase === 'burst' && from.port !== null && post.includes(from.at),
  );
  if (!burst?.from.port) return undefined;
  const { port } = burst.from;
  const owner = splitPortRef(port).pieceId;
  const on = scene.plan.appliances.find(({ id }) => id === owner);
  const source = on?.kind === 'assist-valve' ? splitPortRef(on.on).pieceId : owner;
  const valve = valveOf(state, port) ?? valveOf(state, `${source}.stem`);
  if (valve && valve.target > 0 && post.includes(splitPortRef(valve.id).pieceId))
    return [{ do: 'set valve', valve: valve.id, opening: 0 }];
  const told = lastSaid(state, role, ['hose burst']);
  return !told || since(state, told) >= SHED_FOR_S ? [say('hose burst')] : undefined;
}

/** A crew whose open nozzle has lost its water says so. */
function losesWater(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] | undefined {
  const lost = scene.plan.nozzles.some((nozzle, at) => {
    if (!postOf(scene, role).includes(nozzle.id)) return false;
    const line = state.tally.lines['nozzle interrupted'].moments.findLast(
      ({ piece }) => piece === nozzle.id,
    );
    const { flowGpm } = state.nozzles[at]!;
    return line !== undefined && line.toTick === undefined && flowGpm < WATER_SHARE * 100;
  });
  if (!lost) return undefined;
  const told = lastSaid(state, role, ['loss of water']);
  return !told || since(state, told) >= SHED_FOR_S ? [say('loss of water')] : undefined;
}

/** Raises on request, as far as hose and own intake bear it, and answers. */
function answers(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] | undefined {
  if (role === 'attack operator' || role === 'nozzle crew') return undefined;
  const isFree = nextStep(role, scene, state) === undefined;
  const call = state.radio.findLast(
    ({ from, preset }) =>
      from !== role && (preset === 'more needed' || (preset === 'pressure wanted' && isFree)),
  );
  if (!call || call.psi === undefined || since(state, call) > ASKED_AGAIN_S) return undefined;
  if (state.radio.some(({ from, tick }) => from === role && tick > call.tick)) return undefined;
  const pump = state.pumps.find(({ rigId }) => postOf(scene, role).includes(rigId));
  if (!pump) return undefined;
  if (!pump.inGear || engineIsDead(state, pump.rigId))
    return pump.inGear ? [say('no more')] : undefined;
  const wanted = call.preset === 'more needed' ? pump.targetPdpPsi + call.psi : call.psi;
  const most = mostPsi(scene, state, pump.rigId);
  const pdpPsi = Math.round(Math.min(wanted, most));
  const starves = pump.intakePsi < scene.benchmarks.intakePsi;
  if (pump.mode !== 'governed' || starves || pdpPsi <= pump.targetPdpPsi) return [say('no more')];
  return [{ do: 'set governor', rig: pump.rigId, pdpPsi }, say('pressure set', pdpPsi)];
}

/** A line that was called is charged, and opened once it is full. */
function opensCalled(
  role: PlayedRole,
  scene: DrillScene,
  state: DrillState,
): DrillAction[] | undefined {
  for (const { nozzle, flowedTick, takenBackTick } of state.tally.called ?? []) {
    if (flowedTick !== undefined || takenBackTick !== undefined) continue;
    const hose = state.hoses.find(({ to }) => to.port === `${nozzle}.inlet`);
    if (!hose?.from.port) continue;
    const from = valveOf(state, hose.from.port);
    const bale = valveOf(state, `${nozzle}.bale`);
    const post = postOf(scene, role);
    if (from && from.target === 0 && post.includes(splitPortRef(from.id).pieceId))
      return [{ do: 'set valve', valve: from.id, opening: 1, overS: LINE_S }];
    // Charged as far as it goes: its air is squeezed at the shut bale.
    if (bale && bale.target === 0 && hose.airPsi > CHARGED_PSI && post.includes(nozzle))
      return [{ do: 'set valve', valve: bale.id, opening: 1, overS: 3 }];
  }
  return undefined;
}
