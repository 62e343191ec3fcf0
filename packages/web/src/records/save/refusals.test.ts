import { describe, expect, it } from 'vitest';
import { fieldTables } from '../fields/field-tables.ts';
import { refusalsOf } from './refusals.ts';

const issue = (path: string, value: unknown) => ({
  path,
  value,
  allowed: 'more than 0, up to 120',
  message: `${path} is ${JSON.stringify(value)}; allowed: more than 0, up to 120.`,
  remedy: 'Give a value that is allowed.',
});

describe('what the server refused', () => {
  it('stands at its field, in the reader’s units', () => {
    const { byPlace, others } = refusalsOf(
      'hydrants',
      fieldTables.hydrants,
      [issue('mainIn', 254), issue('steamerLoss.lossPsi', 2000)],
      'si',
    );
    expect(others).toEqual([]);
    // 254 in × 25.4 = 6,452 mm; 120 in = 3,048 mm; 1000 psi = 68.9 bar (NIST SP 811).
    expect(byPlace.mainIn).toMatch(/^6,452 mm is not allowed: more than 0, up to 3,048 mm\./);
    expect(byPlace['steamerLoss.lossPsi']).toMatch(/0 to 68\.9 bar/);
  });

  it('is said as the server says it where it is no number, with the field’s own name', () => {
    const { byPlace } = refusalsOf(
      'rigs',
      fieldTables.rigs,
      [{ path: 'hose[1].size', message: 'hose[1].size is missing.', remedy: 'Give it.' }],
      'us',
    );
    expect(byPlace['hose[1].size']).toBe('Size is missing. Give it.');
  });

  it('is not lost where the form has no such field', () => {
    const { byPlace, others } = refusalsOf(
      'hydrants',
      fieldTables.hydrants,
      [issue('colour', 'red'), issue('planTestId', 'x')],
      'us',
    );
    expect(byPlace).toEqual({});
    expect(others).toHaveLength(2);
  });
});
