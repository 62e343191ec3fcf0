/** Runs a drill away from the page's own thread. */
import { evolutionOf } from '@plugside/drill';
import { type LocalDrill, openLocalDrill } from './local-drill.ts';
import type { FromDrill, ToDrill } from './messages.ts';

/** How often a view is told [ms]. */
const TOLD_EVERY_MS = 100;

let drill: LocalDrill | undefined;
let last = 0;

const tell = (told: FromDrill) => self.postMessage(told);

function advance(): void {
  if (!drill) return;
  const now = performance.now();
  const elapsed = now - last;
  last = now;
  try {
    const told = drill.advance(elapsed);
    if (told.length > 0) tell(told);
  } catch (error) {
    drill = undefined;
    const reason = error instanceof Error ? error.message : String(error);
    tell([{ told: 'failed', reason }]);
  }
}

self.onmessage = ({ data }: MessageEvent<ToDrill>) => {
  switch (data.tell) {
    case 'open': {
      const evolution = evolutionOf(data.evolution);
      if (!evolution) {
        tell([{ told: 'failed', reason: `There is no evolution "${data.evolution}".` }]);
        return;
      }
      drill = openLocalDrill(evolution.scene(), data.seed, data.role, data.left);
      drill.giveToComputer(data.computer);
      last = performance.now();
      break;
    }
    case 'act':
      drill?.act(data.action);
      break;
    case 'take':
      drill?.take(data.role);
      break;
    case 'computer':
      drill?.giveToComputer(data.roles);
      break;
    case 'clock':
      drill?.clock(data.action);
      break;
  }
  advance();
};

setInterval(advance, TOLD_EVERY_MS);
