import { type Kysely, type RawBuilder, sql } from 'kysely';
import { isUniqueViolation } from './database-errors.ts';
import type {
  DrillLogRow,
  DrillRun,
  DrillRunChange,
  DrillRunFacts,
  DrillRunQuery,
  DrillRuns,
  KeptDrill,
  NewDrillRun,
} from './drill-runs.ts';
import { isId, newId } from './envelope.ts';
import { DrillTakenError } from './errors.ts';

type Db = Kysely<unknown>;
type Row = Readonly<Record<string, string | number | null>>;

/** Rows of a log in one statement: five values each. */
const ROWS_AT_ONCE = 500;
const LONGEST_LIST = 500;
const LIST = 100;

const factColumns = sql.raw(
  'id, code, title, evolution, crew, started_at, changed_at, ended_at, tick, result',
);
const allColumns = sql.raw(
  'id, code, title, evolution, crew, started_at, changed_at, ended_at, tick, result, seed, scene, seats, keyframe',
);

/** @param atomic all of the work or nothing of it */
export function sqlDrillRuns(
  read: Db,
  atomic: <T>(work: (db: Db) => Promise<T>) => Promise<T>,
): DrillRuns {
  const rowsOf = async (query: RawBuilder<Row>) => (await query.execute(read)).rows;

  const runs: DrillRuns = {
    add: (run) => atomic((db) => addRun(db, run)),

    running: async () => {
      const rows = await rowsOf(
        sql`select ${factColumns} from drill_runs where ended_at is null order by id`,
      );
      return rows.map(toFacts);
    },

    list: async (query = {}) => (await rowsOf(listed(query))).map(toFacts),

    get: async (id) => {
      if (!isId(id)) return undefined;
      const [row] = await rowsOf(sql`select ${allColumns} from drill_runs where id = ${id}`);
      return row && toRun(row);
    },

    runningAs: async (code) => {
      const [row] = await rowsOf(
        sql`select ${allColumns} from drill_runs where code = ${code} and ended_at is null`,
      );
      return row && toRun(row);
    },

    log: async (id) => {
      const rows = await rowsOf(
        sql`select seq, entry, sender, client_seq from drill_log where run_id = ${id} order by seq`,
      );
      return rows.map(toLogRow);
    },

    all: async function* () {
      let before: { before?: string } = {};
      for (;;) {
        const [facts] = await runs.list({ ...before, limit: 1 });
        const run = facts && (await runs.get(facts.id));
        if (!run) return;
        yield { run, log: await runs.log(run.id) };
        before = { before: run.id };
      }
    },

    write: async (changes) => {
      if (changes.length === 0) return;
      try {
        await atomic(async (db) => {
          for (const change of changes) await updateRun(db, change);
          await addLogRows(db, changes);
        });
      } catch (error) {
        if (isUniqueViolation(error)) throw new DrillTakenError({ cause: error });
        throw error;
      }
    },

    remove: async (id) => {
      await atomic(async (db) => {
        await sql`delete from drill_log where run_id = ${id}`.execute(db);
        await sql`delete from drill_runs where id = ${id}`.execute(db);
      });
    },
  };
  return runs;
}

async function addRun(db: Db, given: NewDrillRun): Promise<DrillRun | undefined> {
  const now = new Date().toISOString();
  const run: DrillRun = { ...given, id: newId(), startedAt: now, changedAt: now, tick: 0 };
  const { rows } = await sql`${insertion(run)} on conflict do nothing returning id`.execute(db);
  return rows.length > 0 ? run : undefined;
}

/** Writes a drill as it was kept. Must run inside a transaction. */
export async function putDrill(db: Db, { run, log }: KeptDrill): Promise<void> {
  await insertion(run).execute(db);
  await addLogRows(db, [{ id: run.id, log }]);
}

function insertion(run: DrillRun): RawBuilder<unknown> {
  const { id, code, title, evolution, crew, seed, startedAt, changedAt, endedAt, tick } = run;
  const json = (value: unknown) => (value === undefined ? null : JSON.stringify(value));
  return sql`insert into drill_runs (id, code, title, evolution, crew, seed, started_at,
      changed_at, ended_at, tick, scene, seats, keyframe, result)
    values (${id}, ${code}, ${title}, ${evolution ?? null}, ${crew ?? null}, ${seed}, ${startedAt},
      ${changedAt}, ${endedAt ?? null}, ${tick}, ${json(run.scene)}, ${json(run.seats)},
      ${json(run.keyframe)}, ${json(run.result)})`;
}

function listed({ crew, evolution, limit = LIST, before }: DrillRunQuery): RawBuilder<Row> {
  const conditions = [
    sql`1 = 1`,
    ...(crew === undefined ? [] : [sql`lower(crew) like ${`%${escaped(crew)}%`} escape '\\'`]),
    ...(evolution === undefined ? [] : [sql`evolution = ${evolution}`]),
    ...(before === undefined ? [] : [sql`id < ${before}`]),
  ];
  return sql`select ${factColumns} from drill_runs where ${sql.join(conditions, sql` and `)}
    order by id desc limit ${Math.min(Math.max(1, Math.floor(limit)), LONGEST_LIST)}`;
}

/** For a search that reads `%` and `_` as they stand. */
const escaped = (text: string) => text.toLowerCase().replaceAll(/[\\%_]/g, '\\$&');

async function addLogRows(
  db: Db,
  changes: readonly Pick<DrillRunChange, 'id' | 'log'>[],
): Promise<void> {
  const rows = changes.flatMap(({ id, log }) =>
    log.map(
      ({ seq, entry, sender, clientSeq }) =>
        sql`(${id}, ${seq}, ${JSON.stringify(entry)}, ${sender ?? null}, ${clientSeq ?? null})`,
    ),
  );
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE) {
    await sql`insert into drill_log (run_id, seq, entry, sender, client_seq)
      values ${sql.join(rows.slice(from, from + ROWS_AT_ONCE))}`.execute(db);
  }
}

async function updateRun(db: Db, change: DrillRunChange): Promise<void> {
  const { id, since, changedAt, tick, seats, keyframe, ended } = change;
  const sets = [
    sql`tick = ${tick}`,
    sql`changed_at = ${changedAt}`,
    ...(seats === undefined ? [] : [sql`seats = ${JSON.stringify(seats)}`]),
    ...(keyframe === undefined ? [] : [sql`keyframe = ${JSON.stringify(keyframe)}`]),
    ...(ended === undefined
      ? []
      : [sql`ended_at = ${ended.at}`, sql`result = ${JSON.stringify(ended.result)}`]),
  ];
  const { rows } = await sql`update drill_runs set ${sql.join(sets)}
    where id = ${id} and changed_at = ${since} returning id`.execute(db);
  if (rows.length === 0) throw new DrillTakenError();
}

function toFacts(row: Row): DrillRunFacts {
  const facts: DrillRunFacts = {
    id: row.id as string,
    code: row.code as string,
    title: row.title as string,
    startedAt: row.started_at as string,
    changedAt: row.changed_at as string,
    tick: row.tick as number,
  };
  if (row.evolution !== null) facts.evolution = row.evolution as string;
  if (row.crew !== null) facts.crew = row.crew as string;
  if (row.ended_at !== null) facts.endedAt = row.ended_at as string;
  if (row.result !== null) facts.result = JSON.parse(row.result as string);
  return facts;
}

function toRun(row: Row): DrillRun {
  const run: DrillRun = {
    ...toFacts(row),
    seed: row.seed as number,
    scene: JSON.parse(row.scene as string),
    seats: JSON.parse(row.seats as string),
  };
  if (row.keyframe !== null) run.keyframe = JSON.parse(row.keyframe as string);
  return run;
}

function toLogRow(row: Row): DrillLogRow {
  const read: DrillLogRow = { seq: row.seq as number, entry: JSON.parse(row.entry as string) };
  if (row.sender !== null) read.sender = row.sender as string;
  if (row.client_seq !== null) read.clientSeq = row.client_seq as number;
  return read;
}
