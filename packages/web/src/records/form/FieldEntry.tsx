import type { FieldEntryProps } from './entry-props.ts';
import { PartsEntry, RowsEntry } from './GroupEntry.tsx';
import { OneEntry } from './OneEntry.tsx';
import { OutlineEntry } from './OutlineEntry.tsx';
import { ManyRecordsEntry, RecordEntry } from './RecordEntry.tsx';

/** One field to be written in, by what it holds. */
export function FieldEntry(props: FieldEntryProps) {
  const { type } = props.spec;
  switch (type.is) {
    case 'record':
      return <RecordEntry {...props} to={type.to} />;
    case 'records':
      return <ManyRecordsEntry {...props} to={type.to} />;
    case 'parts':
      return <PartsEntry {...props} parts={type.parts} />;
    case 'rows':
      return <RowsEntry {...props} columns={type.columns} one={type.one} />;
    case 'path':
    case 'rings':
      return <OutlineEntry {...props} />;
    default:
      return <OneEntry {...props} />;
  }
}
