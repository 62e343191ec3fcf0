/** What a field of a record is for the one who keeps it: its trade words and how it is written. */
import type { Quantity } from '@plugside/fireground';
import type { Kind } from '@plugside/records/model';

export type FieldType =
  | { is: 'text'; lines?: number }
  | { is: 'quantity'; of: Quantity }
  | { is: 'count' }
  /** A number without a unit. */
  | { is: 'bare' }
  | { is: 'degrees'; positive: string; negative: string }
  | { is: 'choice'; words?: Readonly<Record<string, string>> }
  | { is: 'yes-no' }
  | { is: 'date' }
  | { is: 'hose-size' }
  | { is: 'record'; to: Kind }
  | { is: 'records'; to: Kind }
  /** Several values that belong together, such as a loss and the flow it was read at. */
  | { is: 'parts'; parts: readonly FieldSpec[] }
  | { is: 'rows'; one: string; columns: readonly FieldSpec[] }
  /** Numbers of one quantity, apart by commas. */
  | { is: 'numbers'; of: Quantity }
  /** Longitude and latitude, one place a line. */
  | { is: 'path' }
  /** Rings of places, one place a line and an empty line between rings. */
  | { is: 'rings' }
  | { is: 'json' };

export interface FieldSpec {
  /** Name in the record. */
  field: string;
  label: string;
  type: FieldType;
  help?: string;
  /** Shown with the record, written elsewhere. */
  elsewhere?: true;
}

const spec =
  (type: FieldType) =>
  (field: string, label: string, help?: string): FieldSpec => ({
    field,
    label,
    type,
    ...(help !== undefined && { help }),
  });

export const text = spec({ is: 'text' });
export const longText = (lines: number) => spec({ is: 'text', lines });
export const quantity = (of: Quantity) => spec({ is: 'quantity', of });
export const bare = spec({ is: 'bare' });
export const count = spec({ is: 'count' });
export const choice = (words?: Readonly<Record<string, string>>) =>
  spec({ is: 'choice', ...(words && { words }) });
export const yesNo = spec({ is: 'yes-no' });
export const date = spec({ is: 'date' });
export const hoseSize = spec({ is: 'hose-size' });
export const record = (to: Kind) => spec({ is: 'record', to });
export const records = (to: Kind) => spec({ is: 'records', to });
export const parts = (...of: readonly FieldSpec[]) => spec({ is: 'parts', parts: of });
export const rows = (one: string, ...columns: readonly FieldSpec[]) =>
  spec({ is: 'rows', one, columns });
export const numbers = (of: Quantity) => spec({ is: 'numbers', of });
export const path = spec({ is: 'path' });
export const rings = spec({ is: 'rings' });
export const json = spec({ is: 'json' });
