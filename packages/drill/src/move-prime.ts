import { airWayK } from './air-sucked-in.ts';
import type { DrillEvent } from './event.ts';
import { engineIsDead } from './fault.ts';
import { onFineGrid } from './grid.ts';
import { isPriming } from './priming.ts';
import { hasRules } from './rules.ts';
import type { Drill } from './running-drill.ts';
import { CHOKING_AIR_GAL } from './solve-flows.ts';
import { type PumpState, TICKS_PER_S } from './state.ts';
import { pieceName } from './words/piece-words.ts';

/** A pump in gear without water loses its prime, and has it again, after so long [s]; ours. */
const LOSES_PRIME_S = 1;
const PRIMES_S = 3;
/** Intake pressure from which on water stands against air that wants in [psi]; ours. */
const HOLDS_AIR_OUT_PSI = 1;
/** Most air that a pump holds [gal]. */
const MOST_AIR_GAL = 20;

/** One tick of a pump's prime: lost where it runs dry or draws air, found again where water comes. */
export function movePrime(drill: Drill, pump: PumpState): DrillEvent[] {
  const { scene, state, net } = drill;
  const node = net.node(`${pump.rigId}:intake`);
  const wet = node >= 0 && net.network?.cutOff[node] === 0;
  const runs = pump.inGear && !engineIsDead(state, pump.rigId) && !isPriming(drill, pump.rigId);
  const events: DrillEvent[] = [];
  const name = () => pieceName(scene, pump.rigId);
  const mayDraw = runs && (pump.intakePsi < HOLDS_AIR_OUT_PSI || pump.airGal >= CHOKING_AIR_GAL);
  const airK = mayDraw && hasRules(scene, 2) ? airWayK(scene, state, pump.rigId) : 0;
  if (airK > 0 && pump.primed && pump.intakePsi < 0) {
    const quiet = pump.airGal < 2;
    const gal = (airK * Math.sqrt(-pump.intakePsi)) / 60 / TICKS_PER_S;
    pump.airGal = onFineGrid(Math.min(MOST_AIR_GAL, pump.airGal + gal));
    if (quiet && pump.airGal >= 2)
      events.push({
        kind: 'air sucked in',
        level: 'caution',
        piece: pump.rigId,
        text: `${name()} draws air through an intake that stands open without water behind it. Shut that intake.`,
      });
  }
  const drawsAir = airK > 0 && pump.primed && pump.airGal >= CHOKING_AIR_GAL;
  const finds = wet && !(airK > 0 && pump.intakePsi < HOLDS_AIR_OUT_PSI);
  const counts = pump.primed ? runs && (!wet || drawsAir) : finds;
  pump.dryS = counts ? onFineGrid(pump.dryS + 1 / TICKS_PER_S) : 0;
  if (pump.primed && pump.dryS >= LOSES_PRIME_S) {
    pump.primed = false;
    pump.dryS = 0;
    const why = drawsAir ? 'draws air' : 'runs dry';
    return [
      ...events,
      {
        kind: 'prime lost',
        level: 'caution',
        piece: pump.rigId,
        text: `${name()} ${why} and loses its prime.`,
      },
    ];
  }
  if (!pump.primed && pump.dryS >= PRIMES_S) {
    pump.primed = true;
    pump.dryS = 0;
    return [
      ...events,
      { kind: 'primed', level: 'fact', piece: pump.rigId, text: `${name()} has its prime again.` },
    ];
  }
  return events;
}
