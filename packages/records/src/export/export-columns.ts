import { type Kind, recordSchemas } from '../model/index.ts';

/** Columns of a kind's table, in order: the record's id and version, its fields, where it came from. */
export function exportColumns(kind: Kind): string[] {
  const fields = Object.keys(recordSchemas[kind].shape);
  const last = ['note', 'externalSource', 'externalId', 'origins'];
  const own = fields.filter((field) => !last.includes(field));
  return [
    'plugside_id',
    'plugside_version',
    ...own.flatMap((field) => [field, ...(nameOf[field] ?? [])]),
    ...last,
  ];
}

/** A column with the name of the record that an id means, so that people and other stores can tell. */
const nameOf: Readonly<Record<string, readonly string[]>> = {
  hydrantId: ['hydrant'],
  stationId: ['station'],
  rigId: ['rig'],
  buildingId: ['building'],
};

/** Which kind the ids in a field are of. */
export const referredKind: Readonly<Record<string, Kind>> = {
  hydrantId: 'hydrants',
  stationId: 'stations',
  rigId: 'rigs',
  buildingId: 'buildings',
};
