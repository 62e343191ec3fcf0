import type { Plan, SupplyState } from '@plugside/fireground';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';
import { nameById } from './orders-table.ts';

/** Each hydrant: what it gives, what stays in the main, what it could give. */
export function hydrantsTable({ figures, ink }: Terminal, plan: Plan, state: SupplyState): string {
  if (state.hydrants.length === 0) return '';
  const rows = state.hydrants.map((hydrant) => [
    nameById(plan, hydrant.id),
    figures.bare(hydrant.flowGpm, 'flow'),
    figures.bare(hydrant.mainPsi, 'pressure'),
    figures.bare(hydrant.availableGpm, 'flow'),
    hydrant.outlets
      .map((outlet) => `${outlet.port} ${figures.bare(outlet.flowGpm, 'flow')}`)
      .join(', '),
  ]);
  const columns = [
    { head: 'Hydrant' },
    { head: figures.head('Flow', 'flow'), number: true },
    { head: figures.head('Left in the main', 'pressure'), number: true },
    { head: figures.head('Available', 'flow'), number: true },
    { head: figures.head('By outlet', 'flow') },
  ];
  return `${ink.head('Hydrants')}\n${table(columns, rows)}`;
}

/** Each nozzle: what it gets beside what it is rated for. */
export function nozzlesTable({ figures, ink }: Terminal, plan: Plan, state: SupplyState): string {
  if (state.nozzles.length === 0) return '';
  const rows = state.nozzles.map((nozzle) => [
    nameById(plan, nozzle.id),
    figures.bare(nozzle.flowGpm, 'flow'),
    figures.bare(nozzle.ratedGpm, 'flow'),
    figures.bare(nozzle.pressurePsi, 'pressure'),
    figures.bare(nozzle.ratedPsi, 'pressure'),
    figures.bare(nozzle.reactionLb, 'force'),
  ]);
  const columns = [
    { head: 'Nozzle' },
    { head: figures.head('Flow', 'flow'), number: true },
    { head: figures.head('Rated', 'flow'), number: true },
    { head: figures.head('Pressure', 'pressure'), number: true },
    { head: figures.head('Rated', 'pressure'), number: true },
    { head: figures.head('Reaction', 'force'), number: true },
  ];
  return `${ink.head('Nozzles')}\n${table(columns, rows)}`;
}

/** Pressures when every nozzle shuts, where they come within a tenth of what is allowed or pass it. */
export function shutOffTable(
  { figures, ink }: Terminal,
  plan: Plan,
  rest: {
    lines: readonly ShutRow[];
    intakes: readonly ShutRow[];
  },
): string {
  const near = ({ shutPsi, limitPsi, passed }: ShutRow) => passed || shutPsi > 0.9 * limitPsi;
  const rows = [
    ...rest.lines.filter(near).map((row) => ['line', row.id, row] as const),
    ...rest.intakes.filter(near).map((row) => ['intake', nameById(plan, row.id), row] as const),
  ].map(([kind, name, row]) => [
    `${name} (${kind})`,
    figures.bare(row.flowingPsi, 'pressure'),
    figures.bare(row.shutPsi, 'pressure'),
    figures.bare(row.limitPsi, 'pressure'),
    row.passed ? 'PASSED' : '',
  ]);
  if (rows.length === 0) return '';
  const columns = [
    { head: 'Where' },
    { head: figures.head('Flowing', 'pressure'), number: true },
    { head: figures.head('Shut', 'pressure'), number: true },
    { head: figures.head('Most', 'pressure'), number: true },
    { head: '' },
  ];
  return `${ink.head('When every nozzle shuts')}\n${table(columns, rows)}`;
}

interface ShutRow {
  id: string;
  flowingPsi: number;
  shutPsi: number;
  limitPsi: number;
  passed: boolean;
}
