import type { HoseSize, Plan } from '../plan/plan.ts';
import { freePortsOf } from '../plan/ports.ts';
import { nextId } from './attack-lines.ts';
import { newLine } from './pieces.ts';

/** A line from a hydrant's side outlet into the booster. */
export interface SideSuctionLine {
  hose: HoseSize;
  lengthFt?: number;
}

export const usualSideLineFt = 25;

/**
 * Adds lines from the free side outlets of the booster's hydrant into the booster's free
 * intakes: the cheapest way to more water at a valve or steamer that is the bottleneck.
 *
 * `boosterId` is left out where the plan has one booster. Throws RangeError where there is
 * no booster, no hydrant that feeds it, or too few free outlets or intakes.
 */
export function sideSuctionLines(
  plan: Plan,
  lines: readonly SideSuctionLine[],
  boosterId?: string,
): Plan {
  const boosters = plan.rigs.filter((rig) => rig.role === 'booster');
  const booster = boosters.find((rig) => boosterId === undefined || rig.id === boosterId);
  if (!booster) {
    const known = boosters.map((rig) => rig.id).join(', ') || 'none';
    throw new RangeError(`The plan has no booster ${boosterId ?? ''}; its boosters are: ${known}.`);
  }
  const hydrant = hydrantOf(plan, booster.id);
  if (!hydrant) {
    throw new RangeError(`No hydrant feeds ${booster.id}: side lines need one.`);
  }
  const outlets = freePortsOf(plan, hydrant, 'out').filter((port) => port.name.startsWith('side'));
  const intakes = freePortsOf(plan, booster, 'in');
  if (lines.length > outlets.length || lines.length > intakes.length) {
    throw new RangeError(
      `${lines.length} side lines asked for, but ${hydrant.id} has ${outlets.length} free side ` +
        `outlets and ${booster.id} has ${intakes.length} free intakes.`,
    );
  }
  let grown = plan;
  for (const [index, line] of lines.entries()) {
    const from = `${hydrant.id}.${outlets[index]?.name}`;
    const to = `${booster.id}.${intakes[index]?.name}`;
    const id = nextId(grown, 'side');
    const added = newLine(id, from, to, line.hose, line.lengthFt ?? usualSideLineFt);
    grown = { ...grown, lines: [...grown.lines, added] };
  }
  return grown;
}

/** The hydrant whose outlet, or whose valve, a rig's intake is hosed to. */
function hydrantOf(plan: Plan, rigId: string) {
  const sources = plan.lines
    .filter((line) => line.to.startsWith(`${rigId}.`))
    .map((line) => line.from.slice(0, line.from.lastIndexOf('.')));
  const valves = plan.appliances.filter((appliance) => appliance.kind === 'assist-valve');
  const behindValves = valves
    .filter((valve) => sources.includes(valve.id))
    .map((valve) => valve.on.slice(0, valve.on.lastIndexOf('.')));
  return plan.hydrants.find(
    (hydrant) => sources.includes(hydrant.id) || behindValves.includes(hydrant.id),
  );
}
