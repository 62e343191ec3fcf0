/** What a drill was judged by, in words. */
import type { Judgement } from '../judge.ts';
import { radioPresets } from '../radio.ts';
import { isRole } from '../role.ts';
import type { DrillScene } from '../scene.ts';
import { inUnits, type WordUnits } from './in-units.ts';
import { hoseWords, pieceName, portName, roleWords, valveName } from './piece-words.ts';

/** `0 s`, `12.4 s`; a count by its number alone. */
export function amountWords(value: number, unit: Judgement['unit']): string {
  return unit === 's' ? `${Math.round(value * 10) / 10} s` : String(value);
}

/** What a judgement names: a role, a hose or a piece. */
export function judgedName(scene: DrillScene, piece: string): string {
  if (isRole(piece)) return roleWords[piece].toLowerCase();
  return scene.hoses.some(({ id }) => id === piece)
    ? hoseWords(scene, piece)
    : pieceName(scene, piece);
}

/** What stood wrong at a moment of a criterion: the piece, and what of it. */
export function momentWords(
  scene: DrillScene,
  { key }: Judgement,
  piece: string,
  note: string | undefined,
  units: WordUnits,
): string {
  if (key === 'marks') {
    const text = inUnits(note ?? '', units);
    return isRole(piece) ? `${roleWords[piece]}: ${text}` : text;
  }
  if (key === 'order' || key === 'steps') {
    const what = scene.steps.find(({ id }) => id === piece)?.what ?? piece;
    const again = key === 'steps' && note !== undefined ? ` (${note})` : '';
    return `${inUnits(what, units)}${again}`;
  }
  const name = judgedName(scene, piece);
  if (key === 'messages') {
    const preset = radioPresets.find((one) => one.key === note);
    return `${name}: “${(preset?.text ?? note ?? '').replace(/\{\w+\}/, '…')}”`;
  }
  if (key === 'opening' && note !== undefined) return `${valveName(scene, note)}, on ${name}`;
  if (key === 'surge' && note !== undefined) return `${valveName(scene, note)}: felt in ${name}`;
  if (key === 'connections' && note !== undefined) return `${name} to ${portName(scene, note)}`;
  return note === undefined ? name : `${name}: ${inUnits(note, units)}`;
}
