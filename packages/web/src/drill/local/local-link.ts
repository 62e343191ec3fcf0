import type { DrillState, PlayedRole, Role } from '@plugside/drill';
import type { DrillLink } from '../link.ts';
import type { LocalDrill, LocalTold } from './local-drill.ts';
import type { FromDrill, ToDrill } from './messages.ts';

/** A link to a drill in a worker of this page, with what only a lone player may do. */
export interface LocalLink
  extends DrillLink<LocalTold>,
    Pick<LocalDrill, 'take' | 'giveToComputer' | 'clock'> {}

/** Opens an evolution in a worker of its own. @param left where it was left; left out: from its beginning */
export function openLocalLink(
  evolution: string,
  seed: number,
  role: Role,
  computer: readonly PlayedRole[],
  left?: DrillState,
): LocalLink {
  const worker = new Worker(new URL('./drill-worker.ts', import.meta.url), { type: 'module' });
  const listeners = new Set<(told: LocalTold) => void>();
  const tellAll = (told: FromDrill) => {
    for (const one of told) for (const listener of listeners) listener(one);
  };
  worker.onmessage = ({ data }: MessageEvent<FromDrill>) => tellAll(data);
  worker.onerror = () =>
    tellAll([{ told: 'failed', reason: 'The drill could not be run in this browser.' }]);
  const send = (message: ToDrill) => worker.postMessage(message);
  send({ tell: 'open', evolution, seed, role, computer: [...computer], ...(left && { left }) });
  return {
    act: (action) => send({ tell: 'act', action }),
    take: (next) => send({ tell: 'take', role: next }),
    giveToComputer: (roles) => send({ tell: 'computer', roles: [...roles] }),
    clock: (action) => send({ tell: 'clock', action }),
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    end: () => worker.terminate(),
  };
}
