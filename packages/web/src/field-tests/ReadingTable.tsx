import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';

interface ReadingTableProps {
  name: string;
  /** Heads of the columns, units and all. */
  heads: readonly string[];
  rows: readonly { key: number; cells: readonly ReactNode[] }[];
  onRemove(key: number): void;
  onAdd(): void;
}

/** Readings one under the other, each cell a field. */
export function ReadingTable({ name, heads, rows, onRemove, onAdd }: ReadingTableProps) {
  return (
    <div className="test-group">
      <table className="reading-table">
        <caption>{name}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="hidden-text">Reading</span>
            </th>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells }, index) => (
            <tr key={key}>
              <th scope="row">{index + 1}</th>
              {cells.map((cell, at) => (
                <td key={heads[at]}>{cell}</td>
              ))}
              <td>
                <Button
                  className="quiet-button remove-button"
                  aria-label={`Remove reading ${index + 1}`}
                  onPress={() => onRemove(key)}
                >
                  ×
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button className="quiet-button" onPress={onAdd}>
        + Another reading
      </Button>
    </div>
  );
}
