import type { Cell } from '../source/source.ts';

const blankWords = new Set([
  '',
  '-',
  '--',
  '---',
  '.',
  '?',
  'n/a',
  'na',
  'n.a.',
  '#n/a',
  'null',
  '<null>',
  '(null)',
  'nil',
  'nan',
  'none',
  'unknown',
  'unk',
  'unkn',
  'tbd',
  'fixme',
  'not known',
  'unbekannt',
]);
/** The same in a field of words, where "none" or a dash may be meant. */
const blankTexts = new Set(['', 'null', '<null>', '(null)', 'n/a', '#n/a', 'nan']);

/** Whether a cell says nothing. Words such as "unknown" or "fixme" say nothing of a number or a choice. */
export function isBlank(cell: Cell | undefined, ofWords: boolean): boolean {
  if (cell === null || cell === undefined) return true;
  if (typeof cell !== 'string') return false;
  return (ofWords ? blankTexts : blankWords).has(cell.trim().toLowerCase());
}
