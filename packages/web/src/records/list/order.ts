/** How a kind's list is sorted. */
import type { Kind } from '@plugside/records/model';
import { type Column, listColumns } from './columns.ts';

export interface Order {
  field: string;
  descending: boolean;
}

const TESTED_ON: Order = { field: 'testedOn', descending: true };
const BY_NAME: Order = { field: 'name', descending: false };

/** Tests newest first, all else by name. */
export function usualOrder(kind: Kind): Order {
  return listColumns[kind].some(isNamed) ? BY_NAME : TESTED_ON;
}

const isNamed = ({ sort }: Column): boolean => sort === 'name';

/** As an address has it and the server takes it: a minus in front turns it round. */
export const orderText = ({ field, descending }: Order): string =>
  descending ? `-${field}` : field;

/** The order that an address asks for; the usual one where none of the list's columns has it. */
export function orderIn(kind: Kind, asked: string | null): Order {
  const descending = asked?.startsWith('-') ?? false;
  const field = descending ? asked?.slice(1) : asked;
  const known = listColumns[kind].some(({ sort }) => sort !== undefined && sort === field);
  return field && known ? { field, descending } : usualOrder(kind);
}

/** What a press on a column's head asks for: its own order, or the other way round. */
export function pressed(field: string, order: Order): Order {
  if (order.field === field) return { field, descending: !order.descending };
  return { field, descending: field === 'testedOn' };
}
