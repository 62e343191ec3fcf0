import type { DrillScene, Evolution, PlayedRole, Role } from '@plugside/drill';
import { useEffect, useMemo, useState } from 'react';
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

/**
 * Plays an evolution in this page: a worker for as long as it is shown.
 * @param role looked through now
 * @param computer roles that the computer plays
 */
export function useLocalDrill(
  evolution: Evolution,
  role: Role,
  computer: readonly PlayedRole[],
): LocalPlay {
  const scene = useMemo(() => evolution.scene(), [evolution]);
  const [round, setRound] = useState(0);
  const [link, setLink] = useState<LocalLink | null>(null);
  const [heard, setHeard] = useState<Heard>(nothingHeard);
  const [progress, setProgress] = useState<Progress | null>(null);
  const computerKey = computer.join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: role and computer are told below; a round opens anew
  useEffect(() => {
    const opened = openLocalLink(evolution.key, SEED, role, computer);
    setHeard(nothingHeard);
    setProgress(null);
    setLink(opened);
    const stop = opened.listen((told) => {
      if (told.told === 'progress') setProgress(told.progress);
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
