/** Columns that our own files have beside a list's: they name no field. */

/** Columns that a file of refused rows adds. */
export const refusedColumns = [
  'refused_row',
  'refused_column',
  'refused_reason',
  'refused_remedy',
  'refused_raw',
  'refused_source',
  'refused_crs',
  'refused_geometry',
  'refused_key',
  'refused_mapping',
] as const;

/** Beside a record's own id: the version that the file was exported at. */
export const versionColumn = 'plugside_version';
