import { formatHoseSize, type Plan, type SupplyState } from '@plugside/fireground';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';

/** Every line: hose, flow and what it costs. */
export function linesTable(
  { figures, ink, units }: Terminal,
  plan: Plan,
  state: SupplyState,
): string {
  const rows = state.lines.map((line) => {
    const { hose, lengthFt, count } = plan.lines.find(({ id }) => id === line.id)!;
    return [
      line.id,
      `${count > 1 ? `${count} × ` : ''}${formatHoseSize(hose, units)}`,
      figures.bare(lengthFt, 'length'),
      String(line.coefficient),
      figures.bare(line.flowGpm, 'flow'),
      figures.bare(line.inletPsi, 'pressure'),
      figures.bare(line.valveLossPsi, 'pressure'),
      figures.bare(line.frictionPsi, 'pressure'),
      figures.bare(line.elevationPsi, 'pressure'),
      figures.bare(line.outletPsi, 'pressure'),
      figures.bare(line.velocityFtS, 'velocity'),
    ];
  });
  const psi = (label: string) => ({ head: figures.head(label, 'pressure'), number: true });
  const columns = [
    { head: 'Line' },
    { head: 'Hose' },
    { head: figures.head('Length', 'length'), number: true },
    { head: 'C', number: true },
    { head: figures.head('Flow', 'flow'), number: true },
    psi('In'),
    psi('Valve'),
    psi('Friction'),
    psi('Height'),
    psi('Out'),
    { head: figures.unit('velocity'), number: true },
  ];
  return `${ink.head('Lines')}\n${table(columns, rows)}`;
}
