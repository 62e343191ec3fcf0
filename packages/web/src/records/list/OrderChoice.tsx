import type { Kind } from '@plugside/records/model';
import { Choice } from '../../editing/Choice.tsx';
import { useUnits } from '../../editing/use-units.ts';
import { useMedia } from '../use-media.ts';
import { headText, listColumns } from './columns.ts';
import { type Order, orderIn, orderText } from './order.ts';

interface OrderChoiceProps {
  kind: Kind;
  order: Order;
  onOrder(order: Order): void;
}

/** The order of a list on a phone, where there are no heads to press. */
export function OrderChoice({ kind, order, onOrder }: OrderChoiceProps) {
  const units = useUnits();
  const narrow = useMedia('(max-width: 699px)');
  if (!narrow) return null;
  // Two columns may show one value: the figure's own head tells it best.
  const columns = new Map(
    listColumns[kind].flatMap((one) => (one.sort === undefined ? [] : [[one.sort, one] as const])),
  );
  const options = [...columns].flatMap(([sort, column]) => {
    const head = headText(column, units);
    const [up, down] =
      sort === 'testedOn' ? WORDS.day : column.figures ? WORDS.figures : WORDS.text;
    return [
      { value: sort, text: `${head}, ${up}` },
      { value: `-${sort}`, text: `${head}, ${down}` },
    ];
  });
  return (
    <div className="list-order">
      <span className="soft-text">Sorted by </span>
      <Choice
        label="Sorted by"
        value={orderText(order)}
        options={options}
        onChange={(asked) => onOrder(orderIn(kind, asked))}
      />
    </div>
  );
}

const WORDS = {
  day: ['oldest first', 'newest first'],
  figures: ['smallest first', 'greatest first'],
  text: ['A to Z', 'Z to A'],
} as const;
