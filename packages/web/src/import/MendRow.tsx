import type { Mapping } from '@plugside/records/import-fields';
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { RefusedRow } from '../api/imports.ts';
import { cellText } from './first-values.ts';
import { columnsAtFault, isPlaceAtFault, rowWords } from './mend-columns.ts';
import type { MendDraft } from './mend-drafts.ts';
import { PlaceEntry } from './PlaceEntry.tsx';

interface MendRowProps {
  row: RefusedRow;
  mapping: Mapping;
  /** What was written anew so far. */
  draft: MendDraft;
  onChange(draft: MendDraft): void;
}

/** One refused row: what it is, what is wrong, and the cells and the place to write anew. */
export function MendRow({ row, mapping, draft, onChange }: MendRowProps) {
  const [all, setAll] = useState(false);
  const { values, place } = draft;
  const withPlace = isPlaceAtFault(row, mapping) || place !== undefined;
  const atFault = columnsAtFault(row, mapping);
  const every = Object.keys(row.values).filter((column) => !column.startsWith('refused_'));
  const columns = all ? every : atFault;
  const { reason, remedy } = row.refusal;
  const set = (name: string, text: string) => {
    const { [name]: _, ...rest } = values;
    const cells = text === cellText(row.values[name]) ? rest : { ...rest, [name]: text };
    onChange({ ...draft, values: cells });
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
        {withPlace && (
          <PlaceEntry
            row={row}
            place={place}
            onChange={(next) => onChange({ values, ...(next && { place: next }) })}
          />
        )}
        {columns.length === 0 && !withPlace && mapping.place && !mapping.place.geometry && (
          <p className="soft-text">
            No cell can mend this row: no column of the file is taken for what it lacks. Choose the
            column, or the kind of record, above.
          </p>
        )}
        {columns.length === 0 && !withPlace && (!mapping.place || mapping.place.geometry) && (
          <p className="soft-text">
            No cell can mend this row: its line is in the file’s geometry. Mend it in the program
            that the file came from, or write the line into the CSV’s refused_geometry, such as
            LINESTRING (-71.05 42.36, -71.06 42.37).
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
