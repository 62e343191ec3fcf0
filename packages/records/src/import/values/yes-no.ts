import type { Cell } from '../source/source.ts';
import type { Read } from './measures.ts';

const yes = new Set(['yes', 'y', 'true', 't', '1', 'x', 'on', 'ja', 'si', 'sí', 'oui', '✓', 'ok']);
const no = new Set(['no', 'n', 'false', 'f', '0', 'off', 'none', 'nein', 'non']);

/** Yes or no, in the words and marks that lists use. */
export function readYesNo(cell: Cell): Read<boolean> {
  if (typeof cell === 'boolean') return { ok: true, value: cell };
  const word = String(cell).trim().toLowerCase();
  if (yes.has(word)) return { ok: true, value: true };
  if (no.has(word)) return { ok: true, value: false };
  return { ok: false, reason: 'It is neither yes nor no.', remedy: 'Write yes or no.' };
}
