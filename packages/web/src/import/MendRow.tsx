import type { Mapping } from '@plugside/records/import-fields';
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { RefusedRow } from '../api/imports.ts';
import { cellText } from './first-values.ts';
import { columnsAtFault, rowWords } from './mend-columns.ts';

interface MendRowProps {
  row: RefusedRow;
  mapping: Mapping;
  /** Cells written anew so far. */
  values: Readonly<Record<string, string>>;
  onChange(values: Readonly<Record<string, string>>): void;
}

/** One refused row: what it is, what is wrong, and the cells to write anew. */
export function MendRow({ row, mapping, values, onChange }: MendRowProps) {
  const [all, setAll] = useState(false);
  const atFault = columnsAtFault(row, mapping);
  const every = Object.keys(row.values).filter((column) => !column.startsWith('refused_'));
  const columns = all ? every : atFault;
  const { reason, remedy } = row.refusal;
  const set = (name: string, text: string) => {
    const { [name]: _, ...rest } = values;
    onChange(text === cellText(row.values[name]) ? rest : { ...rest, [name]: text });
  };
  return (
    <li className="mend-row">
      <div className="mend-which">
        <b>Row {row.row}</b> <span>{rowWords(row, mapping)}</span>
        <p className="mend-why">{reason}</p>
        <p className="soft-text">{remedy}</p>
      </div>
      <div className="mend-cells">
        {columns.map((name) => (
          <TextField
            key={name}
            className={name in values ? 'text-entry entry-changed' : 'text-entry'}
            value={values[name] ?? cellText(row.values[name])}
            onChange={(text) => set(name, text)}
            autoComplete="off"
            aria-label={`${name}, row ${row.row}`}
          >
            <Label>{name}</Label>
            <Input placeholder="blank" />
          </TextField>
        ))}
        {columns.length === 0 && (
          <p className="soft-text">
            No cell can mend this row: its place is in the file’s drawing. Mend it in the program
            that the file came from, or write the place into the CSV’s refused_geometry, such as
            POINT (-71.05 42.36).
          </p>
        )}
        {!all && every.length > columns.length && (
          <Button className="quiet-button" onPress={() => setAll(true)}>
            All {every.length} columns
          </Button>
        )}
      </div>
    </li>
  );
}
