import { kinds, recordSchemas } from '@plugside/records/model';
import { describe, expect, it } from 'vitest';
import type { FieldSpec } from './field.ts';
import { fieldTables, shownKinds } from './field-tables.ts';
import { limitsAt } from './limits.ts';

describe('the field tables', () => {
  it.each(kinds)('name every field of %s once, and no other', (kind) => {
    const named = fieldTables[kind].map(({ field }) => field).sort();
    const kept = Object.keys(recordSchemas[kind].shape).filter((field) => field !== 'origins');
    expect(named).toEqual(kept.sort());
  });

  it('show every kind', () => {
    expect([...shownKinds].sort()).toEqual([...kinds].sort());
  });

  it.each(kinds)('name what %s have inside their fields', (kind) => {
    for (const spec of fieldTables[kind]) {
      for (const inside of insideOf(spec)) {
        expect(() => limitsAt(kind, [spec.field, inside.field])).not.toThrow();
      }
    }
  });

  it.each(kinds)('offer a choice only where %s have one', (kind) => {
    for (const { field, type } of fieldTables[kind]) {
      expect(limitsAt(kind, [field]).options !== undefined, field).toBe(type.is === 'choice');
    }
  });
});

describe('the limits of a field', () => {
  it('are those of the records', () => {
    expect(limitsAt('hydrants', ['mainIn'])).toMatchObject({ min: 0, above: true, max: 120 });
    expect(limitsAt('hydrants', ['sideOutlets'])).toEqual({
      required: false,
      min: 0,
      max: 6,
      fallback: 2,
    });
    expect(limitsAt('hydrants', ['name'])).toEqual({ required: true, maxLength: 120 });
    expect(limitsAt('hydrants', ['steamerLoss', 'atGpm']).required).toBe(true);
    expect(limitsAt('rigs', ['hose', 'lengthFt'])).toMatchObject({ min: 0, above: true });
    expect(limitsAt('buildings', ['storeys'])).toMatchObject({ min: 1, max: 200 });
  });

  it('are not asked of a field that is not there', () => {
    expect(() => limitsAt('hydrants', ['colour'])).toThrow('hydrants has no field colour');
  });
});

function insideOf({ type }: FieldSpec): readonly FieldSpec[] {
  if (type.is === 'parts') return type.parts;
  return type.is === 'rows' ? type.columns : [];
}
