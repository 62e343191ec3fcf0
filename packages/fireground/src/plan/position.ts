import { type Document, isAlias, isMap, isScalar, isSeq, type LineCounter, type Node } from 'yaml';
import type { PathStep } from './issue.ts';

export interface Position {
  /** Counted from 1. */
  line: number;
  column: number;
}

/** Where a place of the written form stands in its text; the nearest place around it where it is missing. */
export function positionOf(
  document: Document.Parsed,
  lines: LineCounter,
  steps: readonly PathStep[],
): Position {
  let node: unknown = document.contents;
  let offset = (node as Node | null)?.range?.[0] ?? 0;
  for (const step of steps) {
    if (isAlias(node)) node = node.resolve(document);
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === step);
      if (!pair) break;
      const key = pair.key as Node;
      node = pair.value;
      offset = (isScalar(node) ? node.range?.[0] : key.range?.[0]) ?? offset;
    } else if (isSeq(node) && typeof step === 'number') {
      const item = node.items[step] as Node | undefined;
      if (!item) break;
      node = item;
      offset = item.range?.[0] ?? offset;
    } else break;
  }
  return lineAndColumn(lines, offset);
}

/** Line and column of an offset in the text. */
export function lineAndColumn(lines: LineCounter, offset: number): Position {
  const { line, col } = lines.linePos(offset);
  // The counter knows no line before it has seen one.
  return { line: Math.max(1, line), column: Math.max(1, col) };
}
