import type { Kind } from '@plugside/records/model';
import type { FieldSpec } from '../fields/field.ts';
import type { Position } from '../outline/outline.ts';
import type { Draft, Problems } from './draft.ts';

/** What every field of a form is given. */
export interface FieldEntryProps {
  kind: Kind;
  spec: FieldSpec;
  /** Fields that this one is inside of. */
  within?: readonly string[];
  /** Its place in the form, as problems name it. */
  at: string;
  draft: Draft | undefined;
  before: unknown;
  onChange(draft: Draft): void;
  problems: Problems;
  /** The label is for the ear alone, where a column's head says it. */
  hideLabel?: boolean;
  /** Where the record is. */
  near?: Position | undefined;
  /** For the ear, where the label alone would not tell one row from another. */
  spoken?: string;
}
