/** One tick of water: hose fills and runs out, tanks empty and fill, and every gallon is booked. */

import { carryInto, moveAir, swallow } from './air-carried.ts';
import type { DrillEvent } from './event.ts';
import { inEffect } from './fault.ts';
import { onFineGrid, onGrid } from './grid.ts';
import { airInGal, frontAt, otherEnd, squeezedPsi, waterIn } from './hose-front.ts';
import type { HoseEnd } from './names.ts';
import { PRIMER_FILLS_S, primerOn } from './priming.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { SceneHose } from './scene.ts';
import { deadTankGal } from './solve-flows.ts';
import { type HoseState, TICKS_PER_S } from './state.ts';
import { countUnsafe } from './tally-acts.ts';
import { hoseName, pieceName } from './words/piece-words.ts';

const TICK_MIN = 1 / TICKS_PER_S / 60;
/** A hose runs out of a loose end in about this time [s], and of a burst in half of it; ours. */
const RUNS_OUT_S = 20;
/** Under this flow through it a loose end runs out rather than pours [gpm]. */
const TRICKLE_GPM = 5;
/** A hose is full when this little is missing [gal]. */
const FULL_GAL = 1e-4;
/** Air in a pump leaves it in about this time [s]; ours. */
const AIR_LEAVES_S = 2;

/** @param moved false where the last solve failed: nothing flows in this tick */
export function moveWater(drill: Drill, moved: boolean): DrillEvent[] {
  if (!moved) return [];
  const { scene, state, net } = drill;
  const { water } = state;
  const events: DrillEvent[] = [];
  const gal = (gpm: number) => gpm * TICK_MIN;
  const flowOf = (link: string) => {
    const at = net.link(link);
    return at < 0 || !net.network ? 0 : onGrid(net.network.flowGpm[at]!);
  };
  for (const hydrant of state.hydrants) water.sourceGal += gal(hydrant.flowGpm);
  for (const source of scene.plan.drafts) water.sourceGal += gal(flowOf(`${source.id}:strainer`));
  for (const nozzle of state.nozzles) water.nozzleGal += gal(nozzle.flowGpm);
  for (const appliance of scene.plan.appliances)
    if (appliance.kind === 'sprinkler') water.nozzleGal += gal(flowOf(`${appliance.id}:heads`));
  for (const { link, openK } of net.valved)
    if (openK !== undefined && link.endsWith(':bleeder')) water.wasteGal += gal(flowOf(link));
  for (const port of state.uncapped) water.wasteGal += gal(flowOf(`${port}:open`));

  for (const pump of state.pumps) {
    water.wasteGal += gal(pump.reliefGpm);
    pump.airGal = onFineGrid(pump.airGal * (1 - 1 / TICKS_PER_S / AIR_LEAVES_S));
    const tank = state.tanks.find((one) => one.rigId === pump.rigId);
    if (!tank) continue;
    const { capacityGal } = scene.tanks.find((one) => one.rigId === tank.rigId)!;
    const filled = gal(flowOf(`${tank.rigId}:tankFill`));
    const before = tank.gal;
    const wanted = before - gal(pump.tankGpm) + filled;
    tank.gal = onFineGrid(Math.min(capacityGal, wanted));
    water.tankGal += tank.gal - before;
    // What a full tank is given runs over.
    water.wasteGal += wanted - tank.gal;
    if (before > deadTankGal && tank.gal <= deadTankGal)
      events.push(
        tell(
          'tank empty',
          'caution',
          tank.rigId,
          `${pieceName(scene, tank.rigId)}'s tank is empty.`,
        ),
      );
    if (before < capacityGal && tank.gal >= capacityGal)
      events.push(
        tell(
          'tank full',
          'fact',
          tank.rigId,
          `${pieceName(scene, tank.rigId)}'s tank is full and runs over.`,
        ),
      );
  }
  state.hoses.forEach((_, at) => {
    events.push(...moveHose(drill, at));
  });
  state.hoses.forEach((hose, at) => {
    if (hose.air) events.push(...moveAir(drill, at));
  });
  for (const key of ['sourceGal', 'nozzleGal', 'wasteGal', 'tankGal', 'hoseGal'] as const)
    water[key] = onFineGrid(water[key]);
  return events;
}

function tell(
  kind: DrillEvent['kind'],
  level: DrillEvent['level'],
  piece: string,
  text: string,
): DrillEvent {
  return { kind, level, piece, text };
}

function moveHose(drill: Drill, at: number): DrillEvent[] {
  const { scene, state } = drill;
  const piece = scene.hoses[at]!;
  const hose = state.hoses[at]!;
  const { water } = state;
  const before = waterIn(hose);
  const events: DrillEvent[] = [];
  const inflow = (hose.from.gpm + hose.to.gpm) * TICK_MIN;
  const bursts = burstOf(drill, at);
  if (bursts !== undefined) {
    hose.phase = 'burst';
    water.wasteGal += inflow;
    drill.stale = true;
    events.push(tell('hose burst', 'caution', hose.id, bursts));
    return events;
  }
  switch (hose.phase) {
    case 'full':
      return events;
    case 'burst':
    case 'open': {
      water.wasteGal += inflow;
      if (hose.from.gpm + hose.to.gpm >= TRICKLE_GPM) return events;
      const seconds = hose.phase === 'burst' ? RUNS_OUT_S / 2 : RUNS_OUT_S;
      water.wasteGal += runOut(hose, piece.capacityGal / seconds / TICKS_PER_S);
      if (hose.phase === 'open' && waterIn(hose) < 0.98 * piece.capacityGal) {
        hose.phase = 'filling';
        hose.airGal = onFineGrid(piece.capacityGal - waterIn(hose));
        drill.stale = true;
      }
      break;
    }
    case 'filling':
      events.push(...fill(drill, at));
  }
  const after = waterIn(hose);
  water.hoseGal += after - before;
  if (before > FULL_GAL && after <= FULL_GAL)
    events.push(tell('hose drained', 'fact', hose.id, `${hoseName(piece)} has run out.`));
  return events;
}

/** Takes water out of a hose, first what stands at the end `from`. @returns what ran out [gal] */
function runOut(hose: HoseState, gal: number): number {
  const before = waterIn(hose);
  const first = Math.min(hose.from.waterGal, gal);
  hose.from.waterGal = onFineGrid(hose.from.waterGal - first);
  hose.to.waterGal = onFineGrid(Math.max(0, hose.to.waterGal - (gal - first)));
  return before - waterIn(hose);
}

/** Hose that lies dry, its air at the pressure of the open, and that no water comes to. */
function isStillDry({ from, to, airGal, airPsi }: HoseState, { capacityGal }: SceneHose): boolean {
  return (
    from.gpm <= 0 &&
    to.gpm <= 0 &&
    from.waterGal === 0 &&
    to.waterGal === 0 &&
    airGal === capacityGal &&
    airPsi === 0
  );
}

function fill(drill: Drill, at: number): DrillEvent[] {
  const { scene, state } = drill;
  const piece = scene.hoses[at]!;
  const hose = state.hoses[at]!;
  if (isStillDry(hose, piece) && primerOn(drill, at) === undefined) return [];
  const events: DrillEvent[] = [];
  const loose = hose.from.port === null || hose.to.port === null;
  let vented = false;
  let airPsi = 0;
  let drivenOut = false;
  let leavesBy: HoseEnd = 'to';
  const airBefore = hose.airGal;
  const followed = hasRules(scene, 3);
  for (const end of ['from', 'to'] as const) {
    const { gpm, port } = hose[end];
    if (port === null) continue;
    const front = frontAt(drill, at, end);
    const far = otherEnd[end];
    // No air leaves by an end that water comes in by.
    vented ||= front.vented && !(followed && hose[far].gpm > 0);
    if (!followed || gpm > 0) airPsi = Math.max(airPsi, front.airPsi);
    if (gpm <= 0) continue;
    leavesBy = hose[far].gpm < gpm ? far : leavesBy;
    drivenOut ||= front.drivenOut === true;
    if (front.intoPump !== undefined)
      events.push(...swallow(drill, front.intoPump, gpm * TICK_MIN, hose.id));
  }
  const carry = () => {
    const goesOn = drivenOut || hose.phase === 'full';
    if (!followed || vented || !goesOn) return;
    events.push(...carryInto(drill, hose[leavesBy].port, airBefore - hose.airGal, hose.id));
  };
  for (const end of ['from', 'to'] as const)
    hose[end].waterGal = onFineGrid(hose[end].waterGal + Math.max(0, hose[end].gpm) * TICK_MIN);
  if (primerOn(drill, at) !== undefined) {
    const before = hose.from.waterGal;
    hose.from.waterGal = onFineGrid(before + piece.capacityGal / PRIMER_FILLS_S / TICKS_PER_S);
    state.water.sourceGal += hose.from.waterGal - before;
  }
  if (hose.from.gpm + hose.to.gpm < TRICKLE_GPM && loose && waterIn(hose) > 0)
    state.water.wasteGal += runOut(hose, piece.capacityGal / RUNS_OUT_S / TICKS_PER_S);
  const over = waterIn(hose) - piece.capacityGal;
  if (over >= -FULL_GAL) {
    // The last of it spurts out before the way is shut, or is a drop short.
    state.water.wasteGal += over;
    hose.from.waterGal = piece.capacityGal;
    hose.to.waterGal = 0;
    hose.phase = loose ? 'open' : 'full';
    hose.airGal = 0;
    hose.airPsi = 0;
    drill.stale = true;
    carry();
    if (!loose) events.push(tell('hose filled', 'fact', hose.id, `${hoseName(piece)} is full.`));
    else {
      countUnsafe(scene, state, hose.id, 'water to a loose end');
      events.push(
        tell(
          'water thrown',
          'caution',
          hose.id,
          `Water pours from the loose end of ${hoseName(piece)}: shut it down before somebody is hurt.`,
        ),
      );
    }
    return events;
  }
  const voidGal = piece.capacityGal - waterIn(hose);
  if (vented) hose.airGal = onFineGrid(voidGal);
  else if (drivenOut) hose.airGal = onFineGrid(airInGal(voidGal, airPsi));
  carry();
  hose.airPsi = onGrid(squeezedPsi(hose, piece));
  return events;
}

/** Why a hose bursts now; undefined where it holds. */
function burstOf({ scene, state }: Drill, at: number): string | undefined {
  const piece = scene.hoses[at]!;
  const hose = state.hoses[at]!;
  if (hose.phase === 'burst') return undefined;
  const psi = Math.max(hose.from.psi, hose.to.psi);
  if (hose.phase === 'full' && psi > piece.burstPsi)
    return `${hoseName(piece)} bursts at ${Math.round(psi)} psi: it bears ${Math.round(piece.burstPsi)} psi.`;
  const armed = state.faults.some(
    (fault) => fault.kind === 'hose burst' && fault.hose === hose.id && inEffect(state, fault),
  );
  return armed && waterIn(hose) > 0.5 * piece.capacityGal
    ? `${hoseName(piece)} bursts.`
    : undefined;
}
