import type { DrillAction, DrillScene, DrillView, HoseEnd } from '@plugside/drill';
import { createContext, useContext } from 'react';

/** What is in the hand: a hose end to couple, or a piece whose controls are wanted. */
export type Picked =
  | { kind: 'end'; hose: string; end: HoseEnd }
  | { kind: 'port'; port: string }
  | { kind: 'valve'; valve: string }
  | { kind: 'pump'; rig: string };

export interface StageRefused {
  /** What was touched. */
  marks: readonly string[];
  message: string;
}

export interface Stage {
  scene: DrillScene;
  view: DrillView;
  act(action: DrillAction): void;
  /** What the guide points at. */
  marks: ReadonlySet<string>;
  refused: StageRefused | null;
  picked: Picked | null;
  pick(picked: Picked | null): void;
}

export const StageContext = createContext<Stage | null>(null);

/** The stage that a control stands on. */
export function useStage(): Stage {
  const stage = useContext(StageContext);
  if (!stage) throw new Error('A control of the drill was drawn outside its stage.');
  return stage;
}
