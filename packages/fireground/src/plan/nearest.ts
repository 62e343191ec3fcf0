/**
 * The known name closest to what was typed, for "did you mean": null where none is close.
 * Counts letters added, left out, changed or swapped; up to a third of the name may differ.
 */
export function nearestName(typed: string, known: readonly string[]): string | null {
  const lower = typed.slice(0, 80).toLowerCase();
  let best: string | null = null;
  let bestEdits = Number.POSITIVE_INFINITY;
  for (const name of known) {
    const edits = editsBetween(lower, name.toLowerCase());
    if (edits < bestEdits) {
      best = name;
      bestEdits = edits;
    }
  }
  const mostEdits = Math.max(1, Math.floor((best?.length ?? 0) / 3));
  return bestEdits <= mostEdits ? best : null;
}

function editsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, column) => column)];
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let edits = Math.min(rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        edits = Math.min(edits, rows[i - 2]![j - 2]! + 1);
      }
      row.push(edits);
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}

/** `, did you mean "length"?` or nothing. */
export function didYouMean(typed: string, known: readonly string[]): string {
  const nearest = nearestName(typed, known);
  return nearest === null ? '' : `, did you mean "${nearest}"?`;
}
