/** Adding and taking away hose. */
import {
  type AttackLineOptions,
  addAttackLines,
  type HoseSize,
  type Plan,
  sideSuctionLines,
  splitPortRef,
} from '@plugside/fireground';

/** A line from a hydrant's free side outlet into the booster. @throws RangeError where no port is free */
export function addSideLine(plan: Plan, boosterId: string, hose: HoseSize): Plan {
  return sideSuctionLines(plan, [{ hose }], boosterId);
}

/** A hand line off a rig. @throws RangeError where no discharge is free */
export function addAttackLine(plan: Plan, rigId: string, options: AttackLineOptions = {}): Plan {
  return addAttackLines(plan, rigId, [options]);
}

/** Takes a line away, and with it the nozzle, wye or monitor that nothing else then feeds. */
export function removeLine(plan: Plan, lineId: string): Plan {
  const line = plan.lines.find((one) => one.id === lineId);
  if (!line) return plan;
  const end = splitPortRef(line.to).pieceId;
  const without = { ...plan, lines: plan.lines.filter((one) => one.id !== lineId) };
  const stillFed = without.lines.some((one) => splitPortRef(one.to).pieceId === end);
  return stillFed ? without : removeOrphan(without, end);
}

function removeOrphan(plan: Plan, id: string): Plan {
  if (plan.nozzles.some((one) => one.id === id)) {
    return { ...plan, nozzles: plan.nozzles.filter((one) => one.id !== id) };
  }
  const appliance = plan.appliances.find((one) => one.id === id);
  if (!appliance || appliance.kind === 'assist-valve') return plan;
  const rest: Plan = {
    ...plan,
    appliances: plan.appliances.filter((one) => one.id !== id),
    nozzles: plan.nozzles.filter((one) => !one.on || splitPortRef(one.on).pieceId !== id),
  };
  return rest.lines
    .filter((one) => splitPortRef(one.from).pieceId === id)
    .reduce((grown, line) => removeLine(grown, line.id), rest);
}
