/**
 * Air that water carries on. What is driven out of hose that fills against water goes through the piece there
 * into the full hose that water leaves by, along that with the water, and into the next pump. Counted at the
 * pressure of the open; it takes no room from the water, and no speed. Ours.
 */
import { type PortRef, splitPortRef } from '@plugside/fireground';
import type { DrillEvent } from './event.ts';
import { onFineGrid } from './grid.ts';
import { AIR_PSI, airToPumpShare } from './hose-front.ts';
import type { HoseEnd } from './names.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { DrillState, HoseState } from './state.ts';
import { TICKS_PER_S } from './state.ts';
import { hoseName, pieceName } from './words/piece-words.ts';

const TICK_MIN = 1 / TICKS_PER_S / 60;
/** Air that comes in so closely behind other is one with it [gal of water between]. */
const ONE_WITH_GAL = 4;
/** It rides along the top of the hose and trails behind: over so much of the way that it went [-]. */
const TRAILS = 0.1;
/** Most air that a pump holds [gal]. */
const MOST_AIR_GAL = 20;
/** From so much air on a pump is heard [gal]. */
const HEARD_GAL = 2;
/** Air that comes in fits is told once: the next after so long [ticks]. */
const TOLD_AGAIN_TICKS = 5 * TICKS_PER_S;

/** One tick of the air in a full hose: it moves with the water, and trails out of the end that it comes to. */
export function moveAir(drill: Drill, at: number): DrillEvent[] {
  const { scene, state } = drill;
  const hose = state.hoses[at]!;
  if (!hose.air) return [];
  // It leaves with the water of hose that bursts or is taken off.
  if (hose.phase !== 'full') {
    delete hose.air;
    return [];
  }
  const { capacityGal } = scene.hoses[at]!;
  const moved = hose.flowGpm * TICK_MIN;
  const events: DrillEvent[] = [];
  for (const air of hose.air) {
    air.atGal = onFineGrid(air.atGal + moved);
    const end: HoseEnd = moved > 0 ? 'to' : 'from';
    const past = moved > 0 ? air.atGal - capacityGal : -air.atGal;
    if (past <= 0) continue;
    // Of what is left as much leaves as of the water that it trails in.
    const left = TRAILS * capacityGal - past;
    const now = Math.min(past, Math.abs(moved));
    const leaves = left <= 0 ? 1 : now / (left + now);
    const gal = onFineGrid(air.gal * leaves);
    air.gal = onFineGrid(air.gal - gal);
    events.push(...carryInto(drill, hose[end].port, gal, air.of));
  }
  const stays = hose.air.filter(({ gal }) => gal > 0);
  if (stays.length > 0) hose.air = stays;
  else delete hose.air;
  return events;
}

/**
 * Air that comes through a port into the piece behind it: a pump swallows it at an intake, less what an open
 * bleeder there lets out; a valve or an appliance sends it on as it sends water. Elsewhere it is gone: out of
 * a nozzle, into a main, past a pump's discharge.
 * @param gal of air, at the pressure of the open [gal]
 * @param of the hose that it was in at first
 */
export function carryInto(
  drill: Drill,
  port: PortRef | null,
  gal: number,
  of: string,
): DrillEvent[] {
  if (port === null || gal <= 0) return [];
  const { scene, state } = drill;
  const { pieceId, port: name } = splitPortRef(port);
  if (name.startsWith('intake')) {
    const pump = state.pumps.find(({ rigId }) => rigId === pieceId);
    if (!pump) return [];
    const volume = (gal * AIR_PSI) / (AIR_PSI + Math.max(0, pump.intakePsi));
    return swallow(drill, pieceId, volume * airToPumpShare(scene, state, port), of);
  }
  if (!scene.plan.appliances.some(({ id }) => id === pieceId)) return [];
  const ways = waysOutOf(state, pieceId).filter(
    // From an assist valve's pump-discharge inlet the way leads into the supply, not back to its suction.
    ({ port: out }) => name !== 'pump-discharge' || out === `${pieceId}.supply`,
  );
  const total = ways.reduce((sum, { gpm }) => sum + gpm, 0);
  for (const { hose, end, gpm } of ways)
    takeIn(scene.hoses[hose]!.capacityGal, state.hoses[hose]!, end, (gal * gpm) / total, of);
  return [];
}

/** Air into a pump, at the pressure of its intake. @param of the hose that it was in */
export function swallow(drill: Drill, rigId: string, gal: number, of: string): DrillEvent[] {
  const { scene, state } = drill;
  const pump = state.pumps.find((one) => one.rigId === rigId)!;
  let quiet = pump.airGal < HEARD_GAL;
  pump.airGal = onFineGrid(Math.min(MOST_AIR_GAL, pump.airGal + gal));
  if (pump.airGal < HEARD_GAL) return [];
  if (hasRules(scene, 3)) {
    quiet = pump.airTick === undefined || state.tick - pump.airTick > TOLD_AGAIN_TICKS;
    pump.airTick = state.tick;
  }
  if (!quiet || !pump.inGear) return [];
  const hose = state.hoses.find(({ id }) => id === of)!;
  const isAtIntake = [hose.from.port, hose.to.port].some((port) =>
    port?.startsWith(`${rigId}.intake`),
  );
  const name = hoseName(scene.hoses.find(({ id }) => id === of)!);
  return [
    {
      kind: 'air into pump',
      level: 'caution',
      piece: rigId,
      text: isAtIntake
        ? `${pieceName(scene, rigId)} swallows the air of ${name}: its pressure dips. Bleed the air off before the intake is opened.`
        : `${pieceName(scene, rigId)} swallows the air of ${name}, which the water has brought: its pressure dips until that is through.`,
    },
  ];
}

interface WayOut {
  /** Its index, and its end on the piece. */
  hose: number;
  end: HoseEnd;
  port: PortRef;
  gpm: number;
}

/** Full hose that water leaves a piece by, with its flow; where none flows, what leads on from it. */
function waysOutOf({ hoses }: DrillState, pieceId: string): WayOut[] {
  const isOn = (port: PortRef | null): port is PortRef =>
    port !== null && splitPortRef(port).pieceId === pieceId;
  const flowing: WayOut[] = [];
  const still: WayOut[] = [];
  hoses.forEach(({ phase, from, to, flowGpm }, hose) => {
    if (phase !== 'full') return;
    if (isOn(from.port)) {
      const way: WayOut = { hose, end: 'from', port: from.port, gpm: flowGpm };
      if (flowGpm > 0) flowing.push(way);
      else if (flowGpm === 0) still.push({ ...way, gpm: 1 });
    } else if (isOn(to.port) && flowGpm < 0)
      flowing.push({ hose, end: 'to', port: to.port, gpm: -flowGpm });
  });
  return flowing.length > 0 ? flowing : still;
}

function takeIn(capacityGal: number, hose: HoseState, end: HoseEnd, gal: number, of: string): void {
  const atGal = end === 'from' ? 0 : capacityGal;
  hose.air ??= [];
  const near = hose.air.find((one) => one.of === of && Math.abs(one.atGal - atGal) < ONE_WITH_GAL);
  if (near) near.gal = onFineGrid(near.gal + gal);
  else hose.air.push({ of, gal: onFineGrid(gal), atGal });
}
