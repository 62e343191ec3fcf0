/** A line that wants less than its pump holds: charged, opened, and gated to its own pressure. */
import { hoseCatalogue, type Plan, splitPortRef } from '@plugside/fireground';
import type { DrillStep } from '../drill-step.ts';
import { gatedOpening, lineGates } from '../line-gates.ts';
import type { PlayedRole } from '../role.ts';
import { nozzleStep } from './step-makers.ts';

interface GatedLine {
  /** `third line`: its steps are `third line charged` and `third line gated`, and between them `opens`. */
  stem: string;
  opens: string;
  hose: string;
  nozzle: string;
  /** What the pump holds [psi]. */
  pumpPsi: number;
  /** Words of the step that charges it, and of the one that opens its nozzle. */
  charge: Pick<DrillStep, 'why' | 'water'>;
  open: Pick<DrillStep, 'what' | 'why' | 'water'>;
}

/**
 * The three steps of a line that takes less than its pump holds. Its discharge is opened part of the way, and
 * set by its own gauge once its nozzle flows: at rest a gate takes nothing off.
 * @throws RangeError where the plan has no such line that has to be gated
 */
export function gatedLineSteps(
  plan: Plan,
  role: PlayedRole,
  { stem, opens, hose, nozzle, pumpPsi, charge, open }: GatedLine,
): DrillStep[] {
  const gate = lineGates(plan).get(hose);
  const line = plan.lines.find(({ id }) => id === hose);
  if (!gate || !line) throw new RangeError(`Line ${hose} need not be gated in this plan.`);
  const valve = line.from;
  const discharge = splitPortRef(valve).port.replace(/(\d+)$/, ' $1');
  const opening = gatedOpening(gate, pumpPsi, hoseCatalogue[line.hose].couplingIn);
  const psi = Math.round(gate.psi);
  const share = 5 * Math.round(20 * opening);
  return [
    {
      id: `${stem} charged`,
      role,
      what: `Open ${discharge} slowly, to about ${share} %.`,
      why: `This line wants ${psi} psi, and the pump holds ${pumpPsi} psi for others. ${charge.why}`,
      water: charge.water,
      hazard: 'Charge it slowly, the crew ready.',
      done: { is: 'valve at least', valve, opening: 0.5 * opening },
      how: [{ do: 'set valve', valve, opening, overS: 5 }],
    },
    {
      ...nozzleStep(opens, nozzle, {
        ...open,
        hazard: 'The nozzle pushes back as it opens: stand firm, open it slowly.',
      }),
    },
    {
      id: `${stem} gated`,
      role,
      what: `Gate ${discharge} until its gauge reads ${psi} psi while the nozzle flows.`,
      why: `That is the nozzle’s own pressure and what its hose takes. All of ${pumpPsi} psi would put it far over its rating.`,
      water: 'The gate takes off what the other lines need and this one does not.',
      hazard:
        'Ungated, the nozzle flows more than it is rated for and pushes back harder: it can throw its crew down.',
      done: {
        is: 'all',
        of: [
          { is: 'nozzle flows', nozzle, share: FLOWS_SHARE },
          { is: 'line flows at', hose, psi, withinPsi: GAUGE_WITHIN_PSI },
        ],
      },
      how: [{ do: 'set valve', valve, opening, overS: 3 }],
    },
  ];
}

/** On its way open a nozzle passes the line's pressure, too: what counts is once it flows [-]; as in its own step. */
const FLOWS_SHARE = 0.8;
/** How near to it a hand on a gate comes [psi]; ours. */
const GAUGE_WITHIN_PSI = 10;

/** A plan in which a line is gated from the start to what it wants. @param pumpPsi what its pump holds [psi] */
export function withLineGated(plan: Plan, hose: string, pumpPsi: number): Plan {
  const gate = lineGates(plan).get(hose);
  if (!gate) return plan;
  const gated = { lossPsi: pumpPsi - gate.psi, atGpm: gate.gpm };
  return {
    ...plan,
    lines: plan.lines.map((line) => (line.id === hose ? { ...line, valve: { gated } } : line)),
  };
}
