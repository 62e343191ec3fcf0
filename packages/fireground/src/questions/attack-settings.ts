/** The scene pump's side: what discharge pressure its open lines need, and which to gate down. */
import { PSI_PER_FT } from '@plugside/hydraulics';
import { nozzleRatedGpm } from '../catalogue/nozzles.ts';
import { downstreamOf } from '../network/downstream.ts';
import { nodeOfPort } from '../network/pieces-to-links.ts';
import { planNetwork } from '../network/plan-network.ts';
import { endElevations } from '../network/read-state.ts';
import type { Line, Loss, Plan } from '../plan/plan.ts';
import { splitPortRef } from '../plan/ports.ts';
import { fallingRoot } from './root.ts';

/** An excess under this [psi] is left alone: no hand on a valve holds it. Ours. */
const GATE_FROM_PSI = 3;

export interface AttackSettings {
  /** Lowest discharge pressure that gives every open nozzle its rated pressure [psi]; 0 with none open. */
  pdpPsi: number;
  /** What they take then [gpm]. */
  demandGpm: number;
  /** The plan with its lines open or gated so that each gets its own. */
  plan: Plan;
  gate: { line: string; lossPsi: number; atGpm: number }[];
}

/** Flow of each open nozzle and sprinkler past the scene at its rated pressure [gpm]. */
export function ratedDemands(plan: Plan): Map<string, { gpm: number; psi: number }> {
  const past = downstreamOf(plan, plan.scene);
  const demands = new Map<string, { gpm: number; psi: number }>();
  const shut = new Set(
    plan.lines.filter((line) => line.valve === 'shut').map((line) => splitPortRef(line.to).pieceId),
  );
  for (const nozzle of plan.nozzles) {
    const fedBy = nozzle.on ? splitPortRef(nozzle.on).pieceId : nozzle.id;
    if (!past.has(nozzle.id) || !nozzle.open) continue;
    if (
      shut.has(fedBy) &&
      !plan.lines.some((line) => line.valve !== 'shut' && splitPortRef(line.to).pieceId === fedBy)
    )
      continue;
    demands.set(nozzle.id, { gpm: nozzleRatedGpm(nozzle), psi: nozzle.ratedPsi });
  }
  for (const appliance of plan.appliances) {
    if (appliance.kind === 'sprinkler' && past.has(appliance.id)) {
      demands.set(appliance.id, { gpm: appliance.demandGpm, psi: appliance.basePsi });
    }
  }
  return demands;
}

/** What the scene needs [gpm]: the plan's own figure, else its open nozzles at their rated pressure. */
export function demandOf(plan: Plan): number {
  if (plan.demandGpm !== undefined) return plan.demandGpm;
  let total = 0;
  for (const { gpm } of ratedDemands(plan).values()) total += gpm;
  return total;
}

/** Works out the scene pump's setting and each line's gating with every open nozzle at its rating. */
export function attackSettings(plan: Plan): AttackSettings {
  const demands = ratedDemands(plan);
  const open: Plan = {
    ...plan,
    lines: plan.lines.map((line) =>
      typeof line.valve === 'object' ? { ...line, valve: 'open' } : line,
    ),
  };
  if (demands.size === 0) return { pdpPsi: 0, demandGpm: 0, plan, gate: [] };
  const flows = new Map([...demands].map(([id, { gpm }]) => [id, gpm]));
  const { network } = planNetwork(open, { part: 'attack', demandsGpm: flows });
  network.setFixedPsi(`${plan.scene}:discharge`, 0);
  network.solve();
  const needs = new Map<string, number>();
  let demandGpm = 0;
  for (const [id, { gpm, psi }] of demands) {
    demandGpm += gpm;
    needs.set(id, psi - network.pressureOf(outletNode(plan, id)) + nozzleRisePsi(plan, id));
  }
  const pdpPsi = Math.max(...needs.values());
  const gate: AttackSettings['gate'] = [];
  const past = downstreamOf(plan, plan.scene);
  const visited = new Set<string>();
  const gateFrom = (piece: string, standing: number) => {
    visited.add(piece);
    for (const line of open.lines) {
      if (splitPortRef(line.from).pieceId !== piece || !past.has(line.id)) continue;
      if (line.valve === 'shut') continue;
      const need = needOf(open, line, needs, new Set());
      if (need === Number.NEGATIVE_INFINITY) continue;
      const excess = standing - need;
      const flow = network.flowOf(`${line.id}:hose`);
      let left = standing;
      // Lines side by side into one appliance each lose the same: what they share stays shared.
      if (excess > GATE_FROM_PSI && flow > 1) {
        gate.push({ line: line.id, lossPsi: excess, atGpm: flow });
        left = need;
      }
      const to = splitPortRef(line.to).pieceId;
      if (!visited.has(to)) gateFrom(to, left);
    }
  };
  gateFrom(plan.scene, pdpPsi);
  const gated = new Map(gate.map(({ line, lossPsi, atGpm }) => [line, { lossPsi, atGpm } as Loss]));
  return {
    pdpPsi,
    demandGpm,
    gate,
    plan: {
      ...open,
      lines: open.lines.map((line) => {
        const loss = gated.get(line.id);
        return loss ? { ...line, valve: { gated: loss } } : line;
      }),
    },
  };
}

function outletNode(plan: Plan, id: string): string {
  const nozzle = plan.nozzles.find((candidate) => candidate.id === id);
  if (!nozzle) return `${id}:in`;
  return nozzle.on ? nodeOfPort(plan, nozzle.on) : `${id}.inlet`;
}

/** Height of a tip above the port it sits on, as pressure [psi]. */
function nozzleRisePsi(plan: Plan, id: string): number {
  const nozzle = plan.nozzles.find((candidate) => candidate.id === id);
  if (!nozzle?.on) return 0;
  const { toFt } = endElevations(plan, { from: nozzle.on, to: nozzle.on } as Line);
  return PSI_PER_FT * (nozzle.elevationFt - toFt);
}

/** Greatest need [psi at the scene's discharge] of the nozzles behind a line. */
function needOf(
  plan: Plan,
  line: Line,
  needs: ReadonlyMap<string, number>,
  seen: Set<string>,
): number {
  const piece = splitPortRef(line.to).pieceId;
  if (seen.has(piece)) return Number.NEGATIVE_INFINITY;
  const visited = new Set([...seen, piece]);
  let need = needs.get(piece) ?? Number.NEGATIVE_INFINITY;
  for (const nozzle of plan.nozzles) {
    if (nozzle.on && splitPortRef(nozzle.on).pieceId === piece)
      need = Math.max(need, needs.get(nozzle.id) ?? need);
  }
  for (const next of plan.lines) {
    if (splitPortRef(next.from).pieceId === piece)
      need = Math.max(need, needOf(plan, next, needs, visited));
  }
  return need;
}

/**
 * The scene pump's discharge pressure [psi] at which its lines take `flowGpm`, at most `mostPsi`:
 * what a short supply leaves them.
 */
export function pdpForFlow(plan: Plan, flowGpm: number, mostPsi: number): number {
  const { network } = planNetwork(plan, { part: 'attack' });
  const links = network.linkIds
    .filter((id) => id.endsWith(':tip') || id.endsWith(':heads'))
    .map((id) => network.linkIndex(id));
  const over = (pdpPsi: number) => {
    network.setFixedPsi(`${plan.scene}:discharge`, pdpPsi);
    network.solve({ warm: true });
    let total = 0;
    for (const at of links) total += network.flowGpm[at]!;
    return flowGpm - total;
  };
  const atMost = over(mostPsi);
  // Rounding aside, the lines may just take all of it.
  if (atMost >= -0.01) return mostPsi;
  const atRest = over(0);
  if (atRest < 0) return 0;
  return fallingRoot(over, { low: 0, high: mostPsi, lowValue: atRest, highValue: atMost }, 1e-6);
}
