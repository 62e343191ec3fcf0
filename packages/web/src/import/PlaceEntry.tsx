import { Input, Label, TextField } from 'react-aria-components';
import type { MendedRow, RefusedRow } from '../api/imports.ts';

type Place = NonNullable<MendedRow['place']>;

interface PlaceEntryProps {
  row: RefusedRow;
  place: Place | undefined;
  /** Undefined where both are empty again. */
  onChange(place: Place | undefined): void;
}

const AXES = [
  { axis: 'longitude', label: 'Longitude', example: '-71.0589' },
  { axis: 'latitude', label: 'Latitude', example: '42.3601' },
] as const;

/** A place in coordinates, for a row whose place the file has as a geometry alone. */
export function PlaceEntry({ row, place, onChange }: PlaceEntryProps) {
  const now: Place = place ?? { longitude: '', latitude: '' };
  const set = (part: Partial<Place>) => {
    const next = { ...now, ...part };
    onChange(next.longitude.trim() === '' && next.latitude.trim() === '' ? undefined : next);
  };
  return (
    <>
      {AXES.map(({ axis, label, example }) => (
        <TextField
          key={axis}
          className={now[axis] === '' ? 'text-entry' : 'text-entry entry-changed'}
          value={now[axis]}
          onChange={(text) => set({ [axis]: text })}
          autoComplete="off"
          maxLength={60}
          aria-label={`${label}, row ${row.row}`}
        >
          <Label>{label}</Label>
          <Input placeholder={example} />
        </TextField>
      ))}
      <p className="soft-text">
        {row.refusal.value !== undefined && <>The file’s geometry says {row.refusal.value}. </>}
        Degrees WGS 84, south and west negative. They stand in place of the file’s geometry.
      </p>
    </>
  );
}
