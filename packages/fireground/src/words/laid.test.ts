import { describe, expect, it } from 'vitest';
import { laidText, sectionsOf, sectionsText, wholeSectionsFt } from '../index.ts';

// Sections: 100 ft of large-diameter hose, 50 ft of smaller (common practice, no source).
describe('hose laid in whole sections', () => {
  it('is the least whole number of sections that reaches', () => {
    expect(wholeSectionsFt('5', 427)).toBe(500);
    expect(wholeSectionsFt('5', 500)).toBe(500);
    expect(wholeSectionsFt('5', 500.1)).toBe(600);
    expect(wholeSectionsFt('2-1/2', 427)).toBe(450);
  });

  it('is counted where all of it is of one length', () => {
    expect(sectionsOf([{ hose: '5', lengthFt: 500 }])).toEqual({ count: 5, sectionFt: 100 });
    expect(
      sectionsOf([
        { hose: '5', lengthFt: 800 },
        { hose: '4', lengthFt: 400 },
      ]),
    ).toEqual({ count: 12, sectionFt: 100 });
    expect(
      sectionsOf([
        { hose: '5', lengthFt: 800 },
        { hose: '2-1/2', lengthFt: 200 },
      ]),
    ).toBeUndefined();
    expect(sectionsOf([{ hose: '5', lengthFt: 450 }])).toBeUndefined();
    expect(sectionsOf([])).toBeUndefined();
  });

  it('is told with the street under it, in either system', () => {
    const sections = { count: 5, sectionFt: 100 };
    expect(laidText({ laidFt: 500, streetFt: 427, sections }, 'us')).toBe(
      '500 ft laid over 427 ft of street (5 sections of 100 ft)',
    );
    // 1 ft is 0.3048 m by definition (NIST SP 811, B.8): 152.4, 130.1 and 30.48 m.
    expect(laidText({ laidFt: 500, streetFt: 427, sections }, 'si')).toBe(
      '152 m laid over 130 m of street (5 sections of 30.5 m)',
    );
    expect(laidText({ laidFt: 450, streetFt: 427 }, 'us')).toBe(
      '450 ft laid over 427 ft of street',
    );
    expect(sectionsText({ count: 1, sectionFt: 50 }, 'us')).toBe('1 section of 50 ft');
  });
});
