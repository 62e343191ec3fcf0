/** Valves that are opened onto hose or a pump faster than it should be charged. */
import { splitPortRef } from '@plugside/fireground';
import { defaultBenchmarks } from './defaults.ts';
import type { DrillEvent } from './event.ts';
import { waterIn } from './hose-front.ts';
import { THROWS_PSI } from './live-ports.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import type { Benchmarks, DrillScene, SceneValve } from './scene.ts';
import { type DrillState, type HoseState, TICKS_PER_S } from './state.ts';
import { keep } from './tally-acts.ts';
import { occasion } from './tally-occasions.ts';
import { hoseWords, valveName } from './words/piece-words.ts';

/** So far a valve may be cracked as fast as a hand can, to let the air out ahead of the water; ours. */
const CRACKED = 0.25;
/** From this bore on a valve is a large one [in]. */
const LARGE_BORE_IN = 3.5;
/** So full a hose waits for its nozzle alone, its air squeezed: nothing rushes into it; ours. */
const SQUEEZED_FROM = 0.75;
/** What rounding to ticks may take off a time [s]. */
const ROUNDED_S = 0.1;

/** Keeps when a valve that stood shut began to open. */
export function beginsToOpen(
  scene: DrillScene,
  state: DrillState,
  { id, opening }: { id: string; opening: number },
  target: number,
): void {
  if (!hasRules(scene, 3) || opening > 0 || target <= 0) return;
  const others = (state.tally.openings ?? []).filter(({ valve }) => valve !== id);
  state.tally.openings = [...others, { valve: id, fromTick: state.tick }];
}

/** Least seconds from shut to all the way open, by what is opened; undefined: as fast as a hand can. */
export function leastOpeningS(
  { kind, boreIn }: Pick<SceneValve, 'kind' | 'boreIn'>,
  benchmarks: Benchmarks,
): number | undefined {
  const of = (key: 'hydrantOpenS' | 'handleOpenS' | 'largeOpenS' | 'lineOpenS') =>
    benchmarks[key] ?? defaultBenchmarks[key];
  switch (kind) {
    case 'hydrant stem':
      return of('hydrantOpenS');
    case 'assist handle':
      return of('handleOpenS');
    case 'hydrant gate':
    case 'intake':
      return of('largeOpenS');
    case 'discharge':
    case 'appliance gate':
      return of(boreIn >= LARGE_BORE_IN ? 'largeOpenS' : 'lineOpenS');
    default:
      return undefined;
  }
}

/**
 * One tick of valves that are being opened: one that has come past a quarter in less of its time than that
 * is told and counted, once until it is shut again, where it charges empty hose or lets a hose into a pump.
 * Time counts from when it left its seat, so that one that is cracked, waited at and then opened is not.
 */
export function countOpenings({ scene, state }: Drill): DrillEvent[] {
  const { openings = [] } = state.tally;
  const events: DrillEvent[] = [];
  for (const one of openings) {
    if (one.told) continue;
    const at = scene.valves.findIndex(({ id }) => id === one.valve);
    const piece = scene.valves[at]!;
    const { opening } = state.valves[at]!;
    const leastS = leastOpeningS(piece, scene.benchmarks);
    if (leastS === undefined || opening < CRACKED) continue;
    const tookS = (state.tick + 1 - one.fromTick) / TICKS_PER_S;
    // Long open: there is no more to tell of it, nor occasion to note.
    if (tookS >= leastS && state.tally.occasions?.includes('opening')) continue;
    const hose = charged(scene, state, piece);
    if (hose === undefined) continue;
    occasion(scene, state, 'opening');
    if (tookS >= leastS * opening - ROUNDED_S) continue;
    one.told = true;
    state.tally.openedFast ??= [];
    keep(state.tally.openedFast, { tick: state.tick, valve: one.valve, hose });
    const allS = Math.round((10 * tookS) / opening) / 10;
    const what =
      piece.kind === 'intake'
        ? `the water in ${hoseWords(scene, hose)} hits the pump`
        : `${hoseWords(scene, hose)} fills with a rush, jumps and whips`;
    events.push({
      kind: 'opened fast',
      level: 'caution',
      piece: one.valve,
      text: `${valveName(scene, one.valve)} is opened at ${allS} s for all of its way: ${what}. Take ${leastS} s or more.`,
    });
  }
  return events;
}

/** The hose that an open valve charges, or lets into a pump; undefined where nothing rushes. */
function charged(
  scene: DrillScene,
  state: DrillState,
  { id, kind, pieceId }: SceneValve,
): string | undefined {
  const isOpen = (valve: string) =>
    (state.valves.find((one) => one.id === valve)?.opening ?? 1) > 0;
  if (kind === 'intake') {
    const full = state.hoses.find(
      ({ phase, from, to }) =>
        phase === 'full' && [from, to].some(({ port, psi }) => port === id && psi > THROWS_PSI),
    );
    return full?.id;
  }
  if (!(pressureBehind(state, kind, pieceId) > THROWS_PSI)) return undefined;
  const shareFull = (hose: HoseState) =>
    waterIn(hose) / scene.hoses.find(({ id: one }) => one === hose.id)!.capacityGal;
  const fills = state.hoses.find((hose) => {
    const { phase, from, to } = hose;
    if (phase !== 'filling' || shareFull(hose) > SQUEEZED_FROM) return false;
    return [from.port, to.port].some((port) => {
      if (port === null || !isOpen(port)) return false;
      if (kind === 'assist handle') return port === `${pieceId}.pump-suction`;
      if (kind !== 'hydrant stem') return port === id;
      const { pieceId: owner, port: name } = splitPortRef(port);
      const on = scene.plan.appliances.find((one) => one.id === owner);
      if (on?.kind !== 'assist-valve') return owner === pieceId;
      if (splitPortRef(on.on).pieceId !== pieceId) return false;
      return name === 'supply' || (name === 'pump-suction' && isOpen(`${owner}.handle`));
    });
  });
  return fills?.id;
}

/** What stands behind a valve, to rush through it [psi]. */
function pressureBehind(state: DrillState, kind: SceneValve['kind'], pieceId: string): number {
  const hydrant = state.hydrants.find(({ id }) => id === pieceId);
  if (hydrant) return kind === 'hydrant stem' ? hydrant.mainPsi : hydrant.barrelPsi;
  const pump = state.pumps.find(({ rigId }) => rigId === pieceId);
  if (pump) return pump.dischargePsi;
  const assist = state.assistValves.find(({ id }) => id === pieceId);
  if (assist) return assist.hydrantPsi;
  const feeding = state.hoses.filter(
    ({ to, phase }) =>
      phase === 'full' && to.port !== null && splitPortRef(to.port).pieceId === pieceId,
  );
  return Math.max(0, ...feeding.map(({ to }) => to.psi));
}
