/** A link to a drill that runs on the server, kept up over drops. */
import {
  type DrillAction,
  type FromRoom,
  PROTOCOL,
  type Problem,
  type Role,
  type RoomRequest,
  type ToRoom,
} from '@plugside/drill';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { drillByCode, ProblemError } from '../../api/index.ts';
import type { DrillLink, Told } from '../link.ts';
import { waitMs } from './backoff.ts';
import { Outbox } from './outbox.ts';
import type { Connection, RoomState } from './room-state.ts';
import { keepUnsent, unsentBefore } from './unsent.ts';
import { nextShown } from './view-parts.ts';

/** How often the server is asked whether it still hears [ms]. */
const BEAT_MS = 2_000;
/** Silence after which a connection counts as dropped [ms]. */
const SILENT_MS = 6_000;

export interface RoomLink extends DrillLink {
  readonly state: StoreApi<RoomState>;
  /** @returns false where the connection is away: nothing was asked for, and nothing waits */
  ask(request: RoomRequest): boolean;
  /** Connects now rather than when the wait is over, or again after having been let out. */
  tryNow(): void;
  /** Those who read `notDone` have read it. */
  forgetNotDone(): void;
}

export interface RoomJoining {
  code: string;
  role: Role;
  /** From an earlier time in the role; left out: it is taken now. */
  key?: string;
  /** Told when the device is in, the key being what to come back with. */
  onSeat(seat: { key?: string; roomId: string }): void;
}

/** Joins a drill in a role. The link goes on until `end`. */
export function openRoomLink({ code, role, key: firstKey, onSeat }: RoomJoining): RoomLink {
  const state = createStore<RoomState>(() => ({
    code,
    role,
    connection: { is: 'joining' },
    waiting: 0,
    // Tapped without a connection on a page that was then closed.
    notDone: unsentBefore(code, role),
  }));
  const listeners = new Set<(told: Told) => void>();
  const outbox = new Outbox();
  // Actions are numbered by device: a name for the life of this page starts them at 1.
  const device = `tablet-${randomName()}`;
  let key = firstKey;
  let socket: WebSocket | undefined;
  let frame = 0;
  let tries = 0;
  let heardMs = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let ended = false;

  const tell = (told: Told) => {
    for (const listener of [...listeners]) listener(told);
  };
  const isHere = () => state.getState().connection.is === 'here';
  const send = (message: ToRoom) => socket?.send(JSON.stringify(message));
  const countWaiting = () => {
    state.setState({ waiting: outbox.size });
    keepUnsent(code, role, outbox.unsent);
  };

  function connect(): void {
    clearTimeout(timer);
    drop();
    if (ended) return;
    const opening = new WebSocket(addressOf(code));
    socket = opening;
    heardMs = performance.now();
    opening.onopen = () =>
      send({ type: 'hello', v: PROTOCOL, role, device, ...(key !== undefined && { key }) });
    opening.onmessage = ({ data }) => {
      heardMs = performance.now();
      hear(JSON.parse(String(data)) as FromRoom);
    };
    opening.onclose = () => lost();
  }

  /** Lets the socket go without hearing from it again. */
  function drop(): void {
    if (!socket) return;
    const old = socket;
    socket = undefined;
    old.onopen = null;
    old.onmessage = null;
    old.onclose = null;
    old.close();
  }

  function lost(): void {
    const { connection } = state.getState();
    const neverOpen = socket !== undefined && connection.is !== 'here';
    drop();
    if (ended || connection.is === 'out') return;
    const wait = waitMs(tries, Math.random());
    tries += 1;
    const now = Date.now();
    const sinceMs = connection.is === 'away' ? connection.sinceMs : now;
    setConnection({ is: 'away', sinceMs, nextTryMs: now + wait });
    clearTimeout(timer);
    timer = setTimeout(connect, wait);
    // A browser does not say why a connection was refused; the server does over HTTP.
    if (neverOpen || tries > 1) lookWhetherItRuns();
  }

  async function lookWhetherItRuns(): Promise<void> {
    try {
      await drillByCode(code);
    } catch (error) {
      if (error instanceof ProblemError && error.status === 404 && !isHere()) {
        out('unknown', error.message);
      }
    }
  }

  function setConnection(connection: Connection): void {
    state.setState({ connection });
  }

  function out(why: Extract<Connection, { is: 'out' }>['code'], words: string): void {
    clearTimeout(timer);
    drop();
    keepNotDone(outbox.giveUp());
    setConnection({ is: 'out', code: why, why: words });
    if (why !== 'ended') tell({ told: 'failed', reason: words });
  }

  function keepNotDone(actions: readonly DrillAction[]): void {
    if (actions.length > 0)
      state.setState(({ notDone }) => ({ notDone: [...notDone, ...actions] }));
    countWaiting();
  }

  function hear(message: FromRoom): void {
    switch (message.type) {
      case 'welcome':
        welcome(message);
        return;
      case 'view': {
        const { view } = state.getState();
        if (!view) return;
        const shown = nextShown({ n: frame, view }, message);
        // Frames come in order and whole after a gap, so this is a fault: begin anew.
        if (!shown) {
          connect();
          return;
        }
        frame = shown.n;
        state.setState({ view: shown.view });
        tell({ told: 'view', view: shown.view });
        return;
      }
      case 'event':
        tell({ told: 'noticed', events: [message.event] });
        return;
      case 'taken':
        outbox.answered(message.clientSeq);
        countWaiting();
        return;
      case 'refused':
        refused(message.clientSeq, message.problem);
        return;
      case 'roles': {
        const { type: _, ...roles } = message;
        state.setState({ roles });
        return;
      }
      case 'settings': {
        const { type: _, ...settings } = message;
        state.setState({ settings });
        return;
      }
      case 'watch key':
        state.setState({ watchKey: message.key });
        return;
      case 'paused':
        state.setState({ heldBy: message.paused ? message.by : undefined });
        return;
      case 'ended':
        state.setState({ result: message.result });
        out('ended', 'The drill has ended.');
        return;
      case 'error':
        troubled(message);
    }
  }

  function welcome(message: Extract<FromRoom, { type: 'welcome' }>): void {
    const { roomId, crew, scene, roles, settings, view, lastSeq, n } = message;
    key = message.key ?? key;
    onSeat({ roomId, ...(key !== undefined && { key }) });
    frame = n;
    tries = 0;
    state.setState({
      connection: { is: 'here' },
      roomId,
      scene,
      roles,
      view,
      heldBy: undefined,
      ...(crew !== undefined && { crew }),
      ...(settings && { settings }),
    });
    tell({ told: 'view', view });
    const { send: again, tooLate } = outbox.joined(lastSeq, performance.now());
    for (const one of again) send({ type: 'action', ...one });
    keepNotDone(tooLate);
  }

  function refused(clientSeq: number, problem: Problem): void {
    const action = outbox.answered(clientSeq);
    countWaiting();
    if (action) tell({ told: 'refused', action, problem });
  }

  function troubled({ code: why, message }: Extract<FromRoom, { type: 'error' }>): void {
    switch (why) {
      case 'role taken':
      case 'wrong key':
      case 'no such role':
      case 'version':
      case 'full':
      case 'replaced':
      case 'freed':
        out(why, message);
        return;
      case 'too fast':
        // What was left out has no answer; joining again sends it anew.
        connect();
        return;
      case 'gone':
        // The server stops, or the drill has ended: the closing that follows looks which.
        return;
      case 'not allowed':
      case 'not understood':
        state.setState({ trouble: message });
    }
  }

  const beat = setInterval(() => {
    if (!socket) return;
    if (performance.now() - heardMs > SILENT_MS) lost();
    else if (socket.readyState === WebSocket.OPEN) send({ type: 'ping' });
  }, BEAT_MS);
  const onOffline = () => {
    if (isHere()) lost();
  };
  const onOnline = () => tryNow();
  const onVisible = () => {
    if (document.visibilityState === 'visible') tryNow();
  };
  window.addEventListener('offline', onOffline);
  window.addEventListener('online', onOnline);
  document.addEventListener('visibilitychange', onVisible);

  function tryNow(): void {
    if (state.getState().connection.is === 'away') {
      tries = 0;
      connect();
    }
  }

  connect();
  return {
    state,
    act: (action) => {
      if (ended || state.getState().connection.is === 'out') {
        keepNotDone([action]);
        return;
      }
      outbox.add(action, performance.now());
      if (isHere()) for (const one of outbox.toSend()) send({ type: 'action', ...one });
      countWaiting();
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    ask: (request) => {
      if (!isHere()) return false;
      send(request);
      return true;
    },
    tryNow: () => {
      const { connection } = state.getState();
      if (connection.is === 'out') {
        setConnection({ is: 'joining' });
        tries = 0;
        connect();
      } else tryNow();
    },
    forgetNotDone: () => state.setState({ notDone: [], trouble: undefined }),
    end: () => {
      ended = true;
      clearTimeout(timer);
      clearInterval(beat);
      window.removeEventListener('offline', onOffline);
      window.removeEventListener('online', onOnline);
      document.removeEventListener('visibilitychange', onVisible);
      drop();
    },
  };
}

function addressOf(code: string): string {
  const { protocol, host } = window.location;
  return `${protocol === 'https:' ? 'wss:' : 'ws:'}//${host}/api/drills/${code}/live`;
}

function randomName(): string {
  const numbers = crypto.getRandomValues(new Uint32Array(2));
  return [...numbers].map((one) => one.toString(36)).join('');
}
