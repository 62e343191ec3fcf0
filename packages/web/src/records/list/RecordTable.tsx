import type { Kind } from '@plugside/records/model';
import { useUnits } from '../../editing/use-units.ts';
import { PlaceLink } from '../../places/PlaceLink.tsx';
import { recordPath } from '../address.ts';
import type { Values } from '../form/draft.ts';
import { useMedia } from '../use-media.ts';
import { type Cell, type Column, headText, listColumns } from './columns.ts';
import type { More } from './more.ts';
import type { Order } from './order.ts';
import { SortButton, sortedAs } from './SortButton.tsx';

interface RecordTableProps {
  kind: Kind;
  records: readonly Values[];
  moreOf(record: Values): More | undefined;
  today: string;
  /** A field that is the same in all of them. */
  without?: string;
  /** How the list is sorted, where its columns can sort it. */
  order?: Order;
  onOrder?(order: Order): void;
}

/** Records one under the other: a table at the desk, rows on a phone. */
export function RecordTable(props: RecordTableProps) {
  const narrow = useMedia('(max-width: 699px)');
  return narrow ? <Rows {...props} /> : <Table {...props} />;
}

function Table(props: RecordTableProps) {
  const { kind, records, moreOf, today, without, order, onOrder } = props;
  const units = useUnits();
  const columns = columnsOf(kind, without);
  return (
    <table className="record-table">
      <thead>
        <tr>
          {columns.map((column) => (
            <th
              key={column.head}
              scope="col"
              className={column.figures && 'figures-cell'}
              aria-sort={order && column.sort ? sortedAs(column.sort, order) : undefined}
            >
              {order && onOrder && column.sort ? (
                <SortButton field={column.sort} order={order} onOrder={onOrder}>
                  {headText(column, units)}
                </SortButton>
              ) : (
                headText(column, units)
              )}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {records.map((record) => {
          const more = moreOf(record);
          return (
            <tr key={record.id as string}>
              {columns.map(({ head, figures, cell }, at) => {
                const told = cell(record, more, units, today);
                return at === 0 ? (
                  <th key={head} scope="row">
                    <PlaceLink className="record-link" href={recordPath(kind, record.id as string)}>
                      <CellText cell={told} />
                    </PlaceLink>
                  </th>
                ) : (
                  <td key={head} className={figures && 'figures-cell'}>
                    <CellText cell={told} />
                  </td>
                );
              })}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Rows({ kind, records, moreOf, today, without }: RecordTableProps) {
  const units = useUnits();
  const [first, ...others] = columnsOf(kind, without);
  return (
    <ul className="record-rows">
      {records.map((record) => {
        const more = moreOf(record);
        const told = others
          .map((column) => ({ column, cell: column.cell(record, more, units, today) }))
          .filter(({ cell }) => cell && !cell.usual);
        return (
          <li key={record.id as string}>
            <PlaceLink className="record-row" href={recordPath(kind, record.id as string)}>
              <span className="record-row-name">
                <CellText cell={first?.cell(record, more, units, today)} />
              </span>
              <span className="record-row-told">
                {told.map(({ column, cell }) => (
                  <span key={column.head}>
                    {(column.figures || column.bare) && !cell?.plain && (
                      <span className="soft-text">{headText(column, units)} </span>
                    )}
                    <CellText cell={cell} />
                  </span>
                ))}
              </span>
            </PlaceLink>
          </li>
        );
      })}
    </ul>
  );
}

const columnsOf = (kind: Kind, without: string | undefined): readonly Column[] =>
  listColumns[kind].filter(({ field }) => without === undefined || field !== without);

function CellText({ cell }: { cell: Cell | null | undefined }) {
  if (cell === undefined) return <span className="soft-text">…</span>;
  if (cell === null) return <span className="soft-text">—</span>;
  return (
    <>
      {cell.hydrantClass && (
        <span className="class-disc" data-class={cell.hydrantClass} aria-hidden="true" />
      )}
      <span className={cell.tone === 'warning' ? 'caution-word' : undefined}>{cell.text}</span>
    </>
  );
}
