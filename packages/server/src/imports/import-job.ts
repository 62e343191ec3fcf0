/** One file on its way into the records: read, looked at, mapped, run, reported. */
import { existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import {
  guessMapping,
  type ImportKind,
  type ImportReport,
  type Mapping,
  type RecordStore,
  readReferences,
  readSource,
  runImport,
  type Source,
  SourceRefusedError,
  type Understood,
  understand,
} from '@plugside/records';
import { ProblemError } from '../problem.ts';

export type ImportState = 'reading' | 'ready' | 'running' | 'done' | 'cancelled' | 'failed';

/** A row as it stands in the file, and as it was understood. */
export interface SampleRow {
  row: number;
  values: Readonly<Record<string, unknown>>;
  understood: Understood;
}

/** An import as it is told over HTTP. */
export interface ImportView {
  id: string;
  name: string;
  kind: ImportKind;
  state: ImportState;
  format: Source['format'] | null;
  encoding: string | null;
  delimiter: string | null;
  columns: readonly string[];
  hasGeometry: boolean;
  crs: Source['crs'] | null;
  mapping: Mapping | null;
  sample: readonly SampleRow[];
  progress: { done: number; total: number };
  report: ImportReport | null;
  /** Rows were refused, and their file can be had. */
  hasRefusedFile: boolean;
  /** Why it failed, and what to do. */
  failure: { detail: string; remedy: string } | null;
}

export interface ImportFiles {
  /** The file as uploaded. */
  upload: string;
  /** Where refused rows go. */
  refused: string;
}

/** Rows of the file that are shown as understood. */
const SAMPLE_ROWS = 50;

export class ImportJob {
  readonly id: string;
  readonly name: string;
  readonly #kind: ImportKind;
  readonly #store: RecordStore;
  readonly #files: ImportFiles;
  readonly #district: [number, number] | undefined;
  #state: ImportState = 'reading';
  #source: Source | undefined;
  #mapping: Mapping | undefined;
  #sample: SampleRow[] = [];
  #progress = { done: 0, total: 0 };
  #report: ImportReport | undefined;
  #failure: { detail: string; remedy: string } | undefined;
  #abort = new AbortController();
  /** What is under way. */
  #work: Promise<void> = Promise.resolve();

  constructor(
    id: string,
    file: { name: string; kind: ImportKind; files: ImportFiles },
    store: RecordStore,
    district: [number, number] | undefined,
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
      kind: this.#mapping?.kind ?? this.#kind,
      state: this.#state,
      format: source?.format ?? null,
      encoding: source?.encoding ?? null,
      delimiter: source?.delimiter ?? null,
      columns: source?.columns ?? [],
      hasGeometry: source?.hasGeometry ?? false,
      crs: source?.crs ?? null,
      mapping: this.#mapping ?? null,
      sample: this.#sample,
      progress: this.#progress,
      report: this.#report ?? null,
      hasRefusedFile: this.refusedFile !== undefined,
      failure: this.#failure ?? null,
    };
  }

  /** The CSV of refused rows of the last run; undefined where none was refused. */
  get refusedFile(): string | undefined {
    return this.#report && existsSync(this.#files.refused) ? this.#files.refused : undefined;
  }

  /** Reads the file in the background. */
  read(): void {
    this.#begin('reading', async () => {
      const source = await readSource(this.#files.upload, this.name);
      if (this.#abort.signal.aborted) {
        await source.close();
        return;
      }
      this.#source = source;
      this.#progress = { done: 0, total: source.total };
      await this.#take(guessMapping(this.#kind, source, this.#guessOptions()));
      this.#state = 'ready';
    });
  }

  /** A fresh guess, for instance for another kind. @throws ProblemError 409 unless ready */
  async guess(kind: ImportKind, sourceName: string | undefined): Promise<void> {
    const source = this.#readySource('map');
    await this.#take(guessMapping(kind, source, { ...this.#guessOptions(), sourceName }));
  }

  /** @throws ProblemError 409 unless ready, and what `check` throws */
  async setMapping(check: (source: Source) => Mapping): Promise<void> {
    await this.#take(check(this.#readySource('map')));
  }

  /** Runs in the background; a dry run counts and writes nothing. @throws ProblemError 409 unless ready */
  run(dryRun: boolean): void {
    const source = this.#readySource('run');
    const mapping = this.#mapping;
    if (!mapping) return;
    this.#progress = { done: 0, total: source.total };
    this.#report = undefined;
    this.#begin('running', async () => {
      await rm(this.#files.refused, { force: true });
      this.#report = await runImport(this.#store, source, mapping, {
        dryRun,
        signal: this.#abort.signal,
        refusedFile: this.#files.refused,
        onProgress: (progress) => {
          this.#progress = progress;
        },
      });
      this.#state = dryRun ? 'ready' : 'done';
      if (!dryRun) await this.#closeSource();
    });
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
    this.#work = work().catch(async (error: unknown) => {
      if (this.#abort.signal.aborted) {
        this.#state = 'cancelled';
      } else {
        this.#state = 'failed';
        this.#failure = failureOf(error);
      }
      await this.#closeSource();
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
    this.#sample = source.sample.slice(0, SAMPLE_ROWS).map((row) => ({
      row: row.number,
      values: row.values,
      understood: understand(row, mapping, context),
    }));
    this.#mapping = mapping;
  }

  #guessOptions() {
    return this.#district ? { district: this.#district } : {};
  }

  #readySource(verb: string): Source {
    if (this.#state === 'ready' && this.#source) return this.#source;
    throw new ProblemError({
      status: 409,
      title: 'Not ready',
      detail: `The import is ${this.#state}; only one that is ready can be ${verb === 'run' ? 'run' : 'mapped'}. ${
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
