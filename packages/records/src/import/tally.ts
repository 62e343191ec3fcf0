import type { ImportKind, Mapping } from './mapping/mapping.ts';
import type { ImportReport, KeptValue, NotedRow, Refusal } from './report.ts';

/** Listed one by one; the counts go on. */
const MOST_LISTED = 1000;

/** Counts an import as it goes; memory does not grow with the file. */
export class Tally {
  readonly #byReason = new Map<Refusal['code'], { count: number; example: string }>();
  readonly #remarks = new Map<string, number>();
  readonly #otherKinds = new Map<ImportKind, number>();
  readonly refused: Refusal[] = [];
  readonly noted: NotedRow[] = [];
  notedCount = 0;
  readonly kept: KeptValue[] = [];
  rows = 0;
  skipped = 0;
  refusedCount = 0;
  keptCount = 0;

  refuse(refusal: Refusal): void {
    this.refusedCount += 1;
    if (this.refused.length < MOST_LISTED) this.refused.push(refusal);
    const seen = this.#byReason.get(refusal.code);
    if (seen) seen.count += 1;
    else {
      const where = refusal.column === undefined ? '' : `${refusal.column}: `;
      const what = refusal.value === undefined ? '' : `"${refusal.value.slice(0, 60)}": `;
      this.#byReason.set(refusal.code, { count: 1, example: `${where}${what}${refusal.reason}` });
    }
  }

  /** A row of another kind, where it is known of which. */
  skip(kind: ImportKind | undefined): void {
    this.skipped += 1;
    if (kind) this.#otherKinds.set(kind, (this.#otherKinds.get(kind) ?? 0) + 1);
  }

  note(rows: readonly NotedRow[]): void {
    this.notedCount += rows.length;
    this.noted.push(...rows.slice(0, MOST_LISTED - this.noted.length));
  }

  keep(values: readonly KeptValue[]): void {
    this.keptCount += values.length;
    this.kept.push(...values.slice(0, MOST_LISTED - this.kept.length));
  }

  remark(remark: string): void {
    this.#remarks.set(remark, (this.#remarks.get(remark) ?? 0) + 1);
  }

  report(
    mapping: Mapping,
    fileName: string,
    dryRun: boolean,
    counts: Pick<ImportReport, 'added' | 'changed' | 'same'>,
  ): ImportReport {
    return {
      kind: mapping.kind,
      sourceName: mapping.sourceName,
      fileName,
      dryRun,
      rows: this.rows,
      ...counts,
      skipped: this.skipped,
      otherKinds: [...this.#otherKinds]
        .map(([kind, count]) => ({ kind, count }))
        .sort((a, b) => b.count - a.count),
      notedCount: this.notedCount,
      noted: this.noted,
      refusedCount: this.refusedCount,
      refused: this.refused,
      byReason: [...this.#byReason]
        .map(([code, { count, example }]) => ({ code, count, example }))
        .sort((a, b) => b.count - a.count),
      keptCount: this.keptCount,
      kept: this.kept,
      notices: [...this.#remarks].map(([remark, count]) =>
        count > 1 ? `${remark} (${count} rows)` : remark,
      ),
    };
  }
}
