import type { Manifest } from '@plugside/records';
import { table } from '../output/table.ts';

/** How many records of each kind; kinds without any left out. */
export function recordsTable({ files }: Manifest): string {
  const rows = files
    .filter(({ records }) => records > 0)
    .map(({ kind, records }) => [kind, records.toLocaleString('en-US')]);
  if (rows.length === 0) return '';
  return table([{ head: 'Kind' }, { head: 'Records', number: true }], rows);
}

/** What terrain there is beside the records; nothing where there is none. */
export function terrainLine({ terrain }: Manifest): string {
  if (!terrain) return '';
  const size = (terrain.bytes / 1e6).toLocaleString('en-US', { maximumFractionDigits: 1 });
  return `With the terrain "${terrain.title}" (${size} MB).`;
}

export function recordsInAll({ files }: Manifest): string {
  const all = files.reduce((sum, { records }) => sum + records, 0);
  return `${all.toLocaleString('en-US')} ${all === 1 ? 'record' : 'records'}`;
}
