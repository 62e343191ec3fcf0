import { describe, expect, it } from 'vitest';
import { path, rings } from '../fields/field.ts';
import { fieldText, readField, readPlaces } from './field-text.ts';

const outline = rings('footprint', 'Outline');
const course = path('path', 'Course');
const LIMITS = { required: false };
const read = (spec: typeof outline, text: string) => readField(spec, text, 'us', LIMITS);

describe('an outline as a list of places', () => {
  const outer = [
    [-84.1, 33.3],
    [-84.1, 33.4],
    [-84.2, 33.4],
    [-84.1, 33.3],
  ];
  const court = [
    [-84.12, 33.35],
    [-84.12, 33.36],
    [-84.13, 33.36],
    [-84.12, 33.35],
  ];

  it('is written without the end that repeats its beginning, and read back with it', () => {
    const text = fieldText(outline, [outer, court], 'us');
    expect(text.split('\n')).toEqual([
      '-84.1, 33.3',
      '-84.1, 33.4',
      '-84.2, 33.4',
      '',
      '-84.12, 33.35',
      '-84.12, 33.36',
      '-84.13, 33.36',
    ]);
    expect(read(outline, text)).toEqual({ ok: true, value: [outer, court] });
    // Typed with its end, it is the same.
    expect(read(outline, `${text}\n-84.12, 33.35`)).toEqual({ ok: true, value: [outer, court] });
    expect(read(outline, '  \n ')).toEqual({ ok: true, value: undefined });
  });

  it('says which line is no place, and which ring has too few corners', () => {
    expect(read(outline, '-84.1, 33.3\n-84.1; 133')).toMatchObject({
      ok: false,
      message: expect.stringContaining('Line 2, “-84.1; 133”, is no place'),
    });
    const short = read(outline, `${fieldText(outline, [outer], 'us')}\n\n-84.1, 33.3\n-84.2, 33.3`);
    expect(short).toMatchObject({ ok: false, message: expect.stringContaining('Ring 2 has 2') });
    expect(read(course, '-84.1, 33.3')).toMatchObject({ ok: false });
  });

  it('is drawn as far as it goes while it is begun', () => {
    expect(readPlaces('-84.1, 33.3\n')).toEqual({ ok: true, rings: [[[-84.1, 33.3]]] });
    expect(readPlaces('')).toEqual({ ok: true, rings: [] });
  });

  it('of a course takes empty lines for nothing', () => {
    expect(read(course, '-84.1, 33.3\n\n-84.2 33.3')).toEqual({
      ok: true,
      value: [
        [-84.1, 33.3],
        [-84.2, 33.3],
      ],
    });
  });
});
