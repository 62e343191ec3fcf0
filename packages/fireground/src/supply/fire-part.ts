/** The engines at the fire in a way: what each takes, what it is told, and how many more it would take. */
import type { LimitCheck, Notice, RigOrder } from '../questions/answers.ts';
import { sayIn } from '../words/say.ts';
import type { Arrangement, AtFire } from './arrangement.ts';
import type { CandidateContext } from './candidate.ts';
import type { FireEngine } from './choice.ts';
import { rigName } from './crew.ts';
import { firePumpCheck } from './fire-pumps.ts';
import { listed, rigNames, sourceId, sourceName } from './leg.ts';
import type { SolvedWay } from './solve-legs.ts';

/** The engines of a solved arrangement, the attack engine first. */
export function fireEngines(context: CandidateContext, arrangement: Arrangement): FireEngine[] {
  const { fire, solver } = context;
  const taken = solver.takenGpm(arrangement);
  return arrangement.atFire.map((engine, at): FireEngine => {
    const { rig } = engine;
    const mostGpm = taken[at]!;
    return {
      rigId: rig.rig.id,
      rigName: rigName(rig),
      sources: [...new Set(engine.lines.map(({ leg }) => sourceId(arrangement.legs[leg]!)))],
      pumpMostGpm: engine.gpm,
      pdpPsi: fire.pressure.pdpPsi,
      mostGpm,
      limit: firePumpCheck(rig, mostGpm, fire.pressure),
    };
  });
}

/**
 * The orders of a solved way with one for each engine at the fire. The plan draws every line to the
 * attack engine: where several take them each is told its own water.
 */
export function fireOrders(
  { fire: { pressure }, units }: CandidateContext,
  arrangement: Arrangement,
  { orders, setIntakePsi, setFireGpm }: SolvedWay,
): RigOrder[] {
  const { atFire } = arrangement;
  if (atFire.length < 2) return orders;
  const say = sayIn(units);
  const setting = { mode: 'governed' as const, pdpPsi: pressure.pdpPsi };
  const own = atFire.map((engine, at): RigOrder => {
    const comes = `${say.full(setFireGpm[at]!, 'flow')} coming from ${linesWords(arrangement, engine)}`;
    return {
      id: engine.rig.rig.id,
      setting,
      pdpPsi: pressure.pdpPsi,
      radio: `${say.full(setIntakePsi, 'pressure')} in; ${comes}.`,
      gate: [],
    };
  });
  const [attack, ...others] = own as [RigOrder, ...RigOrder[]];
  return [
    ...orders.map((order) => (order.id === attack.id ? { ...order, radio: attack.radio } : order)),
    ...others,
  ];
}

/** "H-209's line", "H-1's second line". */
function linesWords({ legs }: Arrangement, { lines }: AtFire): string {
  const words = lines.map(({ leg: at, line }) => {
    const leg = legs[at]!;
    const own = lines.filter((one) => one.leg === at).length;
    const all = leg.stretches.at(-1)!.lines.length;
    const which = own < all ? `${line > 0 ? 'second' : 'first'} line` : all > 1 ? 'lines' : 'line';
    return `${sourceName(leg)}'s ${which}`;
  });
  return listed([...new Set(words)]);
}

/** How many engines the water takes at the fire, and how many more the demand would take. */
export function fireNotices(
  context: CandidateContext,
  arrangement: Arrangement,
  mostGpm: number,
): Notice[] {
  const { crew, demandGpm, fire, solver, units } = context;
  const say = sayIn(units);
  const { atFire } = arrangement;
  const notices: Notice[] = [];
  const names = rigNames(atFire.map(({ rig }) => rig));
  if (atFire.length > 1) {
    notices.push({
      level: 'fact',
      text: `Needs ${atFire.length} engines at the fire: ${names}. The plan draws every line to ${rigName(crew.attack)}.`,
    });
  }
  const held = mostGpm < solver.broughtGpm(arrangement) - 1 && mostGpm < demandGpm;
  if (held) {
    const most = say.full(solver.broughtGpm(arrangement), 'flow');
    const verb = atFire.length > 1 ? 'put' : 'puts';
    notices.push({
      level: 'caution',
      text: `${most} could be brought; at the fire ${names} ${verb} out ${say.full(mostGpm, 'flow')} at ${say.full(fire.pressure.pdpPsi, 'pressure')}. Another engine there would take more.`,
    });
  }
  return notices;
}

/** The attack engine's pump as the limit of a flow beyond it [gpm]; undefined where it is not. */
export function attackPumpCheck(
  { fire }: CandidateContext,
  flowGpm: number,
): LimitCheck | undefined {
  const { rig, gpm } = fire.takers[0];
  return flowGpm > gpm ? firePumpCheck(rig, gpm, fire.pressure) : undefined;
}
