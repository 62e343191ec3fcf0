/** A PostgreSQL server of a test's own: in a temporary folder, on the loopback address alone. */
import { execFile } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import pg from 'pg';

const run = promisify(execFile);
const INSTALLED = '/usr/lib/postgresql';

export interface PostgresqlServer {
  /** Makes an empty database. */
  freshDatabase(): Promise<string>;
  /** Ends it as a power cut would, and starts it again on what is on the disk. */
  crashAndStart(): Promise<void>;
  stop(): Promise<void>;
}

/** Folder of the newest server programs on this machine, as Debian lays them. */
export function findPostgresql(): string | undefined {
  if (!existsSync(INSTALLED)) return undefined;
  return readdirSync(INSTALLED)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(INSTALLED, version, 'bin'))
    .find((bin) => existsSync(join(bin, 'initdb')) && existsSync(join(bin, 'pg_ctl')));
}

/**
 * @param bin as found by `findPostgresql`
 * @param settings more of the server's settings, as `name=value`
 */
export async function startPostgresql(
  bin: string,
  settings: readonly string[] = [],
): Promise<PostgresqlServer> {
  const folder = mkdtempSync(join(tmpdir(), 'plugside-pg-'));
  if (asRoot()) chownSync(folder, ...(await idsOf('postgres')));
  const data = join(folder, 'data');
  const port = await freePort();
  const options = [
    'listen_addresses=127.0.0.1',
    `port=${port}`,
    `unix_socket_directories=${folder}`,
    ...settings,
  ]
    .map((setting) => `-c ${setting}`)
    .join(' ');
  const program = (name: string, ...args: string[]) => runAsServer(folder, join(bin, name), args);
  const start = () =>
    program('pg_ctl', '-D', data, '-w', '-o', options, '-l', join(folder, 'log'), 'start');
  await program('initdb', '-D', data, '-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--no-sync');
  await start();
  let databases = 0;
  return {
    freshDatabase: async () => {
      databases += 1;
      const name = `trial_${databases}`;
      await ask(urlOf(port, 'postgres'), `create database ${name}`);
      return urlOf(port, name);
    },
    crashAndStart: async () => {
      await program('pg_ctl', '-D', data, '-w', '-m', 'immediate', 'stop');
      await start();
    },
    stop: async () => {
      await program('pg_ctl', '-D', data, '-w', '-m', 'immediate', 'stop');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** One statement on a connection of its own. */
export async function ask(url: string, statement: string): Promise<pg.QueryResult> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await client.query(statement);
  } finally {
    await client.end();
  }
}

function urlOf(port: number, database: string): string {
  return `postgresql://postgres@127.0.0.1:${port}/${database}`;
}

/** The server refuses to run as root. */
async function runAsServer(cwd: string, program: string, args: readonly string[]): Promise<void> {
  const [command, ...rest] = asRoot()
    ? ['runuser', '-u', 'postgres', '--', program, ...args]
    : [program, ...args];
  // pg_ctl's server would keep a pipe of ours open, and the promise with it: its log is a file.
  await run(command as string, rest, { cwd });
}

function asRoot(): boolean {
  return process.getuid?.() === 0;
}

async function idsOf(user: string): Promise<[number, number]> {
  const [uid, gid] = await Promise.all(['-u', '-g'].map((flag) => run('id', [flag, user])));
  return [Number(uid?.stdout), Number(gid?.stdout)];
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}
