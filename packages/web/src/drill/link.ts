/** How a stage reaches the drill that it shows, wherever that runs. */
import type { DrillAction, DrillView, NoticedEvent, Problem } from '@plugside/drill';

/** What comes back over a link. */
export type Told =
  | { told: 'view'; view: DrillView }
  /** What the role noticed since the last time, oldest first. */
  | { told: 'noticed'; events: NoticedEvent[] }
  | { told: 'refused'; action: DrillAction; problem: Problem }
  /** The link is gone for good; why, in words. */
  | { told: 'failed'; reason: string };

/** One role's way into a drill: it acts, and is told what it sees. */
export interface DrillLink<T extends { told: string } = Told> {
  act(action: DrillAction): void;
  /** @returns ends the listening */
  listen(listener: (told: T) => void): () => void;
  /** Leaves the drill. */
  end(): void;
}
