/** Lines at the fire for a plan that ends at the engine there, as the ways to supply a building do. */
import {
  type AttackLineOptions,
  addAttackLines,
  attackSettings,
  freePortsOf,
  type Plan,
  splitPortRef,
} from '@plugside/fireground';

/** Where a plan has no demand of its own: two usual hand lines [gpm]. */
const usualDemandGpm = 300;
const handLineGpm = 150;
/** Usual size of a master stream, and the most that one is given [gpm]; ours. */
const streamGpm = 500;
const mostStreamGpm = 1000;

/**
 * A plan in which the engine at the scene feeds something. One that does is left as it is. Else the engine
 * gets two hand lines of 200 ft of 1¾ in at 150 gpm, and what its demand takes beyond them in master
 * streams, each on 100 ft of 3 in: common practice, no source. Together they take the plan's demand, but no
 * more than the pump is rated for, and a discharge stays free. The pump is set to what they need.
 */
export function withLinesAtScene(plan: Plan): Plan {
  const rig = plan.rigs.find(({ id }) => id === plan.scene);
  if (!rig || plan.lines.some(({ from }) => splitPortRef(from).pieceId === rig.id)) return plan;
  const free = freePortsOf(plan, rig, 'out').length - 1;
  if (free < 1) return plan;
  const demandGpm = Math.min(plan.demandGpm ?? usualDemandGpm, rig.ratedGpm);
  const hands = Math.min(2, free, Math.max(1, Math.ceil(demandGpm / handLineGpm)));
  const rest = demandGpm - hands * handLineGpm;
  // What a line more would take by under a half is left to those that are there.
  const streams = Math.min(free - hands, rest < streamGpm / 4 ? 0 : Math.ceil(rest / streamGpm));
  const ratedGpm = Math.min(mostStreamGpm, Math.round(rest / Math.max(1, streams) / 25) * 25);
  const stream: AttackLineOptions = {
    hose: '3',
    lengthFt: 100,
    nozzle: { kind: 'fog', ratedGpm, ratedPsi: 100 },
    use: 'master stream',
  };
  const lines = [...Array(hands).fill({}), ...Array(Math.max(0, streams)).fill(stream)];
  const settings = attackSettings(addAttackLines(plan, rig.id, lines));
  return {
    ...settings.plan,
    rigs: settings.plan.rigs.map((one) =>
      one.id === rig.id
        ? { ...one, setting: { mode: 'governed', pdpPsi: Math.ceil(settings.pdpPsi / 5) * 5 } }
        : one,
    ),
  };
}
