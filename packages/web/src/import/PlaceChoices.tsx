import type { Mapping, PlaceMapping } from '@plugside/records/import-fields';
import { useId } from 'react';
import type { ImportView } from '../api/imports.ts';
import type { RefusedField } from '../api/problem.ts';
import { Choice } from '../editing/Choice.tsx';
import { withCrs } from './mapping-edits.ts';
import { TextEntry } from './TextEntry.tsx';

interface PlaceChoicesProps {
  view: ImportView;
  mapping: Mapping;
  /** Why the coordinate system was not taken. */
  crsProblem: RefusedField | undefined;
  onChange(mapping: Mapping): void;
}

/** Where each row is, and in which coordinates the file says so. */
export function PlaceChoices({ view, mapping, crsProblem, onChange }: PlaceChoicesProps) {
  const heading = useId();
  const { place } = mapping;
  if (!place) {
    return (
      <section className="import-part" aria-labelledby={heading}>
        <h3 id={heading}>Place</h3>
        <p className="import-problem">
          No column gives a place. Take two columns below for longitude and latitude.
        </p>
      </section>
    );
  }
  const set = (changes: Partial<PlaceMapping>) =>
    onChange({ ...mapping, place: { ...place, ...changes } });
  return (
    <section className="import-part" aria-labelledby={heading}>
      <h3 id={heading}>Place</h3>
      <div className="choice-grid">
        <div>
          <span className="choice-label">Taken from</span>
          {view.hasGeometry ? (
            <Choice
              label="Place taken from"
              value={place.geometry ? 'geometry' : 'columns'}
              options={[
                { value: 'geometry', text: 'the file’s own drawing' },
                { value: 'columns', text: 'columns' },
              ]}
              onChange={(from) => set({ geometry: from === 'geometry' })}
            />
          ) : (
            <p>{columnsText(place)}</p>
          )}
          {view.hasGeometry && !place.geometry && <p className="hint">{columnsText(place)}</p>}
        </div>
        <div>
          <TextEntry
            label="Coordinate system"
            value={place.crs}
            whenBlank="Give a code such as EPSG:4326, which is degrees."
            problem={crsProblem && `${crsProblem.allowed} ${crsProblem.remedy}`}
            onChange={(crs) => onChange(withCrs(mapping, crs))}
          />
          <p className="hint">{crsHint(view, place)}</p>
        </div>
        <div>
          <span className="choice-label">Longitude and latitude exchanged</span>
          <Choice
            label="Rows whose longitude and latitude are exchanged"
            value={place.swapped}
            options={[
              { value: 'refuse', text: 'refuse the row' },
              { value: 'exchange', text: 'put them right' },
            ]}
            onChange={(swapped) => set({ swapped })}
          />
        </div>
        <div>
          <span className="choice-label">Far from the rest</span>
          <Choice
            label="Rows far from the rest"
            value={place.farOff}
            options={[
              { value: 'refuse', text: 'refuse the row' },
              { value: 'take', text: 'take it' },
            ]}
            onChange={(farOff) => set({ farOff })}
          />
        </div>
        {place.point !== undefined && (
          <div>
            <span className="choice-label">Two numbers in one column</span>
            <Choice
              label="Order of the two numbers"
              value={place.pointOrder ?? 'latitude first'}
              options={[
                { value: 'latitude first', text: 'latitude first' },
                { value: 'longitude first', text: 'longitude first' },
              ]}
              onChange={(pointOrder) => set({ pointOrder })}
            />
          </div>
        )}
      </div>
    </section>
  );
}

function columnsText({ longitude, latitude, point }: PlaceMapping): string {
  if (point !== undefined) return `the column ${point}`;
  if (longitude === undefined && latitude === undefined) {
    return 'No column yet: take two below for longitude and latitude.';
  }
  return `${longitude ?? 'no column yet'} (x) and ${latitude ?? 'no column yet'} (y)`;
}

function crsHint({ crs }: ImportView, place: PlaceMapping): string {
  const own = crs && crs.crs === place.crs ? `As the file says (${crs.from}). ` : '';
  return `${own}EPSG:4326 is degrees. State plane and UTM have codes of their own, such as EPSG:2249 or EPSG:26917: ask the list’s owner.`;
}
