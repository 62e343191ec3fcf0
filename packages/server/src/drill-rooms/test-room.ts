/** Real servers and real connections for the tests of drills. */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type DrillAction,
  type DrillScene,
  type DrillView,
  type FromRoom,
  type NoticedEvent,
  PROTOCOL,
  type Role,
  type RoomRoles,
} from '@plugside/drill';
import { openStore, type RecordStore, type StoreTarget } from '@plugside/records';
import { WebSocket } from 'ws';
import { createApp } from '../app.ts';
import { listen } from '../listen.ts';
import type { RoomSettings } from './room-settings.ts';

export interface RoomServer {
  url: string;
  store: RecordStore;
  ask(path: string, options?: { method?: string; json?: unknown; key?: string }): Promise<Response>;
  close(): Promise<void>;
}

/** @param target left out: a file of its own, removed at the end */
export async function roomServer(
  drills: Partial<RoomSettings> = {},
  target?: StoreTarget,
): Promise<RoomServer> {
  const folder = await mkdtemp(join(tmpdir(), 'plugside-rooms-'));
  const store = await openStore(target ?? (await freshDatabase(folder)));
  const webRoot = join(folder, 'web');
  await mkdir(webRoot);
  const app = createApp({ webRoot, version: 'test', store, drills });
  const server = await listen(app, { host: '127.0.0.1', port: 0, portGiven: true });
  return {
    url: server.url,
    store,
    ask: (path, options) => askAt(server.url, path, options),
    close: async () => {
      await server.close();
      await store.close();
      await rm(folder, { recursive: true });
    },
  };
}

/** Of the PostgreSQL server that runs for these tests where one does, else a file. */
async function freshDatabase(folder: string): Promise<StoreTarget> {
  const desk = process.env.PLUGSIDE_TEST_DATABASES;
  if (!desk) return { file: join(folder, 'records.sqlite') };
  return { url: await (await fetch(desk)).text() };
}

export function askAt(
  url: string,
  path: string,
  options: { method?: string; json?: unknown; key?: string } = {},
): Promise<Response> {
  const { json, key, method = json === undefined ? 'GET' : 'POST' } = options;
  const sent: RequestInit = { method, headers: {} };
  const headers = sent.headers as Record<string, string>;
  if (json !== undefined) {
    sent.body = JSON.stringify(json);
    headers['content-type'] = 'application/json';
  }
  if (key !== undefined) headers.authorization = `Bearer ${key}`;
  return fetch(new URL(`/api${path}`, url), sent);
}

export interface Made {
  roomId: string;
  code: string;
  keys: { instructor: string; watch: string };
}

export async function makeDrill(url: string, json: object): Promise<Made> {
  const answer = await askAt(url, '/drills', { json });
  if (answer.status !== 201) throw new Error(`${answer.status} ${await answer.text()}`);
  return (await answer.json()) as Made;
}

type Of<T extends FromRoom['type']> = Extract<FromRoom, { type: T }>;

/** A tablet: keeps what it is shown as a device of ours would. */
export class Tablet {
  readonly socket: WebSocket;
  readonly heard: FromRoom[] = [];
  view: DrillView | undefined;
  welcome: Of<'welcome'> | undefined;
  scene: DrillScene | undefined;
  key: string | undefined;
  roles: RoomRoles | undefined;
  /** Close code; undefined while open. */
  closed: number | undefined;
  /** Bytes of the views it got. */
  viewBytes: number[] = [];
  lastSeq = 0;
  #frame = 0;
  #listeners = new Set<() => void>();

  constructor(url: string, code: string, headers: Record<string, string> = {}) {
    const address = `${url.replace('http', 'ws')}api/drills/${code}/live`;
    this.socket = new WebSocket(address, { headers });
    this.socket.on('message', (data) => this.#hear(String(data)));
    this.socket.on('close', (closeCode) => {
      this.closed = closeCode;
      this.#wake();
    });
    this.socket.on('error', () => {});
  }

  #hear(text: string): void {
    const message = JSON.parse(text) as FromRoom;
    if (message.type === 'view') {
      this.viewBytes.push(text.length);
      if (!message.whole && message.n !== this.#frame + 1) throw new Error('A frame is missing.');
      this.#frame = message.n;
      this.view = message.whole
        ? (message.view as DrillView)
        : merged(this.view as DrillView, message.view);
    } else {
      this.heard.push(message);
      if (message.type === 'roles') this.roles = message;
      if (message.type === 'welcome') {
        this.welcome = message;
        this.view = message.view;
        this.scene = message.scene;
        this.key = message.key ?? this.key;
        this.roles = message.roles;
        this.lastSeq = message.lastSeq;
      }
    }
    this.#wake();
  }

  #wake(): void {
    for (const listener of [...this.#listeners]) listener();
  }

  /** Resolves once it holds; fails when the connection closes before. */
  async until<T>(what: string, holds: () => T | undefined | false): Promise<T> {
    for (;;) {
      const found = holds();
      if (found !== undefined && found !== false) return found;
      if (this.closed !== undefined) {
        throw new Error(
          `Closed with ${this.closed} before: ${what}. ${JSON.stringify(this.heard.at(-1))}`,
        );
      }
      await new Promise<void>((resolve) => {
        const listener = () => {
          this.#listeners.delete(listener);
          resolve();
        };
        this.#listeners.add(listener);
      });
    }
  }

  next<T extends FromRoom['type']>(
    type: T,
    fits: (message: Of<T>) => boolean = () => true,
  ): Promise<Of<T>> {
    const from = this.heard.length;
    return this.until(type, () =>
      this.heard.slice(from).find((one): one is Of<T> => one.type === type && fits(one as Of<T>)),
    );
  }

  get events(): NoticedEvent[] {
    return this.heard.flatMap((one) => (one.type === 'event' ? [one.event] : []));
  }

  say(message: object): void {
    this.socket.send(JSON.stringify(message));
  }

  async opened(): Promise<this> {
    if (this.socket.readyState === WebSocket.OPEN) return this;
    await new Promise<void>((resolve, reject) => {
      this.socket.once('open', () => resolve());
      this.socket.once('error', reject);
    });
    return this;
  }

  async hello(given: { role?: Role; key?: string; device?: string } = {}): Promise<Of<'welcome'>> {
    await this.opened();
    const welcome = this.next('welcome');
    this.say({ type: 'hello', v: PROTOCOL, ...given });
    return welcome;
  }

  /** Does an action and waits for what the server says to it. */
  async act(action: DrillAction | object): Promise<Of<'taken'> | Of<'refused'>> {
    this.lastSeq += 1;
    const clientSeq = this.lastSeq;
    const from = this.heard.length;
    this.say({ type: 'action', clientSeq, action });
    return this.until(`answer to ${JSON.stringify(action)}`, () =>
      this.heard
        .slice(from)
        .find(
          (one): one is Of<'taken'> | Of<'refused'> =>
            (one.type === 'taken' || one.type === 'refused') && one.clientSeq === clientSeq,
        ),
    );
  }

  /** As when the network is gone: without a word. */
  drop(): void {
    this.socket.terminate();
  }

  async whenClosed(): Promise<number> {
    if (this.closed !== undefined) return this.closed;
    return new Promise((resolve) => this.socket.once('close', (code) => resolve(code)));
  }
}

/** Null takes a part away. */
function merged(view: DrillView, parts: object): DrillView {
  const all = Object.entries({ ...view, ...parts }).filter(([, part]) => part !== null);
  return Object.fromEntries(all) as unknown as DrillView;
}

/** A tablet that has joined. */
export async function joined(
  url: string,
  code: string,
  given: { role?: Role; key?: string; device?: string } = {},
): Promise<Tablet> {
  const tablet = new Tablet(url, code);
  await tablet.hello(given);
  return tablet;
}
