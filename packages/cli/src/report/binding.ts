import type { LimitCheck } from '@plugside/fireground';
import { quantityOfUnit } from '../output/figures.ts';
import type { Terminal } from '../terminal.ts';

/** `Engine 7's intake is at 10 psi; its limit is 10 psi.` */
export function limitSentence({ figures }: Terminal, limit: LimitCheck): string {
  const quantity = quantityOfUnit[limit.unit];
  return `${limit.label}: ${figures.full(limit.value, quantity)}, limit ${figures.full(limit.limit, quantity)}`;
}

/** What stops an answer from being greater, in one line; empty where nothing does. */
export function stoppedBy(terminal: Terminal, binding: readonly LimitCheck[]): string {
  if (binding.length === 0) return '';
  return `Stopped by ${binding.map((limit) => limitSentence(terminal, limit)).join('; ')}.`;
}

/** The same in few words, for a column. */
export function bindingNames(binding: readonly LimitCheck[]): string {
  return binding.map((limit) => limit.label).join('; ') || '-';
}
