/** One file on its way into the records: read, looked at, mapped, run, reported. */
import { existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import {
  guessKind,
  guessMapping,
  type ImportKind,
  type ImportReport,
  type Mapping,
  type MendedRow,
  type MendedRows,
  mendedAgain,
  type RecordStore,
  type Refusal,
  readReferences,
  readSource,
  runImport,
  type Source,
  SourceRefusedError,
  type SourceRow,
  withMendedRows,
} from '@plugside/records';
import { ProblemError } from '../problem.ts';
import {
  type ImportState,
  type ImportView,
  type RefusedRow,
  refusedRow,
  type SampleRow,
  understoodRows,
} from './import-view.ts';
import { type DistrictBounds, middleOf, type Whereabouts, whereaboutsOf } from './whereabouts.ts';

export interface ImportFiles {
  /** The file as uploaded. */
  upload: string;
  /** Where refused rows go. */
  refused: string;
}

/** Rows of the file that are shown as understood. */
const SAMPLE_ROWS = 50;

/** Refused rows that are kept with their cells; all of them are in the file of refused rows. */
const MOST_REFUSED_ROWS = 1000;

export class ImportJob {
  readonly id: string;
  readonly name: string;
  readonly #kind: ImportKind | undefined;
  readonly #store: RecordStore;
  readonly #files: ImportFiles;
  readonly #district: DistrictBounds | undefined;
  #whereabouts: Whereabouts | null = null;
  #likelyKind: ImportKind | null = null;
  #state: ImportState = 'reading';
  /** As uploaded. */
  #source: Source | undefined;
  #mended = new Map<number, MendedRow>();
  #refusedRows: RefusedRow[] = [];
  #readShare = 0;
  #startedAt: number | undefined;
  #elapsedMs: number | undefined;
  #mapping: Mapping | undefined;
  #sample: SampleRow[] = [];
  #progress = { done: 0, total: 0 };
  #report: ImportReport | undefined;
  #failure: { detail: string; remedy: string } | undefined;
  #abort = new AbortController();
  /** The run alone is to end, not the import. */
  #stopping = false;
  /** What is under way. */
  #work: Promise<void> = Promise.resolve();

  constructor(
    id: string,
    /** Without a kind its columns tell it. */
    file: { name: string; kind: ImportKind | undefined; files: ImportFiles },
    store: RecordStore,
    district: DistrictBounds | undefined,
  ) {
    this.id = id;
    this.name = file.name;
    this.#kind = file.kind;
    this.#files = file.files;
    this.#store = store;
    this.#district = district;
  }

  get state(): ImportState {
    return this.#state;
  }

  get isFinished(): boolean {
    return ['done', 'cancelled', 'failed'].includes(this.#state);
  }

  get view(): ImportView {
    const source = this.#source;
    return {
      id: this.id,
      name: this.name,
      kind: this.#mapping?.kind ?? this.#kind ?? 'hydrants',
      state: this.#state,
      format: source?.format ?? null,
      encoding: source?.encoding ?? null,
      delimiter: source?.delimiter ?? null,
      columns: source?.columns ?? [],
      hasGeometry: source?.hasGeometry ?? false,
      crs: source?.crs ?? null,
      mapping: this.#mapping ?? null,
      likelyKind: this.#likelyKind,
      whereabouts: this.#whereabouts,
      sample: this.#sample,
      readShare: this.#readShare,
      progress: this.#progress,
      elapsedMs:
        this.#startedAt === undefined ? (this.#elapsedMs ?? null) : Date.now() - this.#startedAt,
      mendedCount: this.#mended.size,
      report: this.#report ?? null,
      hasRefusedFile: this.refusedFile !== undefined,
      failure: this.#failure ?? null,
    };
  }

  /** The CSV of refused rows of the last run; undefined where none was refused. */
  get refusedFile(): string | undefined {
    return this.#report && existsSync(this.#files.refused) ? this.#files.refused : undefined;
  }

  /** The first refused rows of the last run, with their cells. */
  get refusedRows(): readonly RefusedRow[] {
    return this.#report ? this.#refusedRows : [];
  }

  /** Reads the file in the background. */
  read(): void {
    this.#begin('reading', async () => {
      const source = await readSource(this.#files.upload, this.name, {
        signal: this.#abort.signal,
        onProgress: (share) => {
          this.#readShare = share;
        },
      });
      if (this.#abort.signal.aborted) {
        await source.close();
        return;
      }
      this.#source = source;
      this.#progress = { done: 0, total: source.total };
      const kind = this.#kind ?? guessKind(source) ?? 'hydrants';
      await this.#take(guessMapping(kind, source, this.#guessOptions()));
      this.#state = 'ready';
    });
  }

  /** A fresh guess, for instance for another kind. @throws ProblemError 409 unless ready or done */
  async guess(kind: ImportKind, sourceName: string | undefined): Promise<void> {
    const source = this.#readySource('map');
    await this.#take(guessMapping(kind, source, { ...this.#guessOptions(), sourceName }));
  }

  /** @throws ProblemError 409 unless ready or done, and what `check` throws */
  async setMapping(check: (source: Source) => Mapping): Promise<void> {
    await this.#take(check(this.#readySource('map')));
  }

  /**
   * Takes cells and places as mended, on top of what was mended before; the next run reads the whole file with
   * them, so that a mended row is held against every other.
   * @throws ProblemError 409 unless ready or done, and what `check` throws
   */
  async mend(check: (source: Source) => MendedRows): Promise<void> {
    for (const [row, anew] of check(this.#readySource('mend'))) {
      this.#mended.set(row, mendedAgain(this.#mended.get(row), anew));
    }
    if (this.#mapping) await this.#take(this.#mapping);
  }

  /**
   * Runs in the background; a dry run counts and writes nothing. One that is done can be run again,
   * after its mapping or its rows were mended.
   * @throws ProblemError 409 unless ready or done
   */
  run(dryRun: boolean): void {
    const source = withMendedRows(this.#readySource('run'), this.#mended);
    const mapping = this.#mapping;
    if (!mapping) return;
    this.#progress = { done: 0, total: source.total };
    this.#report = undefined;
    this.#refusedRows = [];
    this.#startedAt = Date.now();
    this.#begin('running', async () => {
      await rm(this.#files.refused, { force: true });
      this.#report = await runImport(this.#store, source, mapping, {
        dryRun,
        signal: this.#abort.signal,
        refusedFile: this.#files.refused,
        onRefused: (row, refusal) => this.#refuse(row, refusal),
        onProgress: (progress) => {
          this.#progress = progress;
        },
      });
      this.#state = dryRun ? 'ready' : 'done';
    });
  }

  /**
   * Ends a run with nothing written; the import is ready to be run again. Too late for one that has
   * just been written.
   * @throws ProblemError 409 unless running
   */
  async stop(): Promise<void> {
    if (this.#state !== 'running') {
      throw new ProblemError({
        status: 409,
        title: 'Not running',
        detail: `The import is ${this.#state}; only one that is running can be stopped.`,
      });
    }
    this.#stopping = true;
    this.#abort.abort();
    await this.#work;
  }

  /** Ends what is under way with nothing written; too late for a run that has just been written. */
  async cancel(): Promise<void> {
    this.#abort.abort();
    await this.#work;
    if (!this.isFinished) this.#state = 'cancelled';
    await this.#closeSource();
    if (this.#state === 'cancelled') await rm(this.#files.refused, { force: true });
  }

  /** Removes its files. */
  async forget(): Promise<void> {
    await this.cancel();
    await rm(this.#files.refused, { force: true });
  }

  #begin(state: 'reading' | 'running', work: () => Promise<void>): void {
    this.#state = state;
    this.#work = work()
      .catch(async (error: unknown) => {
        if (this.#abort.signal.aborted && this.#stopping) {
          this.#state = 'ready';
          this.#progress = { done: 0, total: this.#progress.total };
          return;
        }
        if (this.#abort.signal.aborted) {
          this.#state = 'cancelled';
        } else {
          this.#state = 'failed';
          this.#failure = failureOf(error);
        }
        await this.#closeSource();
      })
      .finally(() => {
        if (this.#startedAt !== undefined) this.#elapsedMs = Date.now() - this.#startedAt;
        this.#startedAt = undefined;
        if (this.#stopping) this.#abort = new AbortController();
        this.#stopping = false;
      });
  }

  async #take(mapping: Mapping): Promise<void> {
    const source = this.#source;
    if (!source) return;
    const context = {
      fileName: source.name,
      importedOn: new Date().toISOString().slice(0, 10),
      refer: await readReferences(this.#store, mapping.kind),
    };
    const { sample } = withMendedRows(source, this.#mended);
    this.#sample = understoodRows(sample.slice(0, SAMPLE_ROWS), mapping, context);
    this.#mapping = mapping;
    this.#whereabouts = whereaboutsOf(sample, mapping, this.#district);
    const likely = guessKind(source, mapping.kind);
    this.#likelyKind = likely === undefined || likely === mapping.kind ? null : likely;
  }

  #refuse(row: SourceRow, refusal: Refusal): void {
    if (this.#refusedRows.length >= MOST_REFUSED_ROWS) return;
    this.#refusedRows.push(refusedRow(row, refusal));
  }

  #guessOptions() {
    return this.#district ? { district: middleOf(this.#district) } : {};
  }

  #readySource(verb: 'map' | 'mend' | 'run'): Source {
    if ((this.#state === 'ready' || this.#state === 'done') && this.#source) return this.#source;
    const past = { map: 'mapped', mend: 'mended', run: 'run' }[verb];
    throw new ProblemError({
      status: 409,
      title: 'Not ready',
      detail: `The import is ${this.#state}; only one that is ready or done can be ${past}. ${
        this.isFinished ? 'Upload the file again.' : 'Wait until it is ready.'
      }`,
    });
  }

  async #closeSource(): Promise<void> {
    await this.#source?.close();
    await rm(this.#files.upload, { force: true });
  }
}

function failureOf(error: unknown): { detail: string; remedy: string } {
  if (error instanceof SourceRefusedError) {
    return { detail: error.message, remedy: error.remedy };
  }
  console.error(error);
  return {
    detail: 'The import failed and nothing was written; the server’s log says why.',
    remedy: 'Try again; if it fails again, save the file anew from where it came from.',
  };
}
