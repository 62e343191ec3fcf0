/** What lies of hose in a way, in words. */
import type { UnitSystem } from '../units/quantities.ts';
import { laidText } from '../words/laid.ts';
import type { SourcePart } from './choice.ts';
import { numberWord } from './title.ts';

/**
 * "H-114: 500 ft laid over 427 ft of street (5 sections of 100 ft)" of each source of a way that hose
 * is laid from; of lines side by side the longest.
 */
export function laidTexts(parts: readonly SourcePart[], units: UnitSystem): string[] {
  return parts.flatMap(({ sourceName, hose, lengthFt, laidFt, laidSections }) => {
    if (laidFt === undefined || hose.length === 0) return [];
    const text = laidText({ laidFt, streetFt: lengthFt, sections: laidSections }, units);
    const alike = hose.every((size) => size === hose[0]);
    const lines = `, ${alike ? 'each' : 'the longest'} of ${numberWord(hose.length)} lines`;
    return [`${sourceName}: ${text}${hose.length > 1 ? lines : ''}`];
  });
}
