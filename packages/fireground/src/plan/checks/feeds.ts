import { issueAt, type PlanIssue } from '../issue.ts';
import type { Plan } from '../plan.ts';
import { splitPortRef } from '../ports.ts';

const ownerOf = (ref: string) => splitPortRef(ref).pieceId;

/** Where each piece gets its water: the pieces just upstream of it. */
function feedersOf(plan: Plan): Map<string, string[]> {
  const feeders = new Map<string, string[]>();
  const add = (piece: string, feeder: string) =>
    feeders.set(piece, [...(feeders.get(piece) ?? []), feeder]);
  for (const line of plan.lines) add(ownerOf(line.to), ownerOf(line.from));
  for (const part of plan.appliances) {
    if (part.kind === 'assist-valve') add(part.id, ownerOf(part.on));
  }
  for (const part of plan.nozzles) if (part.on !== undefined) add(part.id, ownerOf(part.on));
  return feeders;
}

/** Every pump has water: a line into an intake that leads back to a source, or its open tank. */
export function feedIssues(plan: Plan): PlanIssue[] {
  const feeders = feedersOf(plan);
  const ownTank = new Set(
    plan.rigs
      .filter((rig) => rig.tankGal !== undefined && rig.tankValve === 'open')
      .map((rig) => rig.id),
  );
  const sources = new Set([...plan.hydrants, ...plan.drafts].map((source) => source.id));
  const reachesWater = (start: string) => {
    const seen = new Set<string>();
    const open = [start];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      if (seen.has(id)) continue;
      seen.add(id);
      if (sources.has(id) || ownTank.has(id)) return true;
      open.push(...(feeders.get(id) ?? []));
    }
    return false;
  };

  return plan.rigs.flatMap((rig, index) => {
    if (reachesWater(rig.id)) return [];
    const lines = feeders.has(rig.id);
    return [
      issueAt(`rigs[${index}]`, rig.id, {
        fault: lines
          ? `the lines into ${rig.id} lead back to no hydrant, draft or open tank`
          : `the pump of ${rig.id} is fed by nothing`,
        allowed: 'a line from a source to one of its intakes, or tank with tank-valve: open',
        remedy: lines
          ? 'Follow the lines upstream and join them to a source.'
          : `Lead a line to ${rig.id}.intake1, or open its tank.`,
      }),
    ];
  });
}

/** Every nozzle is on a hose or an outlet. */
export function nozzleFeedIssues(plan: Plan): PlanIssue[] {
  const fed = new Set(plan.lines.map((line) => line.to));
  return plan.nozzles.flatMap((nozzle, index) => {
    if (nozzle.on !== undefined || fed.has(`${nozzle.id}.inlet`)) return [];
    return [
      issueAt(`nozzles[${index}]`, nozzle.id, {
        fault: `nozzle ${nozzle.id} is on nothing`,
        allowed: `a line to ${nozzle.id}.inlet, or sits-on with an outlet`,
        remedy: "Lead a line to it, or name the outlet it sits on (a monitor's tip).",
      }),
    ];
  });
}
