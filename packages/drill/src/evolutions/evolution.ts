import type { DrillScene } from '../scene.ts';

/** An evolution to drill: a plan, how far it has got, and what to do, in order. */
export interface Evolution {
  key: string;
  title: string;
  /** What it teaches, in a sentence. */
  teaches: string;
  /** Cautions that stand beside it all the time; the last one defers. */
  cautions: string[];
  /** A fresh scene of it. */
  scene(): DrillScene;
}

/** Cautions that every evolution with large hose has. */
export const largeHoseCautions: readonly string[] = [
  'Large hose: twists out and couplings locked before it is charged; people clear of it; no vehicle over it.',
  'Open hydrants and large valves slowly, and shut them slower: moving water that is stopped hits back (water hammer).',
  'Flush a hydrant until it runs clear before hose goes on: stones in it end in the pump.',
  'Never uncouple under pressure: shut the valve and bleed first.',
];
