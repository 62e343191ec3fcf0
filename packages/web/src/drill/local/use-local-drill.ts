import type { DrillScene, DrillState, Evolution, PlayedRole, Role } from '@plugside/drill';
import { useEffect, useMemo, useRef, useState } from 'react';
import { type Heard, hear, nothingHeard } from '../use-drill.ts';
import { type LocalLink, openLocalLink } from './local-link.ts';
import type { Progress } from './progress.ts';

/** The same for everyone, so that a drill can be talked about: gauges alone depend on it. */
const SEED = 1;

export interface LocalPlay {
  scene: DrillScene;
  link: LocalLink | null;
  heard: Heard;
  progress: Progress | null;
  /** Begins anew. */
  reset(): void;
}

/** Where a drill was left, and what is told of where it stands. */
export interface LocalMemory {
  left: DrillState | undefined;
  onPlace(state: DrillState): void;
}

/**
 * Plays an evolution in this page: a worker for as long as it is shown.
 * @param role looked through now
 * @param computer roles that the computer plays
 * @param memory left out: it begins at its beginning, and its place is not kept
 */
export function useLocalDrill(
  evolution: Evolution,
  role: Role,
  computer: readonly PlayedRole[],
  memory?: LocalMemory,
): LocalPlay {
  const scene = useMemo(() => evolution.scene(), [evolution]);
  const [round, setRound] = useState(0);
  const [link, setLink] = useState<LocalLink | null>(null);
  const [heard, setHeard] = useState<Heard>(nothingHeard);
  const [progress, setProgress] = useState<Progress | null>(null);
  const computerKey = computer.join();
  const remembers = useRef(memory);
  remembers.current = memory;
  // biome-ignore lint/correctness/useExhaustiveDependencies: role and computer are told below; a round opens anew
  useEffect(() => {
    const opened = openLocalLink(
      evolution.key,
      SEED,
      role,
      computer,
      round === 0 ? memory?.left : undefined,
    );
    setHeard(nothingHeard);
    setProgress(null);
    setLink(opened);
    const stop = opened.listen((told) => {
      if (told.told === 'progress') setProgress(told.progress);
      else if (told.told === 'place') remembers.current?.onPlace(told.state);
      else setHeard((before) => hear(before, told));
    });
    return () => {
      stop();
      opened.end();
    };
  }, [evolution, round]);
  useEffect(() => link?.take(role), [link, role]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the list
  useEffect(() => link?.giveToComputer(computer), [link, computerKey]);
  return { scene, link, heard, progress, reset: () => setRound((before) => before + 1) };
}
