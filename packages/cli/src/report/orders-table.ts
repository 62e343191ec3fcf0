import { nameOf, type Plan, pieceOf, type RigOrder, type SupplyState } from '@plugside/fireground';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';

/** Each pump: what it is set to, what it sees, and what its operator says. */
export function ordersTable(
  { figures, ink }: Terminal,
  plan: Plan,
  state: SupplyState,
  orders: readonly RigOrder[],
): string {
  const rows = orders.map((order) => {
    const rig = state.rigs.find((candidate) => candidate.id === order.id);
    const psi = (value: number | undefined) =>
      value === undefined ? '-' : figures.bare(value, 'pressure');
    return [
      nameById(plan, order.id),
      settingOf(order, psi),
      psi(rig?.intakePsi),
      psi(rig?.pdpPsi),
      psi(rig?.netPsi),
      rig ? figures.bare(rig.flowGpm, 'flow') : '-',
      rig?.state ?? '',
    ];
  });
  const columns = [
    { head: 'Pump' },
    { head: figures.head('Set', 'pressure'), number: true },
    { head: figures.head('Intake', 'pressure'), number: true },
    { head: figures.head('Discharge', 'pressure'), number: true },
    { head: figures.head('Net', 'pressure'), number: true },
    { head: figures.head('Flow', 'flow'), number: true },
    { head: 'State' },
  ];
  const spoken = orders.map((order) => `  ${nameById(plan, order.id)}: "${order.radio}"`);
  return [
    `${ink.head('Pumps')}\n${table(columns, rows)}`,
    `${ink.head('On the radio')}\n${spoken.join('\n')}`,
  ].join('\n\n');
}

function settingOf(order: RigOrder, psi: (value: number) => string): string {
  const { setting } = order;
  if (setting.mode === 'governed') return psi(setting.pdpPsi);
  if (setting.mode === 'throttled') return `${Math.round(setting.speedFraction * 100)} % speed`;
  return 'not pumping';
}

/** Lines to gate down, with the loss to take at each valve. */
export function gateTable({ figures, ink }: Terminal, orders: readonly RigOrder[]): string {
  const rows = orders.flatMap(({ gate }) =>
    gate.map(({ line, lossPsi, atGpm }) => [
      line,
      figures.bare(lossPsi, 'pressure'),
      figures.bare(atGpm, 'flow'),
    ]),
  );
  if (rows.length === 0) return '';
  const columns = [
    { head: 'Line' },
    { head: figures.head('Take at its valve', 'pressure'), number: true },
    { head: figures.head('While it flows', 'flow'), number: true },
  ];
  return `${ink.head('Gate down')}\n${table(columns, rows)}`;
}

/** A piece's name, else its id. */
export function nameById(plan: Plan, id: string): string {
  const piece = pieceOf(plan, id);
  return piece ? nameOf(piece) : id;
}
