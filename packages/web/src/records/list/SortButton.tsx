import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { type Order, pressed } from './order.ts';

interface SortButtonProps {
  field: string;
  order: Order;
  onOrder(order: Order): void;
  children: ReactNode;
}

/** A column's head that sorts the list by it, and the other way round when pressed again. */
export function SortButton({ field, order, onOrder, children }: SortButtonProps) {
  const by = order.field === field;
  return (
    <Button className="sort-button" onPress={() => onOrder(pressed(field, order))}>
      {children}
      <span className="sort-mark" aria-hidden="true">
        {by ? (order.descending ? '▼' : '▲') : ''}
      </span>
    </Button>
  );
}

export function sortedAs(field: string, order: Order): 'ascending' | 'descending' | undefined {
  if (order.field !== field) return undefined;
  return order.descending ? 'descending' : 'ascending';
}
