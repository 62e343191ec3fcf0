import type { LimitCheck } from '@plugside/fireground';
import { quantityOfUnit } from '../output/figures.ts';
import { table } from '../output/table.ts';
import type { Terminal } from '../terminal.ts';

/** Every limit with its margin, the tightest first; the unit of each row stands beside it. */
export function limitsTable({ figures, ink }: Terminal, limits: readonly LimitCheck[]): string {
  const ranked = [...limits].sort((one, two) => one.marginFraction - two.marginFraction);
  const rows = ranked.map((limit) => {
    const quantity = quantityOfUnit[limit.unit];
    return [
      limit.label,
      figures.bare(limit.value, quantity),
      `${limit.sense === 'min' ? 'least' : 'most'} ${figures.bare(limit.limit, quantity)}`,
      figures.bare(limit.margin, quantity),
      figures.unit(quantity),
      stands(limit),
      limit.origin.kind,
    ];
  });
  const columns = [
    { head: 'Limit' },
    { head: 'Now', number: true },
    { head: 'Allowed', number: true },
    { head: 'Room', number: true },
    { head: 'Unit' },
    { head: '' },
    { head: 'From' },
  ];
  return `${ink.head('Limits, the tightest first')}\n${table(columns, rows)}`;
}

function stands(limit: LimitCheck): string {
  if (limit.binds && Math.abs(limit.marginFraction) < 1e-3) return 'binds';
  if (limit.passed) return limit.weight === 'hard' ? 'PASSED' : 'caution';
  return limit.binds ? 'binds' : '';
}
